import { boardFeet, boardFeetTallied } from '../units/board-foot.ts'
import { nm } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'
import { type ClearWood, clearWood } from './clear.ts'
import { pricesOf } from './prices.ts'
import { type Corner, fittingAny } from './single.ts'

/** Blanks of one size, whatever their keys. Nanometres. */
export interface BlankSize {
  side: number
  length: number
  thickness: number
  /** Face with a kerf on two sides, square nanometres. */
  area: number
  count: number
  /** Whether some board takes one, alone on it. */
  fits: boolean
  /** Rows of the order they stand for. */
  rows: { key: string; count: number }[]
}

/** Sizes that fit some board and that boards of one thickness are thick enough for, as indices: one for all of them. */
export interface ThickEnough {
  name: number
  sizes: number[]
  /** The same by side, wide ones first. */
  sides: Side[]
}

/** Sizes to choose from for a row of clear runs, and their measure that counts there: strips fill lengths, sections sides. */
export interface Group {
  /** Tells the group from others of one search; the same name is always the same sizes. */
  name: string
  sizes: number[]
  measure: 'length' | 'side'
}

export interface Side extends Group {
  side: number
}

/** Boards that are alike in everything but their key. */
export interface BoardKind {
  board: Board
  /** Nanometres. */
  thickness: number
  wood: ClearWood
  /** Minor units. */
  cost: number
  boardFeet: number
  boardFeetTallied: number
  /** How many there are; Infinity: as many as needed. */
  available: number
  /** Boards of the order they stand for. */
  rows: { key: string; count: number }[]
  thickEnough: ThickEnough
  /** Places for one blank alone, by size, as they are looked for. */
  corners: Map<BlankSize, Corner | undefined>
}

/** How much is weighed against each other at a time; less where there are many sizes, for then close fits abound. */
export interface Breadth {
  /** Sizes for one run, sides or lengths for one board, boards at one step. */
  sizes: number
  parts: number
  boards: number
}

function breadthOf(sizes: number, kinds: number): Breadth {
  const boards = kinds <= 150 ? kinds : kinds <= 500 ? 8 : 4
  return sizes <= 24
    ? { sizes: 24, parts: 10, boards }
    : sizes <= 100
      ? { sizes: 24, parts: 6, boards }
      : { sizes: 14, parts: 4, boards }
}

/** A cut order as the search sees it: alike blanks and boards put together, lengths in nanometres. */
export interface SortedOrder {
  order: CutOrder
  kerf: number
  /** Wide sides first, then long, then thick. */
  sizes: BlankSize[]
  kinds: BoardKind[]
  breadth: Breadth
  perUnit: number
  priced: boolean
}

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function sizesOf(order: CutOrder): BlankSize[] {
  const sizes = new Map<string, BlankSize>()
  const kerf = nm(order.kerf)
  for (const blank of order.blanks) {
    const [side, length, thickness] = [nm(blank.side), nm(blank.length), nm(blank.thickness ?? blank.side)]
    const name = `${side} ${length} ${thickness}`
    const size = sizes.get(name) ?? {
      side,
      length,
      thickness,
      area: (side + kerf) * (length + kerf),
      count: 0,
      fits: false,
      rows: [],
    }
    size.count += blank.count
    size.rows.push({ key: blank.key, count: blank.count })
    sizes.set(name, size)
  }
  return [...sizes.values()].sort(
    (a, b) => b.side - a.side || b.length - a.length || b.thickness - a.thickness,
  )
}

/** By board thickness: the same list for boards that can serve the same sizes. */
function thickEnoughOf(sizes: BlankSize[]): (thickness: number) => ThickEnough {
  const steps = [...new Set(sizes.map((s) => s.thickness))].sort((a, b) => a - b)
  const lists = new Map<number, ThickEnough>()
  const listOf = (name: number, thickness: number): ThickEnough => {
    const all = sizes.flatMap((size, s) => (size.fits && size.thickness <= thickness ? [s] : []))
    const widths = [...new Set(all.map((s) => sizes[s]!.side))]
    const sides = widths.map((side): Side => {
      const own = all.filter((s) => sizes[s]!.side === side)
      return { name: `strip ${name} ${side}`, side, sizes: own, measure: 'length' }
    })
    return { name, sizes: all, sides }
  }
  return (thickness) => {
    const name = steps.filter((step) => step <= thickness).length
    const list = lists.get(name) ?? listOf(name, thickness)
    lists.set(name, list)
    return list
  }
}

function kindsOf(order: CutOrder): { kinds: BoardKind[]; perUnit: number; priced: boolean } {
  const prices = pricesOf(order)
  const kinds = new Map<string, BoardKind>()
  order.boards.forEach((board, i) => {
    if (board.count === 0) return
    const wood = clearWood(board, order)
    const cost = prices.minor[i]!
    const { width, length, thickness } = board
    const name = JSON.stringify([nm(width), nm(length), nm(thickness), cost, wood.usable, wood.defects])
    const kind: BoardKind = kinds.get(name) ?? {
      board,
      thickness: nm(board.thickness),
      wood,
      cost,
      boardFeet: boardFeet(board),
      boardFeetTallied: boardFeetTallied(board),
      available: 0,
      rows: [],
      thickEnough: { name: 0, sizes: [], sides: [] },
      corners: new Map(),
    }
    const count = board.count ?? Number.POSITIVE_INFINITY
    kind.available += count
    kind.rows.push({ key: board.key, count })
    kinds.set(name, kind)
  })
  const ranked = [...kinds].sort(([a, x], [b, y]) => x.cost - y.cost || text(a, b)).map(([, kind]) => kind)
  return { kinds: ranked, perUnit: prices.perUnit, priced: prices.priced }
}

/** The order with alike blanks and alike boards put together, in an order of its own: rows may come in any. */
export function sortedOrder(order: CutOrder): SortedOrder {
  const sizes = sizesOf(order)
  const { kinds, perUnit, priced } = kindsOf(order)
  const fits = fittingAny(kinds)
  for (const size of sizes) size.fits = fits(size)
  const thickEnough = thickEnoughOf(sizes)
  for (const kind of kinds) kind.thickEnough = thickEnough(kind.thickness)
  return {
    order,
    kerf: nm(order.kerf),
    sizes,
    kinds,
    breadth: breadthOf(sizes.length, kinds.length),
    perUnit,
    priced,
  }
}
