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

/** The same over a uniform stretch at rest. */
const still = ({ length: L, stiffness: EI }: Uniform): Matrix => [
  [1, L, L ** 2 / 2 / EI, L ** 3 / 6 / EI],
  [0, 1, L / EI, L ** 2 / 2 / EI],
  [0, 0, 1, L],
  [0, 0, 0, 1],
]

/** The stretches cut where they pass a place. */
function cutAt(stretches: Uniform[], place: number): Uniform[] {
  let from = 0
  return stretches.flatMap((stretch) => {
    const [before, after] = [place - from, from + stretch.length - place]
    from += stretch.length
    return before > 0 && after > 0
      ? [
          { ...stretch, length: before },
          { ...stretch, length: after },
        ]
      : [stretch]
  })
}

/** How far a bar of uniform stretches, foot first, gives at `x` under a unit load at `load`: field matrices and one jump of the shear. */
export function sagOf(stretches: Uniform[], held: Held, load: number, x: number): number {
  const cut = cutAt(cutAt(stretches, load), x)
  const reach = (from: number, to: number): Matrix => {
    let at = 0
    let whole: Matrix = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (i === j ? 1 : 0)))
    for (const stretch of cut) {
      const middle = at + stretch.length / 2
      at += stretch.length
      if (middle > from && middle < to) whole = product(still(stretch), whole)
    }
    return whole
  }
  const length = stretches.reduce((sum, s) => sum + s.length, 0)
  const [all, beyond] = [reach(0, length), reach(load, length)]
  const { free, zero } = ENDS[held]
  const [[i, j], [k, l]] = [zero, free]
  // the two unknowns at the foot make what must vanish at the top vanish
  const [a, b, c, d] = [all[i]![k]!, all[i]![l]!, all[j]![k]!, all[j]![l]!]
  const [p, q] = [-beyond[i]![3]!, -beyond[j]![3]!]
  const [first, second] = [(p * d - b * q) / (a * d - b * c), (a * q - p * c) / (a * d - b * c)]
  const toX = reach(0, x)
  return toX[0]![k]! * first + toX[0]![l]! * second + (x > load ? reach(load, x)[0]![3]! : 0)
}
