import { boardFeetNet } from '../units/board-foot.ts'
import { mmOfNm } from '../units/length.ts'
import { amountOf, minorOf } from '../units/money.ts'
import type { CutBoard, CutOrder, CutPlan, PlacedBlank } from './board.ts'
import type { Layout, Spot } from './layout.ts'
import { offcutsOf } from './offcuts.ts'
import { isPriced } from './priced.ts'
import type { Solution } from './solution.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'

/** Rows dealt out in the order's own order: the next key of a size or kind. */
class Dealer {
  readonly #rows: { key: string; count: number }[]
  #row = 0
  #dealt = 0

  constructor(rows: { key: string; count: number }[]) {
    this.#rows = rows
  }

  next(): { key: string; copy: number } {
    while (this.#dealt >= this.#rows[this.#row]!.count) {
      this.#row++
      this.#dealt = 0
    }
    this.#dealt++
    return { key: this.#rows[this.#row]!.key, copy: this.#dealt }
  }

  /** What has not been dealt. */
  left(): { key: string; count: number }[] {
    return this.#rows.flatMap(({ key, count }, i) => {
      const rest = i < this.#row ? 0 : i === this.#row ? count - this.#dealt : count
      return rest > 0 ? [{ key, count: rest }] : []
    })
  }
}

/**
 * The plan as it is read out: boards in order of cost with each blank by its key, what was bought, what it
 * yields, and everything that could not be cut in `unmet`.
 */
export function planOf(
  sorted: SortedOrder,
  solution: Solution,
  boundMinor: number,
  proven: boolean,
): CutPlan {
  const blanks = sorted.sizes.map((size) => new Dealer(size.rows))
  const kinds = sorted.kinds.map((kind) => new Dealer(kind.rows))
  const cuts = [...solution.cuts].sort((a, b) => a.kind - b.kind || b.copies - a.copies)
  const boards = marked(
    sorted.order,
    cuts.flatMap(({ kind, layout, copies }) =>
      Array.from({ length: copies }, () =>
        boardOf(sorted, sorted.kinds[kind]!, layout, kinds[kind]!, blanks),
      ),
    ),
  )
  const boardFeetInBlanks = inBlanks(sorted, cuts)
  const feet = feetOf(sorted.order, boards)
  const boardFeetCut = feet.boardFeetBought + (feet.boardFeetOnHand ?? 0)
  const cost = sorted.priced ? solution.cost / sorted.perUnit : feetCounted(sorted.order, feet)
  return {
    boards,
    ...feet,
    boardFeetInBlanks,
    yield: boardFeetCut > 0 ? boardFeetInBlanks / boardFeetCut : 0,
    cost,
    lowerBound: boundMinor >= solution.cost ? cost : Math.min(cost, boundMinor / sorted.perUnit),
    proven,
    unmet: unmetOf(sorted, blanks),
    seconds: 0,
  }
}

/** The boards cut, those that were the shop’s own marked so: boards alike in all else may be either. */
function marked({ boards: offered }: CutOrder, cut: CutBoard[]): CutBoard[] {
  const onHand = new Set(offered.filter((b) => b.onHand).map(({ key }) => key))
  return onHand.size === 0
    ? cut
    : cut.map((board) => (onHand.has(board.key) ? { ...board, onHand: true } : board))
}

type Feet = Pick<CutPlan, 'boardFeetBought' | 'boardFeetTallied' | 'boardFeetOnHand' | 'worthOnHand'>

/** What is bought for a plan, and what is cut from boards on hand and was worth. */
export function feetOf({ boards: offered, currency }: CutOrder, cut: CutBoard[]): Feet {
  const bought = cut.filter((board) => !board.onHand)
  const boardFeetBought = sum(bought.map((b) => b.boardFeet))
  const boardFeetTallied = sum(bought.map((b) => b.boardFeetTallied))
  const own = new Map(offered.filter((board) => board.onHand).map((board) => [board.key, board]))
  if (own.size === 0) return { boardFeetBought, boardFeetTallied }
  const used = cut.flatMap(({ key, boardFeet }) => {
    const board = own.get(key)
    return board ? [{ board, boardFeet }] : []
  })
  const boardFeetOnHand = sum(used.map((u) => u.boardFeet))
  const feet = { boardFeetBought, boardFeetTallied, boardFeetOnHand }
  if (used.length === 0 || !used.every(({ board }) => isPriced(board))) return feet
  const minor = used.map(({ board, boardFeet: f }) =>
    minorOf(board.price ?? board.pricePerBoardFoot! * f, currency),
  )
  return { ...feet, worthOnHand: amountOf(sum(minor), currency) }
}

/** The feet that stand for cost where nothing is priced. */
export function feetCounted({ boards, priceBy }: CutOrder, feet: Feet): number {
  if (boards.every((board) => board.onHand)) return feet.boardFeetOnHand ?? 0
  return priceBy === 'tally' ? feet.boardFeetTallied : feet.boardFeetBought
}

const sum = (numbers: number[]): number => numbers.reduce((a, b) => a + b, 0)

function inBlanks(sorted: SortedOrder, cuts: Solution['cuts']): number {
  let feet = 0
  for (const { layout, copies } of cuts) {
    for (const [s, count] of layout.takes) {
      const { side, length, thickness } = sorted.sizes[s]!
      feet +=
        copies *
        count *
        boardFeetNet({ thickness: mmOfNm(thickness), width: mmOfNm(side), length: mmOfNm(length) })
    }
  }
  return feet
}

/** What is missing, in the order of the rows. */
function unmetOf(sorted: SortedOrder, blanks: Dealer[]): CutPlan['unmet'] {
  const missing = new Map(blanks.flatMap((dealer) => dealer.left()).map((row) => [row.key, row.count]))
  return sorted.order.blanks.flatMap(({ key }) =>
    missing.has(key) ? [{ key, count: missing.get(key)! }] : [],
  )
}

function boardOf(
  sorted: SortedOrder,
  kind: BoardKind,
  layout: Layout,
  dealer: Dealer,
  blanks: Dealer[],
): CutBoard {
  const { board } = kind
  const place = ({ size, along, across }: Spot): PlacedBlank => {
    const { length, side } = sorted.sizes[size]!
    return {
      key: blanks[size]!.next().key,
      from: mmOfNm(along),
      to: mmOfNm(along + length),
      across: [mmOfNm(across), mmOfNm(across + side)],
    }
  }
  const base = {
    ...dealer.next(),
    process: layout.process,
    width: board.width,
    length: board.length,
    thickness: board.thickness,
    boardFeet: kind.boardFeet,
    boardFeetTallied: kind.boardFeetTallied,
    ...(sorted.priced ? { cost: kind.cost / sorted.perUnit } : {}),
  }
  const stripLayouts = layout.strips?.().sort((a, b) => a.across - b.across)
  const sectionLayouts = layout.sections?.().sort((a, b) => a.along[0] - b.along[0])
  const offcuts = offcutsOf(
    kind.wood,
    { strips: stripLayouts, sections: sectionLayouts },
    sorted.sizes,
    sorted.order,
  )
  const strips = stripLayouts?.map(({ side, across, spots }) => ({
    side: mmOfNm(side),
    across: [mmOfNm(across), mmOfNm(across + side)] as [number, number],
    blanks: [...spots].sort((a, b) => a.along - b.along).map(place),
  }))
  const sections = sectionLayouts?.map(({ along, spots }) => ({
    from: mmOfNm(along[0]),
    to: mmOfNm(along[1]),
    blanks: [...spots].sort((a, b) => a.across - b.across).map(place),
  }))
  return { ...base, ...(strips ? { strips } : { sections: sections! }), offcuts }
}
