import type { CutPlan, PlacedBlank } from '../../shared/cutting/board.ts'
import type { SawSetting } from '../../shared/cutting/saw-order.ts'
import { piecesText, type SheetBlank, type SheetBoard } from '../../shared/cutting/sheet.ts'
import type { Units } from '../../shared/units/length.ts'
import { length } from '../session.ts'
import { boardFeetText, priceText } from './amounts.ts'

/** `5 of 18 in, 1 of 12 in`: blanks of a run, equal lengths together. */
function counted(blanks: readonly PlacedBlank[], size: (blank: PlacedBlank) => number, units: Units): string {
  const counts = new Map<string, number>()
  for (const blank of blanks) {
    const text = length(size(blank), units)
    counts.set(text, (counts.get(text) ?? 0) + 1)
  }
  return [...counts].map(([text, n]) => `${n} of ${text}`).join(', ')
}

const long = (blank: PlacedBlank) => blank.to - blank.from
const wide = (blank: PlacedBlank) => blank.across[1] - blank.across[0]

/** `: pieces 1 to 4`, whatever comes of the blanks of a run. */
const piecesOf = (blanks: readonly SheetBlank[]): string =>
  `: ${blanks.length === 1 ? 'piece' : 'pieces'} ${piecesText(blanks)}`

const behind = (text: string | undefined): string => (text === undefined ? '' : `; ${text}`)

/**
 * The cuts of a board in order, a line for each strip or section. `rings` tells how they lie in what lies so
 * across the board.
 */
export function cutLines(
  board: SheetBoard,
  units: Units,
  rings: (acrosses: [number, number][]) => string | undefined = () => undefined,
): string[] {
  const strips = (board.strips ?? []).map(
    ({ side, across, blanks }) =>
      `rip ${length(side, units)} wide, crosscut ${counted(blanks, long, units)}${piecesOf(blanks)}${behind(rings([across]))}`,
  )
  const sections = (board.sections ?? []).map(
    ({ from, to, blanks }) =>
      `crosscut ${length(to - from, units)} long, rip ${counted(blanks, wide, units)}${piecesOf(blanks)}${behind(rings(blanks.map(({ across }) => across)))}`,
  )
  const size = ({ from, to, across }: SheetBoard['offcuts'][number]) =>
    `${length(across[1] - across[0], units)} × ${length(to - from, units)}`
  return [
    ...strips.map((cut, i) => `Strip ${i + 1}: ${cut}`),
    ...sections.map((cut, i) => `Section ${i + 1}: ${cut}`),
    ...(board.offcuts.length > 0 ? [`Offcuts worth keeping: ${board.offcuts.map(size).join(', ')}`] : []),
  ]
}

/** Whether the plan is the best there is, in plain words. `priced`: cost is money, else board feet. */
export function boundWords(cut: CutPlan, currency: string, priced: boolean): string {
  const amount = (value: number) => (priced ? priceText(value, currency) : boardFeetText(value))
  const verb = priced ? 'cost' : 'use'
  if (cut.boards.length === 0) return ''
  if (cut.proven) return `Proven: no plan from these boards can ${verb} less than ${amount(cut.cost)}.`
  const over = cut.lowerBound > 0 ? Math.ceil((cut.cost / cut.lowerBound - 1) * 1000) / 10 : undefined
  const gap = over === undefined ? '' : `: at most ${over} % over the least possible`
  return `No plan from these boards can ${verb} less than ${amount(cut.lowerBound)}; this one ${verb}s ${amount(cut.cost)}${gap}.`
}

/** Boards by their numbers in the sheet: `boards 1 to 3, 7`. */
export const boardNumbers = (boards: readonly Pick<SheetBoard, 'number'>[]): string =>
  `${boards.length === 1 ? 'board' : 'boards'} ${piecesText(boards.map(({ number }) => ({ label: String(number) })))}`

/** What the saw is set to and what is cut there: `Rip, fence at 2 in`. */
export function settingWords({ saw, setting, side, what }: SawSetting<SheetBoard>, units: Units): string {
  const to = length(setting, units)
  if (saw === 'rip') return `Rip, fence at ${to}`
  const of = side === undefined || what === 'sections' ? '' : `, strips ${length(side, units)} wide`
  return `Crosscut, stop at ${to}${of}`
}
