import type { Defect } from '../shared/cutting/board.ts'
import type { Lift, Shortfall } from '../shared/cutting/pick.ts'
import { keyInPart, partOfKey } from '../shared/cutting/together.ts'
import { boardFeetNet } from '../shared/units/board-foot.ts'
import { feetText } from '../shared/units/feet.ts'
import { type LengthStyle, lengthText } from '../shared/units/length.ts'
import { moneyText } from '../shared/units/money.ts'
import { boardFeetText, priceText } from './elements/amounts.ts'
import type { OfflineState } from './offline.ts'
import type { DefectEntry, Reach } from './yard-entry.ts'
import { type Choice, chargeOf, costOf, type Sum, termsOf } from './yard-order.ts'
import type { PulledBoard, YardNeed, YardTally } from './yard-tally.ts'

const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

/** A board as it is called across the stack: `7-3/8 in × 8 ft, 8/4`. */
export function boardWords({ board, nominal }: PulledBoard, style: LengthStyle): string {
  const length = feetText(board.length, style) ?? lengthText(board.length, style)
  return `${lengthText(board.width, style)} × ${length}, ${nominal ?? `${lengthText(board.thickness, style)} thick`}`
}

/** Where a defect lies, in as few words as do: `knot 41 in to 44 in`, `sap along an edge, 1 in`. */
export function defectWords(
  { kind = 'defect', from, to, across }: Defect,
  { length, width }: { length: number; width: number },
  style: LengthStyle,
): string {
  const mm = (value: number) => lengthText(value, style)
  const span = from <= 0 && to >= length ? '' : ` ${mm(from)} to ${mm(to)}`
  if (!across || (across[0] <= 0 && across[1] >= width)) return `${kind}${span || ' all over'}`
  return `${kind}${span}, ${mm(across[0])} to ${mm(across[1])} across`
}

/** What keeps everything wanted from a board, and what would do. */
export function shortfallWords({ why, least }: Shortfall, style: LengthStyle): string {
  const measure = { thin: 'thick', narrow: 'wide', short: 'long' }[why]
  return `Too ${why} for every blank wanted: it must be ${lengthText(least, style)} ${measure} at least.`
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
  const so = sum.minor === undefined ? boardFeetText(sum.feet) : moneyText(sum.minor, currency)
  return `${wanted - missing} of ${wanted} blanks · ${so}`
}

/** `4 boards · 31.5 bd ft · 84.20 USD`. */
export function sumWords({ boards, feet, minor }: Sum, currency: string): string {
  const cost = minor === undefined ? [] : [moneyText(minor, currency)]
  return [counted(boards, 'board'), boardFeetText(feet), ...cost].join(' · ')
}

/** How good the choice is, in plain words. */
export function proofWords(choice: Choice, currency: string, isSearching: boolean): string {
  const { sum, leastMinor, plan, proven } = choice
  if (choice.keep.length === 0) return 'Boards on hand give every blank: nothing needs to be bought.'
  const [least, now, verb] =
    leastMinor !== undefined && sum.minor !== undefined
      ? [moneyText(leastMinor, currency), moneyText(sum.minor, currency), 'cost']
      : [boardFeetText(plan.lowerBound), boardFeetText(plan.cost), 'use']
  if (proven)
    return `Proven: no choice from these boards ${verb}s less than ${least}; this one ${verb}s ${now}.`
  const over = plan.lowerBound > 0 ? Math.ceil((plan.cost / plan.lowerBound - 1) * 1000) / 10 : undefined
  const gap = over === undefined ? '' : `, at most ${over} % more`
  const going = isSearching ? ' A better one is still looked for.' : ''
  return `No choice from these boards ${verb}s less than ${least}; this one ${verb}s ${now}${gap}.${going}`
}

/** What is missing of each job, where several are bought for. */
export function missingWords({ plan }: Pick<Choice, 'plan'>, needs: readonly YardNeed[]): string[] {
  const counts = new Map<string, number>()
  for (const { key, count } of plan.unmet) {
    const { part } = partOfKey(key)
    counts.set(part, (counts.get(part) ?? 0) + count)
  }
  return needs.flatMap(({ job, name }) => (counts.has(job) ? [`${name}: ${counts.get(job)}`] : []))
}

/** About how many board feet the missing blanks still take, at the yield of the boards so far; empty without any. */
export function feetMissingWords({ plan }: Pick<Choice, 'plan'>, needs: readonly YardNeed[]): string {
  if (plan.yield <= 0) return ''
  const blanks = new Map(
    needs.flatMap(({ job, order }) =>
      order.blanks.map((blank) => [keyInPart(job, blank.key), blank] as const),
    ),
  )
  const net = plan.unmet.reduce((total, { key, count }) => {
    const blank = blanks.get(key)
    if (!blank) return total
    const { side, length, thickness = side } = blank
    return total + count * boardFeetNet({ thickness, width: side, length })
  }, 0)
  return `About ${Math.ceil(net / plan.yield)} bd ft more, if boards go on yielding as these do.`
}

/** Lifts that follow each other to the same place, together: the numbers chalked on the boards. */
export function liftRuns(
  lifts: readonly Lift[],
  boards: readonly PulledBoard[],
): { to: Lift['to']; numbers: number[] }[] {
  const numbers = new Map(boards.map(({ board, number }) => [board.key, number]))
  const runs: { to: Lift['to']; numbers: number[] }[] = []
  for (const { key, to } of lifts) {
    const last = runs.at(-1)
    const number = numbers.get(key)!
    if (last?.to === to) last.numbers.push(number)
    else runs.push({ to, numbers: [number] })
  }
  return runs
}

/** What a tally is for: its jobs and their wood. */
export function forWords({ needs }: Pick<YardTally, 'needs'>): string {
  if (needs.length === 0) return 'no job: boards are only counted'
  return `${needs.map(({ name }) => name).join(', ')} · ${needs[0]!.wood}`
}

export const crookWords = (crook: number, style: LengthStyle): string =>
  `crook ${lengthText(crook, style)} over the length`

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

/** Whether this page opens without a signal. */
export function signalWords(state: OfflineState): string {
  if (state === 'ready') return 'Kept on this device: this page opens and reckons without a signal.'
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

/** Boards whose price is wanting while others have one: then board feet are compared. Empty where all is well. */
export function unpricedWords(boards: readonly PulledBoard[], tally: YardTally): string {
  const without = boards.filter((pulled) => costOf(pulled, tally) === undefined)
  if (without.length === 0 || without.length === boards.length) return ''
  const numbers = without.map(({ number }) => number).join(', ')
  return `No price for ${without.length === 1 ? 'board' : 'boards'} ${numbers}: board feet are compared until there is one.`
}

/** What a job wants, a line for each size of blank, with the least board that gives one. */
export function wantedWords({ order }: Pick<YardNeed, 'order'>, style: LengthStyle): string[] {
  const mm = (value: number) => lengthText(value, style)
  return order.blanks.map(({ side, length, thickness = side, count }) => {
    const least = [
      `${mm(thickness)} thick`,
      `${mm(side + 2 * order.edgeTrim)} wide`,
      `${mm(length + 2 * order.endTrim)} long`,
    ]
    return `${counted(count, 'blank')} ${mm(side)} × ${mm(length)}, from boards at least ${least.join(', ')}`
  })
}

const ends: Record<'along' | 'across', Record<'first' | 'last', string>> = {
  along: { first: 'from the butt end', last: 'from the far end' },
  across: { first: 'along the near edge', last: 'along the far edge' },
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
