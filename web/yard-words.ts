import type { Defect } from '../shared/cutting/board.ts'
import type { Shortfall } from '../shared/cutting/pick.ts'
import { feetText } from '../shared/units/feet.ts'
import { inches, type LengthStyle, lengthText, nm, roundedUpMm } from '../shared/units/length.ts'
import { moneyText } from '../shared/units/money.ts'
import { boardFeetText, priceText } from './elements/amounts.ts'
import type { OfflineState } from './offline.ts'
import type { DefectEntry, Reach } from './yard-entry.ts'
import { type Choice, chargeOf, type Sum, termsOf } from './yard-order.ts'
import type { PulledBoard, YardNeed, YardTally } from './yard-tally.ts'

const ends: Record<'along' | 'across', Record<'first' | 'last', string>> = {
  along: { first: 'from the butt end', last: 'from the far end' },
  across: { first: 'along the near edge', last: 'along the far edge' },
}

const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

/** A board as it is called across the stack: `7-3/8 in × 8 ft, 8/4`. */
export function boardWords({ board, nominal }: PulledBoard, style: LengthStyle): string {
  const length = feetText(board.length, style) ?? lengthText(board.length, style)
  return `${lengthText(board.width, style)} × ${length}, ${nominal ?? `${lengthText(board.thickness, style)} thick`}`
}

/** Where a defect lies, in as few words as do: `knot 41 in to 44 in`, `sap, 1 in along the near edge`. */
export function defectWords(
  { kind = 'defect', from, to, across }: Defect,
  { length, width }: { length: number; width: number },
  style: LengthStyle,
): string {
  const mm = (value: number) => lengthText(value, style)
  const told = (way: 'along' | 'across', [low, high]: readonly [number, number], size: number): string => {
    const [starts, stops] = [nm(low) <= 0, nm(high) >= nm(size)]
    if (starts && stops) return ''
    if (starts) return `, ${mm(high)} ${ends[way].first}`
    if (stops) return `, ${mm(size - low)} ${ends[way].last}`
    return way === 'along' ? ` ${mm(low)} to ${mm(high)}` : `, ${mm(low)} to ${mm(high)} across`
  }
  const places = told('along', [from, to], length) + (across ? told('across', across, width) : '')
  return kind + (places || ' all over')
}

/** What keeps everything wanted from a board, and what would do. */
export function shortfallWords({ why, least }: Shortfall, style: LengthStyle): string {
  const measure = { thin: 'thick', narrow: 'wide', short: 'long' }[why]
  return `Too ${why} for every blank wanted: it must be ${lengthText(least, style)} ${measure} at least.`
}

/** How many blanks are wanted, and how many of them are spares: the parts alone may be fewer. */
export function wantedCount(needs: readonly YardNeed[]): { wanted: number; spare: string } {
  const wanted = needs.flatMap(({ order }) => order.blanks).reduce((total, { count }) => total + count, 0)
  const spares = needs.reduce((total, need) => total + (need.spares ?? 0), 0)
  const spare = spares === 0 ? '' : spares === 1 ? 'one of them a spare' : `${spares} of them spares`
  return { wanted, spare }
}

/** The one thing to read at arm’s length. */
export interface Headline {
  state: 'enough' | 'missing' | 'none'
  text: string
}

/** Whether the boards are enough; how many blanks are missing where they are not. */
export function headline({ missing }: Pick<Choice, 'missing'>): Headline {
  if (missing === 0) return { state: 'enough', text: 'ENOUGH' }
  return { state: 'missing', text: `${missing} MISSING` }
}

/** Under it: what is kept comes to; how many blanks there are where that is not all. */
export function underWords({ missing, wanted, sum }: Choice, currency: string): string {
  if (missing === 0 && sum.boards === 0) return 'nothing to buy: boards on hand do'
  if (missing === 0) return `keep ${sumWords(sum, currency)}`
  return `${wanted - missing} of ${wanted} blanks · ${paidText(sum, currency) ?? boardFeetText(sum.feet)}`
}

/** What is paid, and whether it is the least charge: `75.00 USD, least charge`; nothing without prices. */
export function paidText({ minor, isLeastCharge }: Pick<Sum, 'minor' | 'isLeastCharge'>, currency: string) {
  if (minor === undefined) return undefined
  return `${moneyText(minor, currency)}${isLeastCharge ? ', least charge' : ''}`
}

/** `4 boards · 31.5 bd ft · 84.20 USD`. */
export function sumWords({ boards, feet, ...paid }: Sum, currency: string): string {
  const cost = paidText(paid, currency)
  return [counted(boards, 'board'), boardFeetText(feet), ...(cost ? [cost] : [])].join(' · ')
}

/** What the yard's own conditions say about the boards to keep: a least order, a least charge. */
export function chargeWords(boards: readonly PulledBoard[], tally: YardTally): string[] {
  if (boards.length === 0) return []
  const { feetShort, toMinimum } = chargeOf(boards, tally)
  const { minimumFeet, minimumCharge } = termsOf(tally)
  return [
    ...(feetShort > 0
      ? [`This yard sells from ${boardFeetText(minimumFeet)} on: ${boardFeetText(feetShort)} are wanting.`]
      : []),
    ...(toMinimum > 0
      ? [
          `Below this yard’s least charge of ${priceText(minimumCharge, tally.currency)}: ${moneyText(toMinimum, tally.currency)} come on top.`,
        ]
      : []),
  ]
}

/** What a tally is for: its jobs and their wood. */
export function forWords({ needs }: Pick<YardTally, 'needs'>): string {
  if (needs.length === 0) return 'no job: boards are only counted'
  return `${needs.map(({ name }) => name).join(', ')} · ${needs[0]!.wood}`
}

export const crookWords = (crook: number, style: LengthStyle): string =>
  `crook ${lengthText(crook, style)} over the length`

/** Whether this page opens without a signal. */
export function signalWords(state: OfflineState): string {
  if (state === 'ready') return 'Kept on this device: this page opens and reckons without a signal.'
  if (state === 'failed')
    return 'This device could not keep the pages, for want of room or because the server went away: leave this page open on the way to the yard, or load it again here. What you enter is kept all the same.'
  return state === 'installing'
    ? 'Being kept on this device for where there is no signal; a moment.'
    : 'Over this connection the browser keeps no pages (it does over HTTPS): leave this page open on the way to the yard. What you enter is kept all the same.'
}

/** How fresh what is known of the jobs is. `isAnswered`: whether the server answered just now. */
export function groundWords(at: string, isAnswered: boolean | undefined): string {
  if (isAnswered || at === '') return ''
  const day = new Date(at).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short' })
  return `Jobs and prices as they were ${day}${isAnswered === false ? ': the server is out of reach' : ''}.`
}

/** As fine as a tape is read at a stack: sixteenths of an inch, or millimetres. */
const tapeStep = (style: LengthStyle): number => (style === 'mm' ? 1 : inches(1 / 16))

/** What a job wants, a line for each size of blank, with the least board that gives one, up to what a tape shows. */
export function wantedWords({ order }: Pick<YardNeed, 'order'>, style: LengthStyle): string[] {
  const mm = (value: number) => lengthText(value, style)
  const up = (value: number) => mm(roundedUpMm(value, tapeStep(style)))
  return order.blanks.map(({ side, length, thickness = side, count }) => {
    const least = [
      `${up(thickness)} thick`,
      `${up(side + 2 * order.edgeTrim)} wide`,
      `${up(length + 2 * order.endTrim)} long`,
    ]
    return `${counted(count, 'blank')} ${mm(side)} × ${mm(length)}, from boards at least ${least.join(', ')}`
  })
}

/** A defect as far as it is entered: `knot, 41 to 43 in`. */
export function enteredDefectWords({ kind, along, across, at }: DefectEntry, unit: string): string {
  const told = (way: 'along' | 'across', reach: Reach, [from, to]: string[]): string[] => {
    if (reach === 'whole') return []
    if (reach !== 'between') return [`${from || '…'} ${unit} ${ends[way][reach]}`]
    return [`${from || '…'} to ${to || '…'} ${unit}${way === 'across' ? ' across' : ''}`]
  }
  return [kind, ...told('along', along, at.slice(0, 2)), ...told('across', across, at.slice(2))].join(', ')
}
