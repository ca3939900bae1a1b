import { mmOfNm, nm } from '../units/length.ts'
import type { Board, CutBoard, CutOrder, CutPlan } from './board.ts'
import { type ClearWood, clearWood, type Run } from './clear.ts'
import type { SectionLayout, Spot, StripLayout } from './layout.ts'
import { offcutsOf } from './offcuts.ts'
import { BEST_RIFT, heartOf, ringAngle } from './rings.ts'
import { type SortedOrder, sortedOrder } from './sorted-order.ts'

/** Parts of a row are tried in every order up to so many; beyond, as they lie and turned about. */
const ORDERS_MAX = 5

/** Why strips do not lie side by side from the edge on, said of jobs that ask for rift. */
export const riftWords =
  'The job asks for rift: strips lie where the rings come nearest to 45° to the face, and what wood is to spare is left between them.'

/** What lies side by side across a board: strips, or the blanks of a section. Nanometres. */
interface RowPart {
  side: number
  blanks: number
  across: number
}

/**
 * The plan with its strips moved across their boards so that the rings come nearer to 45° to the faces, where wood
 * is to spare: some from one edge, the others from the other edge. Nothing else changes: the same strips, blanks,
 * boards and cost, and no offcut is lost or shortened. Where a board does not tell its heart, the heart is taken
 * to lie under the middle, as in a flat-sawn board: rift is near its edges (common practice, no source). Boards
 * with defects that are neither as wide nor as long as the board stay as they are.
 */
export function riftPlaces(order: CutOrder, cut: CutPlan): CutPlan {
  const sorted = sortedOrder(order)
  const known = new Map(order.boards.map((board) => [board.key, board]))
  const alike = new Map<string, CutBoard>()
  const boards = cut.boards.map((one) => {
    const board = known.get(one.key)!
    const { strips, sections } = one
    const { width, length, thickness, heart, defects } = board
    const name = JSON.stringify([strips, sections, width, length, thickness, heart, defects])
    const done = alike.get(name) ?? moved(sorted, one, board)
    alike.set(name, done)
    return {
      ...one,
      ...(done.strips && { strips: done.strips }),
      ...(done.sections && { sections: done.sections }),
      offcuts: done.offcuts,
    }
  })
  return { ...cut, boards }
}

function moved(sorted: SortedOrder, cut: CutBoard, board: Board): CutBoard {
  const wood = clearWood(board, sorted.order)
  const bands = separateBands(wood, sorted.kerf)
  if (wood.partial || !bands) return cut
  let now = cut
  for (let row = 0; row < rowsOf(cut).length; row++) {
    for (const band of bands) {
      const places = placesIn(rowsOf(now)[row]!, band, sorted.kerf, costAt(board))
      const better = places
        .map((place) => withPlaces(sorted, wood, now, row, place))
        .find(({ offcuts }) => keepsOffcuts(now, offcuts))
      if (better) now = better
    }
  }
  return now
}

/** Bands a kerf apart at least, so that each can be filled by itself. */
function separateBands({ whole }: ClearWood, kerf: number): Run[] | undefined {
  return whole.bands.every((band, i) => i === 0 || band[0] - whole.bands[i - 1]![1] >= kerf)
    ? whole.bands
    : undefined
}

const acrossOf = ([low, high]: readonly [number, number]): { side: number; across: number } => ({
  side: nm(high) - nm(low),
  across: nm(low),
})

function rowsOf({ strips, sections }: CutBoard): RowPart[][] {
  if (strips) return [strips.map(({ across, blanks }) => ({ ...acrossOf(across), blanks: blanks.length }))]
  return (sections ?? []).map(({ blanks }) =>
    blanks.map(({ across }) => ({ ...acrossOf(across), blanks: 1 })),
  )
}

/** How bad a place is for a strip: degrees off 45, or how near the middle where the heart is not known. */
function costAt(board: Board): (middle: number) => number {
  const heart = heartOf(board)
  if (!heart) return (middle) => -Math.abs(mmOfNm(middle) - board.width / 2)
  return (middle) =>
    Math.abs(ringAngle(heart, { across: mmOfNm(middle), below: board.thickness / 2 }) - BEST_RIFT)
}

/** New places by the part’s number in its row, the best first; only those that are better than now. */
function placesIn(
  row: RowPart[],
  band: Run,
  kerf: number,
  cost: (middle: number) => number,
): Map<number, number>[] {
  const inside = row.flatMap(({ side, across }, i) =>
    across >= band[0] && across + side <= band[1] ? [i] : [],
  )
  const costOf = (places: Map<number, number>) =>
    [...places].reduce((sum, [i, across]) => sum + row[i]!.blanks * cost(across + row[i]!.side / 2), 0)
  const now = costOf(new Map(inside.map((i) => [i, row[i]!.across])))
  return (
    ordersOf(inside, (i) => `${row[i]!.side} ${row[i]!.blanks}`)
      .flatMap((order) => order.concat(-1).map((_, split) => splitPlaces(row, order, split, band, kerf)))
      .map((places) => ({ places, cost: costOf(places) }))
      // A thousandth of a degree is no reason to move a fence.
      .filter(({ cost }) => cost < now - 1e-3)
      .sort((a, b) => a.cost - b.cost)
      .map(({ places }) => places)
  )
}

/** Every order of a few parts, those that are alike in name but once; of many as they lie and turned about. */
function ordersOf(parts: number[], nameOf: (part: number) => string): number[][] {
  if (parts.length > ORDERS_MAX) return [parts, [...parts].reverse()]
  if (parts.length <= 1) return [parts]
  const first = new Map(parts.map((part) => [nameOf(part), part]))
  return [...first.values()].flatMap((one) =>
    ordersOf(
      parts.filter((other) => other !== one),
      nameOf,
    ).map((rest) => [one, ...rest]),
  )
}

/** The first `split` parts from the low edge on, the others up to the high edge. */
function splitPlaces(
  row: RowPart[],
  order: number[],
  split: number,
  band: Run,
  kerf: number,
): Map<number, number> {
  const places = new Map<number, number>()
  let low = band[0]
  for (const i of order.slice(0, split)) {
    places.set(i, low)
    low += row[i]!.side + kerf
  }
  let high = band[1]
  for (const i of order.slice(split).reverse()) {
    places.set(i, high - row[i]!.side)
    high -= row[i]!.side + kerf
  }
  return places
}

/** No fewer offcuts, and none shorter. */
function keepsOffcuts(before: CutBoard, after: CutBoard['offcuts']): boolean {
  const lengths = (offcuts: CutBoard['offcuts']) =>
    offcuts.map(({ from, to }) => nm(to) - nm(from)).sort((a, b) => b - a)
  const now = lengths(after)
  return lengths(before.offcuts).every((length, i) => (now[i] ?? 0) >= length)
}

function withPlaces(
  sorted: SortedOrder,
  wood: ClearWood,
  cut: CutBoard,
  row: number,
  places: Map<number, number>,
): CutBoard {
  const across = (low: number, old: readonly [number, number]): [number, number] => [
    mmOfNm(low),
    mmOfNm(low + nm(old[1]) - nm(old[0])),
  ]
  const board = { ...cut }
  if (cut.strips)
    board.strips = cut.strips
      .map((strip, i) => {
        const to = across(places.get(i) ?? nm(strip.across[0]), strip.across)
        return { ...strip, across: to, blanks: strip.blanks.map((blank) => ({ ...blank, across: to })) }
      })
      .sort((a, b) => a.across[0] - b.across[0])
  if (cut.sections)
    board.sections = cut.sections.map((section, s) => ({
      ...section,
      blanks: section.blanks
        .map((blank, i) =>
          s === row
            ? { ...blank, across: across(places.get(i) ?? nm(blank.across[0]), blank.across) }
            : blank,
        )
        .sort((a, b) => a.across[0] - b.across[0]),
    }))
  return { ...board, offcuts: offcutsOf(wood, layoutsOf(sorted, board), sorted.sizes, sorted.order) }
}

/** The board as the search holds it, nanometres. */
function layoutsOf(
  sorted: SortedOrder,
  { strips, sections }: CutBoard,
): { strips?: StripLayout[]; sections?: SectionLayout[] } {
  const size = (key: string) => sorted.sizes.findIndex(({ rows }) => rows.some((row) => row.key === key))
  const spot = ({ key, from, across }: { key: string; from: number; across: [number, number] }): Spot => ({
    size: size(key),
    along: nm(from),
    across: nm(across[0]),
  })
  return {
    ...(strips && {
      strips: strips.map(({ side, across, blanks }) => ({
        side: nm(side),
        across: nm(across[0]),
        spots: blanks.map(spot),
      })),
    }),
    ...(sections && {
      sections: sections.map(({ from, to, blanks }) => ({
        along: [nm(from), nm(to)] as Run,
        spots: blanks.map(spot),
      })),
    }),
  }
}
