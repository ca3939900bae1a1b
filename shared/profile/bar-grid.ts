/** A bar to be bent: `stiffness` is E·I in N·mm², `mass` kg per mm, both by position; `breaks` where either jumps. */
export interface Bar {
  length: number
  stiffness(x: number): number
  mass(x: number): number
  breaks: number[]
}

/** Gauss-Legendre nodes on −1…1 and weights, 5 points. Abramowitz & Stegun table 25.4. */
const GAUSS = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const
const N = GAUSS.length
const NODES = GAUSS.map(([z]) => (1 + z) / 2)
const WEIGHTS = GAUSS.map(([, weight]) => weight / 2)

/** The polynomial that is 1 at node j and 0 at the others. */
function cardinal(j: number, z: number): number {
  return NODES.reduce(
    (product, node, m) => (m === j ? product : (product * (z - node)) / (NODES[j]! - node)),
    1,
  )
}

/** Entry i·N + j: weight of node j in the integral from 0 to node i of the polynomial through the nodes. */
const PARTIAL = NODES.flatMap((upper) =>
  NODES.map((_, j) => WEIGHTS.reduce((sum, w, m) => sum + w * upper * cardinal(j, upper * NODES[m]!), 0)),
)

/** Part of the bar's whole softness ∫dx/EI that halving a cell may still change. */
const CELL_ERROR = 1e-6
const CELLS_LEAST = 12
const HALVINGS = 10

const softness = ({ stiffness }: Bar, from: number, to: number): number =>
  NODES.reduce((sum, node, i) => sum + WEIGHTS[i]! / stiffness(from + (to - from) * node), 0) * (to - from)

/** Cell limits: the breaks, cells no longer than a twelfth of the bar, halved where the stiffness changes fast. */
function cellsOf(bar: Bar): number[] {
  const { length } = bar
  const limits = [0, ...bar.breaks.filter((x) => x > 0 && x < length), length].sort((a, b) => a - b)
  const coarse = limits.slice(1).flatMap((to, i) => {
    const from = limits[i]!
    const parts = Math.ceil(((to - from) / length) * CELLS_LEAST)
    const limit = (k: number) => from + ((to - from) * k) / parts
    return Array.from({ length: parts }, (_, k) => [limit(k), limit(k + 1)] as const)
  })
  const first = coarse.map(([a, b]) => softness(bar, a, b))
  const allowed = first.reduce((sum, s) => sum + s, 0) * CELL_ERROR
  const halved = (a: number, b: number, whole: number, depth: number): number[] => {
    const middle = (a + b) / 2
    const [left, right] = [softness(bar, a, middle), softness(bar, middle, b)]
    if (depth === 0 || Math.abs(left + right - whole) <= allowed) return [b]
    return [...halved(a, middle, left, depth - 1), ...halved(middle, b, right, depth - 1)]
  }
  return [0, ...coarse.flatMap(([a, b], i) => halved(a, b, first[i]!, HALVINGS))]
}

/** A bar sampled at the nodes of its cells: position, softness 1/EI and mass per length, with the weight of each node. */
export interface BarGrid {
  bar: Bar
  length: number
  limits: number[]
  widths: Float64Array
  weights: Float64Array
  x: Float64Array
  soft: Float64Array
  mass: Float64Array
}

/** Samples a bar finely enough for its bending to be right to about a millionth. */
export function barGrid(bar: Bar): BarGrid {
  const limits = cellsOf(bar)
  const widths = Float64Array.from(limits.slice(1), (to, c) => to - limits[c]!)
  const x = new Float64Array(widths.length * N)
  const weights = new Float64Array(x.length)
  widths.forEach((width, c) => {
    for (let i = 0; i < N; i++) {
      x[c * N + i] = limits[c]! + width * NODES[i]!
      weights[c * N + i] = width * WEIGHTS[i]!
    }
  })
  const soft = x.map((at) => 1 / bar.stiffness(at))
  return { bar, length: bar.length, limits, widths, weights, x, soft, mass: x.map((at) => bar.mass(at)) }
}

/** Integral over the whole bar of values at the nodes. */
export function wholeIntegral({ weights }: BarGrid, values: Float64Array): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += weights[i]! * values[i]!
  return sum
}

/** Moments ∫ξᵏ/EI dξ, k = 0, 1, 2, from the foot to a position. */
export type SoftMoments = [number, number, number]

/** The moments of the softness up to every cell limit. */
function momentsAtLimits({ widths, weights, x, soft }: BarGrid): SoftMoments[] {
  const sums: SoftMoments = [0, 0, 0]
  const atLimits: SoftMoments[] = [[0, 0, 0]]
  for (let c = 0; c < widths.length; c++) {
    for (let i = c * N; i < (c + 1) * N; i++) addMoments(sums, weights[i]! * soft[i]!, x[i]!)
    atLimits.push([...sums])
  }
  return atLimits
}

function addMoments(sums: SoftMoments, soft: number, x: number): void {
  sums[0] += soft
  sums[1] += soft * x
  sums[2] += soft * x * x
}

/** The moments of the softness as a function of the position they reach to. */
export function softMoments(grid: BarGrid): (x: number) => SoftMoments {
  const { bar, limits } = grid
  const atLimits = momentsAtLimits(grid)
  return (x) => {
    let [low, high] = [0, limits.length - 1]
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (limits[middle]! <= x) low = middle
      else high = middle - 1
    }
    const sums: SoftMoments = [...atLimits[low]!]
    const width = x - limits[low]!
    if (width <= 0) return sums
    for (let i = 0; i < N; i++) {
      const at = limits[low]! + width * NODES[i]!
      addMoments(sums, (width * WEIGHTS[i]!) / bar.stiffness(at), at)
    }
    return sums
  }
}

/** Integral of values at the nodes from the foot to every node. */
export function runningIntegral({ widths, weights }: BarGrid, values: Float64Array): Float64Array {
  const to = new Float64Array(values.length)
  let sum = 0
  for (let c = 0; c < widths.length; c++) {
    const start = c * N
    for (let i = 0; i < N; i++) {
      let part = 0
      for (let j = 0; j < N; j++) part += PARTIAL[i * N + j]! * values[start + j]!
      to[start + i] = sum + widths[c]! * part
    }
    for (let i = start; i < start + N; i++) sum += weights[i]! * values[i]!
  }
  return to
}
