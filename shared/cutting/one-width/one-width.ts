import { commonFactor } from '../capacity.ts'
import type { Run } from '../clear.ts'
import type { Layout, StripLayout } from '../layout.ts'
import type { Patience } from '../line.ts'
import { type Cut, isBetter, type Solution, solutionOf } from '../solution.ts'
import type { SortedOrder } from '../sorted-order.ts'
import { bestKind, fittingSizes, stripsOf } from './best-kind.ts'
import type { Demand, StripCut } from './demand.ts'
import { fewestStrips } from './fewest-strips.ts'

/** An order of one side that is cut from one kind of board. */
interface OneWidth {
  kind: number
  along: Run
  /** Where strips begin across the board, nanometres. */
  strips: number[]
  demand: Demand
  /** By place in the demand: the size. */
  sizes: number[]
}

/**
 * The cheapest plan for an order all of one side, cut from boards of which one kind is never worse than another:
 * then only the number of strips counts. `undefined` for every other order.
 */
export function oneWidthSolution(
  sorted: SortedOrder,
  _capacities: Float64Array,
  atHand: Solution,
  patience: Patience,
): { solution: Solution; boundMinor: number } | undefined {
  const one = oneWidthOf(sorted)
  if (!one) return undefined
  const { kind, strips, demand } = one
  const { cuts, bound } = fewestStrips(demand, strips.length, patience)
  const solution = solutionOf(sorted, boardsOf(sorted, one, cuts))
  const { cost, available } = sorted.kinds[kind]!
  if (solution.boards > available) return undefined
  const boundMinor = Math.ceil(bound / strips.length) * cost
  return { solution: isBetter(solution, atHand) ? solution : atHand, boundMinor }
}

function oneWidthOf(sorted: SortedOrder): OneWidth | undefined {
  const kind = bestKind(sorted)
  if (kind === undefined) return undefined
  const sizes = fittingSizes(sorted)
  const [along] = sorted.kinds[kind]!.wood.whole.runs
  const rooms = sizes.map((s) => sorted.sizes[s]!.length + sorted.kerf)
  const measure = rooms.reduce(commonFactor, 0)
  const demand: Demand = {
    room: Math.floor((along![1] - along![0] + sorted.kerf) / measure),
    lengths: new Float64Array(0),
    counts: new Int32Array(0),
  }
  return {
    kind,
    along: along!,
    strips: stripsOf(sorted, sorted.kinds[kind]!, sorted.sizes[sizes[0]!]!.side),
    ...placed(sorted, sizes, demand, measure),
  }
}

/** Sizes that differ in thickness alone are one length. */
function placed(sorted: SortedOrder, sizes: number[], demand: Demand, measure: number) {
  const lengths = sizes.map((s) => (sorted.sizes[s]!.length + sorted.kerf) / measure)
  return {
    demand: {
      ...demand,
      lengths: Float64Array.from(lengths),
      counts: Int32Array.from(sizes, (s) => sorted.sizes[s]!.count),
    },
    sizes,
  }
}

/** Strips put together to boards, alike ones first. */
function boardsOf(sorted: SortedOrder, one: OneWidth, strips: StripCut[]): Cut[] {
  const per = one.strips.length
  const cuts: Cut[] = []
  const rest: StripCut[] = []
  for (const strip of strips) {
    const copies = Math.floor(strip.copies / per)
    if (copies > 0) cuts.push(boardOf(sorted, one, Array<StripCut>(per).fill(strip), copies))
    for (let n = copies * per; n < strip.copies; n++) rest.push(strip)
  }
  for (let n = 0; n < rest.length; n += per) cuts.push(boardOf(sorted, one, rest.slice(n, n + per), 1))
  return cuts
}

function boardOf(sorted: SortedOrder, one: OneWidth, strips: StripCut[], copies: number): Cut {
  const takes = new Map<number, number>()
  let value = 0
  for (const { places, counts } of strips) {
    places.forEach((place, i) => {
      const size = one.sizes[place]!
      takes.set(size, (takes.get(size) ?? 0) + counts[i]!)
      value += counts[i]! * sorted.sizes[size]!.area
    })
  }
  const layout: Layout = {
    process: 'rip-first',
    takes,
    value,
    strips: () => strips.map((strip, s) => stripLayout(sorted, one, strip, one.strips[s]!)),
  }
  return { kind: one.kind, layout, copies }
}

function stripLayout(
  sorted: SortedOrder,
  one: OneWidth,
  { places, counts }: StripCut,
  across: number,
): StripLayout {
  const spots: StripLayout['spots'] = []
  let along = one.along[0]
  places.forEach((place, i) => {
    const size = one.sizes[place]!
    for (let n = 0; n < counts[i]!; n++) {
      spots.push({ size, along, across })
      along += sorted.sizes[size]!.length + sorted.kerf
    }
  })
  return { side: sorted.sizes[one.sizes[0]!]!.side, across, spots }
}
