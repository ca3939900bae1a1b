/** A time of which three figures are known: the least, the usual and the most it takes. */
export interface ThreePoint {
  least: number
  usual: number
  most: number
}

/** A time by its mean and standard deviation. */
export interface Moments {
  mean: number
  sd: number
}

/**
 * Mean and standard deviation as planners by network take them: (least + 4 usual + most) / 6, and a sixth of the
 * reach (Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959) 646-669, from memory).
 *
 * @example weighted({ least: 3, usual: 5, most: 7 }).mean // 5
 */
export const weighted = ({ least, usual, most }: ThreePoint): Moments => ({
  mean: (least + 4 * usual + most) / 6,
  sd: (most - least) / 6,
})

/**
 * The same of a triangular distribution, which trusts the usual figure less: for times that are poorly known.
 * Variance (a² + m² + b² − am − ab − mb) / 18 (any text on distributions), written as squares of differences.
 *
 * @example triangular({ least: 2, usual: 4, most: 9 }).mean // 5
 */
export const triangular = ({ least, usual, most }: ThreePoint): Moments => ({
  mean: (least + usual + most) / 3,
  sd: Math.sqrt(((usual - least) ** 2 + (most - usual) ** 2 + (most - least) ** 2) / 36),
})

/** Times one after the other, independent of each other: means and variances add up. */
export const inARow = (times: readonly Moments[]): Moments => ({
  mean: times.reduce((sum, { mean }) => sum + mean, 0),
  sd: Math.sqrt(times.reduce((sum, { sd }) => sum + sd ** 2, 0)),
})

/**
 * The standard normal distribution function, to 8e-8 (Abramowitz & Stegun, Handbook of Mathematical Functions,
 * 26.2.17).
 *
 * @example Math.round(normalBelow(1.2815515655446004) * 1e6) / 1e6 // 0.9
 */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  const terms = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429]
  const tail = density * terms.reduceRight((sum, term) => t * (term + sum), 0)
  return z >= 0 ? 1 - tail : tail
}

/**
 * The chance that a time is over by `limit`.
 *
 * @example chanceBy({ mean: 5, sd: 1 }, 5) // 0.5
 */
export const chanceBy = ({ mean, sd }: Moments, limit: number): number =>
  sd > 0 ? Math.round(1e6 * normalBelow((limit - mean) / sd)) / 1e6 : limit >= mean ? 1 : 0
