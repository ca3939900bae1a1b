/** A bar to be bent: `stiffness` is E·I in N·mm², `mass` kg per mm, both by position; `breaks` where either jumps. */
export interface Bar {
  length: number
  stiffness(x: number): number
  mass(x: number): number
  breaks: number[]
}

/** How far a bar gives and how fast it can spin. */
export interface Beam {
  /** Sag per load at the limberest point, mm/N, and where that is, mm from the foot. */
  compliance: number
  at: number
  /** Sag under 10 N there, mm. */
  sag: number
  /** Speed of the first bending mode, rpm. */
  criticalRpm: number
}

/** Load that the sag is quoted for, N. */
export const SAG_LOAD = 10

/** Gauss-Legendre nodes on 0…1 and weights, 5 points. Abramowitz & Stegun table 25.4. */
const NODES = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664].map(
  (z) => (1 + z) / 2,
)
const WEIGHTS = [
  0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
].map((w) => w / 2)

/** `PARTIAL[i][j]`: weight of node j in the integral from 0 to node i of the polynomial through the nodes. */
const PARTIAL = NODES.map((upper) =>
  NODES.map((_, j) => WEIGHTS.reduce((sum, w, m) => sum + w * upper * cardinal(j, upper * NODES[m]!), 0)),
)

/** The polynomial that is 1 at node j and 0 at the others. */
function cardinal(j: number, z: number): number {
  return NODES.reduce(
    (product, node, m) => (m === j ? product : (product * (z - node)) / (NODES[j]! - node)),
    1,
  )
}

/** Part of the bar's whole softness ∫dx/EI that halving a cell may still change. */
const CELL_ERROR = 1e-7
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
    return Array.from(
      { length: parts },
      (_, k) => [from + ((to - from) * k) / parts, from + ((to - from) * (k + 1)) / parts] as const,
    )
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

/** The bar sampled at the nodes of its cells. */
interface Grid {
  limits: number[]
  x: Float64Array
  soft: Float64Array
  mass: Float64Array
}

function gridOf(bar: Bar): Grid {
  const limits = cellsOf(bar)
  const n = NODES.length
  const x = new Float64Array((limits.length - 1) * n)
  for (let c = 0; c + 1 < limits.length; c++) {
    NODES.forEach((node, i) => {
      x[c * n + i] = limits[c]! + (limits[c + 1]! - limits[c]!) * node
    })
  }
  return { limits, x, soft: x.map((at) => 1 / bar.stiffness(at)), mass: x.map((at) => bar.mass(at)) }
}

/** Running integral of values at the nodes, from the foot to every node; and over the whole. */
function running({ limits }: Grid, values: Float64Array): { to: Float64Array; whole: number } {
  const n = NODES.length
  const to = new Float64Array(values.length)
  let sum = 0
  for (let c = 0; c + 1 < limits.length; c++) {
    const width = limits[c + 1]! - limits[c]!
    let cell = 0
    for (let i = 0; i < n; i++) {
      let part = 0
      for (let j = 0; j < n; j++) part += PARTIAL[i]![j]! * values[c * n + j]!
      to[c * n + i] = sum + width * part
      cell += WEIGHTS[i]! * values[c * n + i]!
    }
    sum += width * cell
  }
  return { to, whole: sum }
}

/** Sag under a load spread along a bar on two supports (N/mm at the nodes), mm at the nodes. */
function sagUnder(grid: Grid, length: number, load: Float64Array): Float64Array {
  const shear = running(grid, load)
  const moment = running(grid, shear.to)
  const bending = grid.x.map((x, i) => ((moment.whole * x) / length - moment.to[i]!) * grid.soft[i]!)
  const slope = running(grid, bending)
  const sag = running(grid, slope.to)
  return grid.x.map((x, i) => (sag.whole * x) / length - sag.to[i]!)
}

const dot = (grid: Grid, a: Float64Array, b: Float64Array): number =>
  running(
    grid,
    a.map((value, i) => value * b[i]!),
  ).whole

/** A load of 1 N/mm on a bar whose mass is in kg/mm turns at so many (rad/s)². */
const MM_PER_M = 1000

/** First bending mode by inverse iteration: each round bends the bar by the inertia of the last round's shape. */
function firstModeRpm(grid: Grid, length: number): number {
  let shape = grid.x.map((x) => Math.sin((Math.PI * x) / length))
  let square = 0
  for (let round = 0; round < 40; round++) {
    const load = shape.map((y, i) => y * grid.mass[i]!)
    const sag = sagUnder(grid, length, load)
    const before = square
    square =
      (dot(grid, load, sag) /
        dot(
          grid,
          sag.map((y, i) => y * grid.mass[i]!),
          sag,
        )) *
      MM_PER_M
    const size = Math.max(...sag)
    shape = sag.map((y) => y / size)
    if (Math.abs(square - before) <= 1e-10 * square) break
  }
  return (Math.sqrt(square) * 60) / (2 * Math.PI)
}

/** Sag per load at a position by the unit-load integral ∫M²/EI dx, from the running integrals towards both ends. */
function limberest(bar: Bar, grid: Grid): { at: number; compliance: number } {
  const { length } = bar
  const footward = running(
    grid,
    grid.x.map((x, i) => x * x * grid.soft[i]!),
  )
  const topward = running(
    grid,
    grid.x.map((x, i) => (length - x) ** 2 * grid.soft[i]!),
  )
  let best = 0
  const compliance = grid.x.map((x, i) => {
    const left = (1 - x / length) ** 2 * footward.to[i]!
    return left + (x / length) ** 2 * (topward.whole - topward.to[i]!)
  })
  for (let i = 1; i < compliance.length; i++) if (compliance[i]! > compliance[best]!) best = i
  const near = [best - 1, best, best + 1].filter((i) => i >= 0 && i < compliance.length)
  return near.length < 3
    ? { at: grid.x[best]!, compliance: compliance[best]! }
    : vertex(near.map((i) => [grid.x[i]!, compliance[i]!]))
}

/** Top of the parabola through three points. */
function vertex(points: number[][]): { at: number; compliance: number } {
  const [[x0, y0], [x1, y1], [x2, y2]] = points as [[number, number], [number, number], [number, number]]
  const [s0, s1] = [(y1 - y0) / (x1 - x0), (y2 - y1) / (x2 - x1)]
  const bend = (s1 - s0) / (x2 - x0)
  if (!(bend < 0)) return { at: x1, compliance: y1 }
  const at = (x0 + x1) / 2 - s0 / (2 * bend)
  return { at, compliance: y0 + s0 * (at - x0) + bend * (at - x0) * (at - x1) }
}

/** How far a bar on two supports at its ends gives, and the speed of its first bending mode. */
export function beamOf(bar: Bar): Beam {
  const grid = gridOf(bar)
  const { at, compliance } = limberest(bar, grid)
  return { compliance, at, sag: compliance * SAG_LOAD, criticalRpm: firstModeRpm(grid, bar.length) }
}
