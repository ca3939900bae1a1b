import { boardFeet, boardFeetTallied } from '../units/board-foot.ts'
import { nm } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'
import { type ClearWood, clearWood } from './clear.ts'
import { pricesOf } from './prices.ts'

/** Blanks of one size, whatever their keys. Nanometres. */
export interface BlankSize {
  side: number
  length: number
  thickness: number
  count: number
  /** Rows of the order they stand for. */
  rows: { key: string; count: number }[]
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
  /** Sizes it is thick enough for, as indices. */
  thickEnough: number[]
}

/** A cut order as the search sees it: alike blanks and boards put together, lengths in nanometres. */
export interface Stock {
  order: CutOrder
  kerf: number
  /** Wide sides first, then long, then thick. */
  sizes: BlankSize[]
  kinds: BoardKind[]
  perUnit: number
  priced: boolean
}

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function sizesOf(order: CutOrder): BlankSize[] {
  const sizes = new Map<string, BlankSize>()
  for (const blank of order.blanks) {
    const [side, length, thickness] = [nm(blank.side), nm(blank.length), nm(blank.thickness ?? blank.side)]
    const name = `${side} ${length} ${thickness}`
    const size = sizes.get(name) ?? { side, length, thickness, count: 0, rows: [] }
    size.count += blank.count
    size.rows.push({ key: blank.key, count: blank.count })
    sizes.set(name, size)
  }
  return [...sizes.values()].sort(
    (a, b) => b.side - a.side || b.length - a.length || b.thickness - a.thickness,
  )
}

/** The order with alike blanks and alike boards put together, in an order of its own: rows may come in any. */
export function stockOf(order: CutOrder): Stock {
  const prices = pricesOf(order)
  const sizes = sizesOf(order)
  const kinds = new Map<string, BoardKind>()
  order.boards.forEach((board, i) => {
    if (board.count === 0) return
    const wood = clearWood(board, order)
    const cost = prices.minor[i]!
    const name = JSON.stringify([nm(board.width), nm(board.length), nm(board.thickness), cost, wood.defects])
    const kind = kinds.get(name) ?? {
      board,
      thickness: nm(board.thickness),
      wood,
      cost,
      boardFeet: boardFeet(board),
      boardFeetTallied: boardFeetTallied(board),
      available: 0,
      rows: [],
      thickEnough: sizes.flatMap((size, s) => (size.thickness <= nm(board.thickness) ? [s] : [])),
    }
    kind.available += board.count ?? Number.POSITIVE_INFINITY
    kind.rows.push({ key: board.key, count: board.count ?? Number.POSITIVE_INFINITY })
    kinds.set(name, kind)
  })
  const sorted = [...kinds].sort(([a, x], [b, y]) => x.cost - y.cost || text(a, b)).map(([, kind]) => kind)
  return { order, kerf: nm(order.kerf), sizes, kinds: sorted, perUnit: prices.perUnit, priced: prices.priced }
}
