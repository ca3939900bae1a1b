import type { Board, CutOrder } from '../../../shared/cutting/board.ts'

/**
 * The best plan of a tiny order in whole millimetres by trying every millimetre: whatever starts at one, or
 * nothing. Defects may lie anywhere. Shares no code and no reasoning about where blanks may start with the
 * search. Counts of each blank stand in a list joined to a word.
 */
type Counts = readonly number[]
type Ways = Map<string, Counts>

const add = (ways: Ways, counts: Counts) => ways.set(counts.join(), counts)

interface Bench {
  order: CutOrder
  board: Board
  /** Whether a blank clear of trim and defects can lie from x, y. */
  isClear: (x: number, y: number, blank: number) => boolean
}

function benchOf(order: CutOrder, board: Board): Bench {
  const { endTrim, edgeTrim, blanks } = order
  const isClear = (x: number, y: number, n: number) => {
    const { length, side, thickness = side } = blanks[n]!
    if (thickness > board.thickness || x < endTrim || y < edgeTrim) return false
    if (x + length > board.length - endTrim || y + side > board.width - edgeTrim) return false
    for (const { from, to, across: [low, high] = [-1, board.width + 1] } of board.defects ?? []) {
      if (to <= from || high <= low) continue
      if (x < to && x + length > from && y < high && y + side > low) return false
    }
    return true
  }
  return { order, board, isClear }
}

/** Every sum of counts along a line of so many millimetres: at each nothing starts, or one of the parts there. */
function alongLine(
  order: CutOrder,
  end: number,
  partsAt: (at: number) => { measure: number; ways: Ways }[],
): Ways {
  const from: Ways[] = []
  const nothing = new Map([['', order.blanks.map(() => 0)]])
  for (let at = end; at >= 0; at--) {
    const ways: Ways = new Map(from[at + 1] ?? [])
    add(ways, nothing.get('')!)
    for (const part of partsAt(at)) {
      const after = from[at + part.measure + order.kerf] ?? nothing
      for (const a of part.ways.values()) {
        for (const b of after.values()) {
          const sum = a.map((n, i) => n + b[i]!)
          if (sum.every((n, i) => n <= order.blanks[i]!.count)) add(ways, sum)
        }
      }
    }
    from[at] = ways
  }
  return from[0]!
}

function ripped({ order, board, isClear }: Bench): Ways {
  const one = (n: number): Ways => new Map([['', order.blanks.map((_, i) => (i === n ? 1 : 0))]])
  const strip = (y: number, side: number): Ways =>
    alongLine(order, board.length, (x) =>
      order.blanks.flatMap((blank, n) =>
        blank.side === side && isClear(x, y, n) ? [{ measure: blank.length, ways: one(n) }] : [],
      ),
    )
  const sides = [...new Set(order.blanks.map((b) => b.side))]
  return alongLine(order, board.width, (y) => sides.map((side) => ({ measure: side, ways: strip(y, side) })))
}

function crosscut({ order, board, isClear }: Bench): Ways {
  const one = (n: number): Ways => new Map([['', order.blanks.map((_, i) => (i === n ? 1 : 0))]])
  const section = (from: number, long: number): Ways => {
    const all = alongLine(order, board.width, (y) =>
      order.blanks.flatMap(({ length, side }, n) => {
        for (let x = from; x + length <= from + long; x++)
          if (isClear(x, y, n)) return [{ measure: side, ways: one(n) }]
        return []
      }),
    )
    // As long as its longest blank: one of that length must be in it.
    return new Map(
      [...all].filter(([, counts]) => counts.some((n, i) => n > 0 && order.blanks[i]!.length === long)),
    )
  }
  const lengths = [...new Set(order.blanks.map((b) => b.length))]
  return alongLine(order, board.length, (x) =>
    lengths.map((long) => ({ measure: long, ways: section(x, long) })),
  )
}

/** Counts of each blank, joined to words, of everything one board yields, nothing left out. */
export function yieldByMillimetre(order: CutOrder, board: Board): Ways {
  const bench = benchOf(order, board)
  return new Map([
    ...(order.process === 'crosscut-first' ? [] : ripped(bench)),
    ...(order.process === 'rip-first' ? [] : crosscut(bench)),
  ])
}

/** Fewest missing blanks, least cost with that, fewest boards with that; `costs` by board of the order. */
export function byMillimetre(
  order: CutOrder,
  costs: number[],
): { missing: number; cost: number; boards: number } {
  const total = order.blanks.reduce((n, b) => n + b.count, 0)
  const none = order.blanks.map(() => 0)
  let best = new Map([[none.join(), { counts: none as Counts, cost: 0, boards: 0 }]])
  order.boards.forEach((board, b) => {
    const ways = yieldByMillimetre(order, board)
    for (let copy = 0; copy < (board.count ?? total); copy++) {
      const next = new Map(best)
      for (const { counts, cost, boards } of best.values()) {
        for (const way of ways.values()) {
          const sum = counts.map((n, i) => n + way[i]!)
          if (sum.some((n, i) => n > order.blanks[i]!.count)) continue
          const [more, known] = [cost + costs[b]!, next.get(sum.join())]
          if (!known || more < known.cost || (more === known.cost && boards + 1 < known.boards))
            next.set(sum.join(), { counts: sum, cost: more, boards: boards + 1 })
        }
      }
      best = next
    }
  })
  const plans = [...best.values()].map(({ counts, cost, boards }) => ({
    missing: total - counts.reduce((a, n) => a + n, 0),
    cost,
    boards,
  }))
  return plans.sort((a, b) => a.missing - b.missing || a.cost - b.cost || a.boards - b.boards)[0]!
}
