import type { Board, CutOrder, CutPlan } from '../shared/cutting/board.ts'
import { pickOf } from '../shared/cutting/pick.ts'
import { sawableBoard } from '../shared/cutting/stock-board.ts'
import { ordersTogether } from '../shared/cutting/together.ts'
import {
  billedFeet,
  boardPriceMinor,
  pricePerBoardFoot,
  soldAs,
  usualTerms,
  type YardCharge,
  type YardTerms,
  yardCharge,
} from '../shared/cutting/yard-terms.ts'
import { amountOf, minorOf } from '../shared/units/money.ts'
import { onPile, type PulledBoard, speciesOf, type YardNeed, type YardTally } from './yard-tally.ts'

/** What this yard sells by; as the shop's plans count where no yard is chosen. */
export const termsOf = ({ terms, needs }: Pick<YardTally, 'terms' | 'needs'>): YardTerms =>
  terms ?? { ...usualTerms, name: '', counts: needs[0]?.order.priceBy ?? usualTerms.counts }

const sortOf = ({ board, nominal }: PulledBoard, tally: YardTally) => ({
  species: speciesOf(tally) ?? board.species ?? '*',
  width: board.width,
  length: board.length,
  thickness: board.thickness,
  ...(nominal !== undefined && { nominal }),
  ...(tally.needs[0]?.surfaced && { surfaced: true }),
  ...(gradeOf(board.grade) && { grade: gradeOf(board.grade)! }),
})

/** A grade the price lists know; another word is none. */
type Graded = NonNullable<Parameters<typeof boardPriceMinor>[0]['grade']>
const gradeOf = (grade: string | undefined): Graded | undefined => grade as Graded | undefined

/** Board feet of a board as this yard counts them. */
export const feetOf = (pulled: PulledBoard, tally: YardTally): number =>
  billedFeet(sortOf(pulled, tally), termsOf(tally))

/** What the yard asks for a board, whole minor units: its own price before the yard's list; nothing without either. */
export function costOf(pulled: PulledBoard, tally: YardTally): number | undefined {
  const { price, pricePerBoardFoot } = pulled.board
  if (price !== undefined) return minorOf(price, tally.currency)
  if (pricePerBoardFoot !== undefined)
    return minorOf(pricePerBoardFoot * feetOf(pulled, tally), tally.currency)
  return boardPriceMinor(sortOf(pulled, tally), termsOf(tally), tally.currency)
}

/** What the yard's list asks a board foot of such a board, currency units; nothing where it has no price for it. */
export function listPriceOf(
  tally: YardTally,
  {
    nominal,
    thickness,
    grade,
  }: { nominal?: string | undefined; thickness: number; grade?: string | undefined },
): number | undefined {
  const [need] = tally.needs
  const surfaced = need?.surfaced === true
  return pricePerBoardFoot(termsOf(tally), {
    species: speciesOf(tally) ?? '*',
    nominal: nominal ?? soldAs(thickness, surfaced),
    surfaced,
    ...(gradeOf(grade) && { grade: gradeOf(grade)! }),
  })
}

/** Feet of some boards together, and what is paid for them. */
export interface Sum {
  boards: number
  feet: number
  /** Whole minor units; absent where a board has no price. */
  minor?: number
  /** The boards cost less by themselves: what is paid is the yard’s least charge. */
  isLeastCharge?: true
}

/** What is paid for these boards as one order, the yard’s least charge where they come to less. */
export function sumOf(boards: readonly PulledBoard[], tally: YardTally): Sum {
  const { feet, total, toMinimum, unpriced } = chargeOf(boards, tally)
  return {
    boards: boards.length,
    feet,
    ...(unpriced === 0 && { minor: total, ...(toMinimum > 0 && { isLeastCharge: true }) }),
  }
}

/** The least that can be paid where the boards come to so much at least (whole minor units), the least charge heeded. */
function leastPaid(boardsMinor: number, tally: YardTally): number {
  // Nothing at all may be paid only where no board has to be bought.
  return boardsMinor > 0 ? Math.max(boardsMinor, minorOf(termsOf(tally).minimumCharge, tally.currency)) : 0
}

/** What is wanted of all jobs, as one order without boards from the yard. */
export const wantedOrder = (needs: readonly YardNeed[]): CutOrder =>
  ordersTogether(needs.map(({ job, name, order }) => ({ key: job, name, order })))

/**
 * The order the search gets: what is wanted of all jobs, from boards on hand (they cost nothing) and those on the
 * pile. A board that is taken anyway costs nothing more either. Nothing without needs or boards.
 * @throws RangeError where the jobs are priced in different currencies
 */
export function orderOf(tally: YardTally): CutOrder | undefined {
  if (tally.needs.length === 0) return undefined
  const pile = onPile(tally)
  const wanted = wantedOrder(tally.needs)
  if (pile.length + wanted.boards.length === 0) return undefined
  const sap = tally.needs.some((need) => need.sap === 'none') ? 'none' : 'allowed'
  const priced = pile.every((pulled) => costOf(pulled, tally) !== undefined)
  const boards = pile.map((pulled): Board => {
    const { price: _price, pricePerBoardFoot: _perFoot, ...board } = sawableBoard(pulled.board, { sap })
    if (pulled.taken) return { ...board, onHand: true }
    return priced ? { ...board, price: amountOf(costOf(pulled, tally)!, tally.currency) } : board
  })
  return { ...wanted, currency: tally.currency, boards: [...wanted.boards, ...boards] }
}

/** What the search makes of a tally. */
export interface Choice {
  wanted: number
  missing: number
  /** Boards to keep and boards to put back, in the order they lie. */
  keep: PulledBoard[]
  back: PulledBoard[]
  /** Boards of the shop's own that are used. */
  onHand: number
  /** What is paid for what is kept, and the least that any choice could be paid for, taken boards in both. */
  sum: Sum
  leastMinor?: number
  proven: boolean
  plan: CutPlan
}

/** Reads a plan for `orderOf(tally)`: what to keep, what goes back, what it costs and how far from the least. */
export function choiceOf(tally: YardTally, order: CutOrder, plan: CutPlan): Choice {
  const { wanted, missing, used } = pickOf(order, plan)
  const pile = onPile(tally)
  const isKept = (pulled: PulledBoard) => pulled.taken === true || used.has(pulled.board.key)
  const keep = pile.filter(isKept)
  const keys = new Set(pile.map(({ board }) => board.key))
  const taken = chargeOf(
    pile.filter((pulled) => pulled.taken),
    tally,
  )
  const sum = sumOf(keep, tally)
  const priced = order.boards.some(({ onHand, price }) => !onHand && price !== undefined)
  const leastMinor =
    priced && taken.unpriced === 0
      ? leastPaid(taken.wood + minorOf(plan.lowerBound, tally.currency), tally)
      : undefined
  return {
    wanted,
    missing,
    keep,
    back: pile.filter((pulled) => !isKept(pulled)),
    onHand: [...used].filter((key) => !keys.has(key)).length,
    sum,
    ...(leastMinor !== undefined && { leastMinor }),
    // No search has to prove what the least charge makes so.
    proven: plan.proven || (leastMinor !== undefined && missing === 0 && sum.minor === leastMinor),
    plan,
  }
}

/** What the yard charges for these boards with what its least order and least charge add. */
export const chargeOf = (boards: readonly PulledBoard[], tally: YardTally): YardCharge =>
  yardCharge(
    boards.map((pulled) => {
      const priceMinor = costOf(pulled, tally)
      return { ...sortOf(pulled, tally), ...(priceMinor !== undefined && { priceMinor }) }
    }),
    termsOf(tally),
    tally.currency,
  )
