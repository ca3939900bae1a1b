/** The piece whose minutes a shop's figures describe (common practice, no source). */
const KNOWN_PIECE = 10

/**
 * The exponent of the learning curve: each doubling of the count multiplies the minutes by `rate`.
 *
 * @example learningIndex(0.5) // -1
 */
export const learningIndex = (rate: number): number => Math.log2(rate)

/**
 * What a rate is of: each piece’s own minutes (unit form, Crawford), or the average of all pieces so far (Wright,
 * Journal of the Aeronautical Sciences 3 (1936) 122-128). The same rate learns faster in the second.
 */
export type LearningForm = 'unit' | 'average'

/**
 * What the minutes of the n-th piece are to those of the first: n^log2(rate) in the unit form; by averages what the
 * total of n is over that of n − 1.
 *
 * @example learningFactor(4, 0.8) // 0.64
 * @example Math.round(learningFactor(2, 0.8, 'average') * 1e6) / 1e6 // 0.6
 */
export const learningFactor = (n: number, rate: number, form: LearningForm = 'unit'): number =>
  form === 'unit' ? n ** learningIndex(rate) : learningTotal(n, rate, form) - learningTotal(n - 1, rate, form)

/**
 * Minutes of n pieces over those of the first: the sum of `learningFactor` over pieces 1 to n. Summed from the small
 * end, so that nothing is lost in long runs; by averages n times n^log2(rate).
 *
 * @example learningTotal(2, 0.8) // 1.8
 * @example learningTotal(2, 0.8, 'average') // 1.6
 */
export function learningTotal(n: number, rate: number, form: LearningForm = 'unit'): number {
  const index = learningIndex(rate)
  if (form === 'average') return n <= 0 ? 0 : n * n ** index
  let total = 0
  for (let piece = n; piece >= 1; piece--) total += piece ** index
  return total
}

/**
 * Minutes of the first piece of hand work that takes `minutes` on the tenth.
 *
 * @example firstMinutes(8, 1) // 8
 */
export const firstMinutes = (minutes: number, rate: number, form: LearningForm = 'unit'): number =>
  minutes / learningFactor(KNOWN_PIECE, rate, form)
