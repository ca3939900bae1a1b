import {
  type Bar,
  type BarGrid,
  barGrid,
  runningIntegral,
  type SoftMoments,
  softMoments,
  wholeIntegral,
} from './bar-grid.ts'
import { topBetween } from './top-between.ts'

/**
 * How a bar is held at its ends: between two centres; in a chuck (or on a screw, in a jam chuck) with a centre at
 * the far end; by the chuck alone. A chuck is taken as holding its end quite stiff, at the foot.
 */
export type Held = 'centres' | 'chuck-and-centre' | 'chuck'

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

/** Bending moment at the nodes under a load spread along the bar, from the first and second integral of the load. */
function momentUnder(grid: BarGrid, held: Held, load: Float64Array): Float64Array {
  const { length, x } = grid
  const shear = runningIntegral(grid, load)
  const moment = runningIntegral(grid, shear)
  const [allShear, allMoment] = [wholeIntegral(grid, load), wholeIntegral(grid, shear)]
  if (held === 'centres') return x.map((at, i) => (allMoment * at) / length - moment[i]!)
  const free = x.map((_, i) => allMoment - moment[i]!)
  const reach = x.map((at) => length - at)
  const prop = held === 'chuck' ? allShear : endSag(grid, free) / endSag(grid, reach)
  return free.map((value, i) => value - prop * reach[i]!)
}

/** Sag at the top of a bar held at the foot, from its bending moment at the nodes. */
const endSag = (grid: BarGrid, moment: Float64Array): number =>
  wholeIntegral(
    grid,
    grid.x.map((x, i) => (grid.length - x) * moment[i]! * grid.soft[i]!),
  )

/** Sag in mm at the nodes under a load in N/mm at the nodes. */
export function sagUnder(grid: BarGrid, held: Held, load: Float64Array): Float64Array {
  const bending = momentUnder(grid, held, load).map((moment, i) => moment * grid.soft[i]!)
  const slope = runningIntegral(grid, bending)
  const sag = runningIntegral(grid, slope)
  if (held !== 'centres') return sag.map((value) => -value)
  const start = wholeIntegral(grid, slope) / grid.length
  return sag.map((value, i) => start * grid.x[i]! - value)
}

/** Stiffness in N/mm² and mass in kg/mm make (rad/s)² times a thousand, the millimetres in a metre. */
const MM_PER_M = 1000

/** Square of the first bending mode's frequency, (rad/s)², by inverse iteration: each round bends the bar by the inertia of the last shape. */
function firstMode(grid: BarGrid, held: Held): number {
  let load = grid.mass
  let square = 0
  for (let round = 0; round < 60; round++) {
    const sag = sagUnder(grid, held, load)
    const inertia = sag.map((y, i) => y * grid.mass[i]!)
    const work = wholeIntegral(
      grid,
      load.map((q, i) => q * sag[i]!),
    )
    const moving = wholeIntegral(
      grid,
      inertia.map((q, i) => q * sag[i]!),
    )
    const before = square
    square = (work / moving) * MM_PER_M
    if (Math.abs(square - before) <= 1e-10 * square) break
    const size = Math.max(...sag)
    load = inertia.map((q) => q / size)
  }
  return square
}

/** Sag per load as a function of the place of the load: the unit-load integral ∫M²/EI dx. */
function complianceOf(grid: BarGrid, held: Held): (x: number) => number {
  const { length } = grid
  const moments = softMoments(grid)
  const all = moments(length)
  /** ∫(a−ξ)(b−ξ)/EI dξ from its moments. */
  const levers = ([i0, i1, i2]: SoftMoments, a: number, b: number) => a * b * i0 - (a + b) * i1 + i2
  const atTop = levers(all, length, length)
  return (x) => {
    const foot = moments(x)
    const alone = levers(foot, x, x)
    if (held === 'chuck') return alone
    if (held === 'chuck-and-centre') return alone - levers(foot, x, length) ** 2 / atTop
    return (1 - x / length) ** 2 * foot[2] + (x / length) ** 2 * (atTop - levers(foot, length, length))
  }
}

/** The limberest point, mm from the foot, and its sag per load, mm/N. */
export function limberest(grid: BarGrid, held: Held): { at: number; compliance: number } {
  const { length, limits } = grid
  const compliance = complianceOf(grid, held)
  if (held === 'chuck') return { at: length, compliance: compliance(length) }
  const values = limits.map(compliance)
  const best = values.reduce((top, value, i) => (value > values[top]! ? i : top), 0)
  const at = topBetween(compliance, limits[best - 1] ?? 0, limits[best + 1] ?? length)
  return { at, compliance: compliance(at) }
}

/**
 * How far a bar gives and the speed of its first bending mode, right to better than 0.05 % (Euler-Bernoulli: the
 * shear that makes stubby bars softer is left out).
 *
 * @example beamOf({ length: 1, breaks: [], stiffness: () => 1, mass: () => 1 }).compliance // 1 / 48
 */
export function beamOf(bar: Bar, held: Held = 'centres'): Beam {
  const grid = barGrid(bar)
  const { at, compliance } = limberest(grid, held)
  const criticalRpm = (Math.sqrt(firstMode(grid, held)) * 60) / (2 * Math.PI)
  return { compliance, at, sag: compliance * SAG_LOAD, criticalRpm }
}
