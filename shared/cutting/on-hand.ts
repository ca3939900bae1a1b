import { nm } from '../units/length.ts'
import { amountOf, minorOf } from '../units/money.ts'
import { speciesKey } from '../wood/species.ts'
import type { Board, CutOrder, CutPlan } from './board.ts'
import { blanksOn, blanksWanted } from './cut-blanks.ts'
import { isPriced } from './priced.ts'
import { countsMoney } from './prices.ts'
import { type BoardWishes, boardToCut, type StockBoard } from './stock-board.ts'

/** What a job asks of boards on hand. */
interface Wanted {
  /** Key of the wood. */
  species: string
  lumber: BoardWishes & { fromRack: boolean }
}

/** What is left of the boards on the rack after those that started batches have reserved; without end stays so. */
export const freeBoards = <B extends StockBoard & { reserved?: { count: number }[] }>(
  boards: readonly B[],
): Omit<B, 'reserved'>[] =>
  boards.flatMap(({ reserved = [], ...board }) => {
    const count = board.count === null ? null : board.count - reserved.reduce((sum, by) => sum + by.count, 0)
    return count === null || count > 0 ? [{ ...board, count }] : []
  })

/** How many boards on hand of each key a plan cuts. */
export function takenOnHand({ boards }: Pick<CutPlan, 'boards'>): Map<string, number> {
  const counts = new Map<string, number>()
  for (const { key, onHand } of boards) if (onHand) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}

/** What a plan leaves of the boards it was made from. */
export function boardsLeft(boards: readonly StockBoard[], cut: Pick<CutPlan, 'boards'>): StockBoard[] {
  const taken = takenOnHand(cut)
  return freeBoards(boards.map((board) => ({ ...board, reserved: [{ count: taken.get(board.key) ?? 0 }] })))
}

/** Boards of the rack that a job may be cut from: of its wood, or of none that was written on them. */
export const boardsFor = ({ species, lumber }: Wanted, boards: readonly StockBoard[]): Board[] =>
  lumber.fromRack
    ? boards
        .filter((board) => board.species === undefined || speciesKey(board.species) === species)
        .map((board) => boardToCut(board, lumber))
    : []

/** Points of moisture content by which boards may differ from what is reckoned with: common practice, no source. */
const MOISTURE_APART = 2

const listed = (names: string[]): string => `${names.length === 1 ? 'Board' : 'Boards'} ${names.join(', ')}`

/**
 * What is to be minded about the boards on hand that a plan takes: moisture far from what the job reckons with
 * (%), wood that nobody wrote down.
 */
export function onHandCautions(
  cut: CutPlan,
  boards: readonly StockBoard[],
  job: { species: string; moisture: number },
): string[] {
  const taken = new Set(cut.boards.flatMap(({ key, onHand }) => (onHand ? [key] : [])))
  const used = boards.filter(({ key }) => taken.has(key))
  const far = used.filter(
    ({ moisture }) => moisture !== undefined && Math.abs(moisture - job.moisture) > MOISTURE_APART,
  )
  const nameless = used.filter(({ species }) => species === undefined).map(({ key }) => key)
  return [
    ...far.map(
      ({ key, moisture }) =>
        `Board ${key} is at ${moisture} % moisture and the job reckons with ${job.moisture} % when it is sawn: let it come to that first, or enter its moisture in the job, so that blanks are sawn with what they shrink by.`,
    ),
    ...(nameless.length > 0
      ? [
          `${listed(nameless)}: no wood is written down. The plan takes ${nameless.length === 1 ? 'it' : 'them'} for ${job.species}; look before you saw.`,
        ]
      : []),
  ]
}

/** That a board on hand would make the blank in one piece, where the stock the shop can get has it glued up. */
export function solidCaution(
  { boards }: CutOrder,
  { layers, sawn }: { layers: number; sawn: number },
): string | undefined {
  if (layers === 1) return undefined
  const thick = boards.filter((board) => board.onHand && nm(board.thickness) >= nm(sawn))
  if (thick.length === 0) return undefined
  return `${listed(thick.map(({ key }) => key))} on hand ${thick.length === 1 ? 'is' : 'are'} thick enough for the blank in one piece: with that thickness in the shop’s stock table the job is planned without glue lines.`
}

/** Blanks of an order that are not cut from boards on hand: those to buy wood for. */
export function blanksToBuy(order: CutOrder, cut: CutPlan): number {
  const onHand = cut.boards.filter((board) => board.onHand).flatMap(blanksOn)
  return blanksWanted(order) - onHand.length
}

/**
 * What the wood of a plan is worth, currency units: what is bought, and boards on hand by their own price, else by
 * the yard's per board foot. Absent when some of it has no price at all.
 */
export function woodWorth(order: CutOrder, cut: CutPlan, yardPrice?: number): number | undefined {
  const boards = new Map(order.boards.map((board) => [board.key, board]))
  const own = cut.boards.filter((board) => board.onHand)
  const isAllOwn = own.length > 0 && own.length === cut.boards.length
  if (!isAllOwn && !countsMoney(order)) return undefined
  const amounts = own.map(({ key, boardFeet }) => {
    const board = boards.get(key)!
    const rate = isPriced(board) ? board.pricePerBoardFoot : yardPrice
    return board.price ?? (rate === undefined ? undefined : rate * boardFeet)
  })
  if (amounts.some((amount) => amount === undefined)) return undefined
  const minor = amounts.reduce<number>((sum, amount) => sum + minorOf(amount!, order.currency), 0)
  return (countsMoney(order) ? cut.cost : 0) + amountOf(minor, order.currency)
}
