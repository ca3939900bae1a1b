/** The piece whose minutes a shop's figures describe (common practice, no source). */
const KNOWN_PIECE = 10

/**
 * The exponent of the learning curve: each doubling of the count multiplies the minutes by `rate`.
 *
 * @example learningIndex(0.5) // -1
 */
export const learningIndex = (rate: number): number => Math.log2(rate)

/**
 * What the minutes of the n-th piece are to those of the first, in the unit form (Crawford): n^log2(rate).
 *
 * @example learningFactor(4, 0.8) // 0.64
 */
export const learningFactor = (n: number, rate: number): number => n ** learningIndex(rate)

/**
 * The sum of `learningFactor` over pieces 1 to n: minutes of n pieces over those of the first. Summed from
 * the small end, so that nothing is lost in long runs.
 *
 * @example learningTotal(2, 0.8) // 1.8
 */
export function learningTotal(n: number, rate: number): number {
  const index = learningIndex(rate)
  let total = 0
  for (let piece = n; piece >= 1; piece--) total += piece ** index
  return total
}

/**
 * Minutes of the first piece of hand work that takes `minutes` on the tenth.
 *
 * @example firstMinutes(8, 1) // 8
 */
export const firstMinutes = (minutes: number, rate: number): number =>
  minutes / learningFactor(KNOWN_PIECE, rate)
