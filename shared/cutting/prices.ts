import { boardFeet, boardFeetTallied } from '../units/board-foot.ts'
import { minorDigits, minorOf } from '../units/money.ts'
import type { Board, CutOrder } from './board.ts'
import { isPriced } from './priced.ts'

/** What every board of an order costs, in whole minor units, so that costs are compared exactly. */
export interface Prices {
  /** By the place of the board in the order. */
  minor: number[]
  /** Minor units in one unit of cost: cents in a dollar, or parts of a board foot when nothing is priced. */
  perUnit: number
  /** Whether boards carry prices; else board feet count. */
  priced: boolean
}

/** 1/64 cubic inch: boards measured in quarters of an inch come out whole. */
const FINE_PARTS = 144 * 64
/** Parts of a board foot for boards of any other measure. */
const MICRO_PARTS = 1e6

/** Board feet that are paid for: as the board measures, or as the yard tallies it. */
const boughtFeet = (board: Board, order: Pick<CutOrder, 'priceBy'>): number =>
  order.priceBy === 'tally' ? boardFeetTallied(board) : boardFeet(board)

/** Whether the cost of an order is counted in money: some board to buy has a price; else board feet count. */
export const countsMoney = ({ boards }: Pick<CutOrder, 'boards'>): boolean =>
  boards.some((board) => !board.onHand && isPriced(board))

/**
 * What the boards cost. A board's own `price` stands before its price per board foot; without any prices the
 * cost is board feet (by `priceBy`), counted in parts fine enough to tell any two boards apart. Boards on hand
 * cost nothing beside boards to buy; by themselves they count by the feet they use up.
 */
export function pricesOf(order: Pick<CutOrder, 'boards' | 'priceBy' | 'currency'>): Prices {
  const { boards, currency } = order
  const priced = countsMoney(order)
  const isBuying = boards.some((board) => !board.onHand)
  const feet = boards.map((board) =>
    !board.onHand ? boughtFeet(board, order) : isBuying ? 0 : boardFeet(board),
  )
  if (priced) {
    const minor = boards.map((b, i) =>
      b.onHand ? 0 : minorOf(b.price ?? (b.pricePerBoardFoot ?? 0) * feet[i]!, currency),
    )
    return { minor, perUnit: 10 ** minorDigits(currency), priced }
  }
  const whole = feet.every((f) => Math.abs(f * FINE_PARTS - Math.round(f * FINE_PARTS)) < 1e-6)
  const perUnit = whole ? FINE_PARTS : MICRO_PARTS
  return { minor: feet.map((f) => Math.round(f * perUnit)), perUnit, priced }
}
