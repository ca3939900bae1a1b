import { nm } from '../units/length.ts'
import type { Board, CutBoard, CutOrder, CutPlan } from './board.ts'
import { blanksOn, blanksWanted } from './cut-blanks.ts'
import { feetCounted, feetOf } from './plan-of.ts'
import { pricesOf } from './prices.ts'
import { quickCut } from './quick.ts'

/** Lists of boards longer than this are not gone through: a lumber shed has fewer. */
const BOARDS_MAX = 2000
/** Entries of the table above which it is not made. */
const TABLE_MAX = 4_000_000

/** A plan in which blanks that belong together come from one board, and what it costs to insist on that. */
export interface SameBoard {
  cut: CutPlan
  /** What it costs more than the plan it is compared with: currency units, or board feet without prices; never below 0. */
  more: number
  /** Boards more than that plan has. */
  boardsMore: number
}

/** Boards that yield so many of the sets that must not be parted. */
interface Source {
  board: Board
  minor: number
  sets: number
  available: number
}

/**
 * What it costs to insist that every `together` blanks come from one board: all of them when not said, the layers
 * of a glue-up when it is their number. The least cost, then the fewest boards, of all plans in which each board
 * gives whole sets. Absent where no boards of the order can do it, where blanks are missing anyway, and for orders
 * of several kinds of blanks unless all are to come from one board.
 */
export function sameBoardPrice(order: CutOrder, cut: CutPlan, together?: number): SameBoard | undefined {
  const all = blanksWanted(order)
  const size = together ?? all
  const parted = size < all
  if (cut.unmet.length > 0 || order.boards.length > BOARDS_MAX) return undefined
  if (parted && (order.blanks.length > 1 || all % size !== 0)) return undefined
  const { minor, perUnit } = pricesOf(order)
  const yields = new Yields(order)
  const faces = order.blanks.reduce((sum, { side, length, count }) => sum + side * length * count, 0)
  // A hair less: the saw's own sizes are compared exactly.
  const least = ((faces * size) / all) * (1 - 1e-9)
  const sources = order.boards.flatMap((board, i): Source[] => {
    const available = board.count ?? Number.POSITIVE_INFINITY
    const sets =
      available > 0 && board.width * board.length >= least ? Math.floor(yields.most(board) / size) : 0
    return sets > 0 ? [{ board, minor: minor[i]!, sets, available }] : []
  })
  const chosen = cheapest(sources, all / size)
  if (!chosen) return undefined
  const boards = boardsOf(chosen, all, size, yields)
  const cost = chosen.reduce((sum, { source, boards }) => sum + boards * source.minor, 0)
  return {
    cut: planWith(cut, boards, order),
    more: Math.max(0, cost - Math.round(cut.cost * perUnit)) / perUnit,
    boardsMore: boards.length - cut.boards.length,
  }
}

/** What single boards yield, reckoned once for boards that are alike. */
class Yields {
  readonly #order: CutOrder
  readonly #known = new Map<string, CutPlan>()

  constructor(order: CutOrder) {
    this.#order = order
  }

  /** The cut of one such board: into so many blanks of an order of one kind, else into all. */
  cut(board: Board, count?: number): CutBoard | undefined {
    return this.#plan(board, count).boards[0]
  }

  most(board: Board): number {
    return countOn(this.cut(board))
  }

  #plan(board: Board, count?: number): CutPlan {
    const { key: _key, count: _count, price: _price, pricePerBoardFoot: _rate, ...wood } = board
    const name = JSON.stringify([wood, count])
    const blanks = this.#order.blanks.map((blank) => (count === undefined ? blank : { ...blank, count }))
    const plan =
      this.#known.get(name) ?? quickCut({ ...this.#order, blanks, boards: [{ ...board, count: 1 }] })
    this.#known.set(name, plan)
    return plan
  }
}

const countOn = (cut: CutBoard | undefined): number => (cut ? blanksOn(cut).length : 0)

interface Chosen {
  source: Source
  boards: number
}

/** The boards of least cost, then fewest, that hold so many sets. */
function cheapest(sources: Source[], sets: number): Chosen[] | undefined {
  const lots = sources.flatMap((source) => lotsOf(source, sets))
  if (lots.length * sets > TABLE_MAX) return undefined
  const least: (Weight | undefined)[] = [{ minor: 0, boards: 0 }]
  const taken = lots.map(({ source, boards }) => {
    const marks = new Uint8Array(sets + 1)
    for (let n = sets; n > 0; n--) {
      const before = least[Math.max(0, n - boards * source.sets)]
      if (!before) continue
      const weight = { minor: before.minor + boards * source.minor, boards: before.boards + boards }
      if (!isLess(weight, least[n])) continue
      least[n] = weight
      marks[n] = 1
    }
    return marks
  })
  if (!least[sets]) return undefined
  const chosen = new Map<Source, number>()
  for (let lot = lots.length - 1, n = sets; lot >= 0; lot--) {
    if (taken[lot]![n] !== 1) continue
    const { source, boards } = lots[lot]!
    chosen.set(source, (chosen.get(source) ?? 0) + boards)
    n = Math.max(0, n - boards * source.sets)
  }
  return [...chosen]
    .map(([source, boards]) => ({ source, boards }))
    .sort((a, b) => b.source.sets - a.source.sets)
}

interface Weight {
  minor: number
  boards: number
}

const isLess = (a: Weight, b: Weight | undefined): boolean =>
  !b || a.minor < b.minor || (a.minor === b.minor && a.boards < b.boards)

/** Boards in lots of 1, 2, 4 …, which make up any number of them. */
function lotsOf(source: Source, sets: number): Chosen[] {
  const lots: Chosen[] = []
  let left = Math.min(source.available, Math.ceil(sets / source.sets))
  for (let boards = 1; left > 0; boards *= 2) {
    const n = Math.min(boards, left)
    left -= n
    lots.push({ source, boards: n })
  }
  return lots
}

/** The chosen boards as they are cut, the last of them into no more than is wanted. */
function boardsOf(chosen: Chosen[], all: number, size: number, yields: Yields): CutBoard[] {
  const cuts: CutBoard[] = []
  let left = all
  for (const { source, boards } of chosen) {
    for (let copy = 1; copy <= boards && left > 0; copy++) {
      const count = Math.min(left, source.sets * size)
      cuts.push({
        ...yields.cut(source.board, size === all ? undefined : count)!,
        key: source.board.key,
        copy,
      })
      left -= count
    }
  }
  return cuts
}

/** The plan with other boards that yield the same blanks. */
function planWith(cut: CutPlan, boards: CutBoard[], order: CutOrder): CutPlan {
  const { minor, perUnit, priced } = pricesOf(order)
  const minorOf = new Map(order.boards.map(({ key }, i) => [key, minor[i]!]))
  const feet = feetOf(order, boards)
  const feetCut = feet.boardFeetBought + (feet.boardFeetOnHand ?? 0)
  const spent = boards.reduce((sum, { key }) => sum + minorOf.get(key)!, 0)
  const cost = priced ? spent / perUnit : feetCounted(order, feet)
  const { boardFeetOnHand: _feet, worthOnHand: _worth, ...rest } = cut
  return {
    ...rest,
    boards: boards.map(({ cost: _cost, ...board }) => ({
      ...board,
      ...(priced && { cost: minorOf.get(board.key)! / perUnit }),
    })),
    ...feet,
    yield: feetCut > 0 ? cut.boardFeetInBlanks / feetCut : 0,
    cost,
    lowerBound: Math.min(cut.lowerBound, cost),
    proven: cut.proven && spent <= Math.round(cut.cost * perUnit),
  }
}

/** What belongs together of a job’s blanks. */
export interface Together {
  /** Blanks glued up to one. */
  layers: number
  /** All from one board, whatever it costs. */
  insist: boolean
}

/**
 * The plan with all blanks from one board where that costs nothing more and takes no more boards, or where it is
 * insisted on; else with the layers of each glue-up from one board where that costs nothing. Else the plan itself.
 */
export function keptTogether(order: CutOrder, cut: CutPlan, { layers, insist }: Together): CutPlan {
  if (cut.boards.length <= 1) return cut
  const one = sameBoardPrice(order, cut)
  if (one && (insist || isFree(one))) return one.cut
  if (layers === 1 || glueUpsParted(cut, layers) === 0) return cut
  const glued = sameBoardPrice(order, cut, layers)
  return glued && isFree(glued) ? glued.cut : cut
}

const isFree = ({ more, boardsMore }: SameBoard): boolean => nm(more) === 0 && boardsMore <= 0

/** Glue-ups of so many layers that cannot all come from one board of the plan. */
export const glueUpsParted = (cut: CutPlan, layers: number): number =>
  Math.ceil(cut.boards.reduce((sum, board) => sum + (countOn(board) % layers), 0) / layers)
