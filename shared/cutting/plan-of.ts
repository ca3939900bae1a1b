import { boardFeetNet } from '../units/board-foot.ts'
import { mmOfNm } from '../units/length.ts'
import type { CutBoard, CutPlan, PlacedBlank } from './board.ts'
import type { Layout, Spot } from './layout.ts'
import { offcutsOf } from './offcuts.ts'
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
  const boards = cuts.flatMap(({ kind, layout, copies }) =>
    Array.from({ length: copies }, () => boardOf(sorted, sorted.kinds[kind]!, layout, kinds[kind]!, blanks)),
  )
  const boardFeetBought = sum(boards.map((b) => b.boardFeet))
  const boardFeetTallied = sum(boards.map((b) => b.boardFeetTallied))
  const boardFeetInBlanks = inBlanks(sorted, cuts)
  const cost = sorted.priced
    ? solution.cost / sorted.perUnit
    : sorted.order.priceBy === 'tally'
      ? boardFeetTallied
      : boardFeetBought
  return {
    boards,
    boardFeetBought,
    boardFeetTallied,
    boardFeetInBlanks,
    yield: boardFeetBought > 0 ? boardFeetInBlanks / boardFeetBought : 0,
    cost,
    lowerBound: boundMinor >= solution.cost ? cost : Math.min(cost, boundMinor / sorted.perUnit),
    proven,
    unmet: unmetOf(sorted, blanks),
    seconds: 0,
  }
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
