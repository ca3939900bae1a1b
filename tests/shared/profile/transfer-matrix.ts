import type { Held } from '../../../shared/profile/beam.ts'

/** A uniform stretch of a bar: length, E·I and mass per length, in units that go together. */
export interface Uniform {
  length: number
  stiffness: number
  mass: number
}

type Matrix = number[][]

/** Transfer matrix of (y, θ, M, V) over a uniform stretch that vibrates at ω; Krylov's functions. */
function transfer({ length: L, stiffness: EI, mass: m }: Uniform, omega: number): Matrix {
  const b = ((m * omega * omega) / EI) ** 0.25
  const [ch, sh, c, s] = [Math.cosh(b * L), Math.sinh(b * L), Math.cos(b * L), Math.sin(b * L)]
  const [k0, k1, k2, k3] = [(ch + c) / 2, (sh + s) / 2 / b, (ch - c) / 2 / b ** 2, (sh - s) / 2 / b ** 3]
  const b4 = b ** 4
  return [
    [k0, k1, k2 / EI, k3 / EI],
    [b4 * k3, k0, k1 / EI, k2 / EI],
    [EI * b4 * k2, EI * b4 * k3, k0, k1],
    [EI * b4 * k1, EI * b4 * k2, b4 * k3, k0],
  ]
}

const product = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b[0]!.map((_, j) => row.reduce((sum, v, k) => sum + v * b[k]![j]!, 0)))

/** What is free at the foot, and what must vanish at the top: places in (y, θ, M, V). */
const ENDS: Record<Held, { free: [number, number]; zero: [number, number] }> = {
  centres: { free: [1, 3], zero: [0, 2] },
  'chuck-and-centre': { free: [2, 3], zero: [0, 2] },
  chuck: { free: [2, 3], zero: [2, 3] },
}

/** Lowest ω at which a bar of uniform stretches, foot first, vibrates freely: the frequency determinant changes sign. */
export function lowestMode(stretches: Uniform[], held: Held): number {
  const determinant = (omega: number): number => {
    const whole = stretches
      .map((stretch) => transfer(stretch, omega))
      .reduce((before, next) => product(next, before))
    const [[i, j], [k, l]] = [ENDS[held].zero, ENDS[held].free]
    return whole[i]![k]! * whole[j]![l]! - whole[i]![l]! * whole[j]![k]!
  }
  const length = stretches.reduce((sum, s) => sum + s.length, 0)
  const slowest = Math.min(...stretches.map((s) => Math.sqrt(s.stiffness / s.mass))) / length ** 2
  let low = slowest / 100
  const sign = Math.sign(determinant(low))
  let high = low
  while (Math.sign(determinant(high)) === sign) [low, high] = [high, high * 1.2]
  for (let round = 0; round < 80; round++) {
    const middle = (low + high) / 2
    if (Math.sign(determinant(middle)) === sign) low = middle
    else high = middle
  }
  return (low + high) / 2
}
