import { median } from '../median.ts'

/** So many standard deviations out a value counts nothing (Holland & Welsch 1977, from memory: 95 % efficient). */
const BIWEIGHT = 4.685
const ROUNDS_MAX = 50

/** The middle of some numbers, and how much of them counts. */
export interface RobustMean {
  mean: number
  /** Sum of the weights, at most the count. */
  weight: number
  /** Values so far out that they count nothing. */
  setAside: number
}

/**
 * The mean of values that stray with standard deviation `sd`, in which gross errors do not count: Tukey's biweight
 * (Beaton & Tukey 1974), worked out from the median on. Where every value is far from the middle, as with two that
 * disagree, the median stands with the weight of one.
 *
 * @example robustMean([1, 1, 1, 50], 0.2) // { mean: 1, weight: 3, setAside: 1 }
 */
export function robustMean(values: readonly number[], sd: number): RobustMean {
  const middle = median(values)
  return settled(values, sd, middle) ?? { mean: middle, weight: 1, setAside: 0 }
}

/** Weighs anew about the mean until it stays; nothing where no value is near. */
function settled(values: readonly number[], sd: number, from: number): RobustMean | undefined {
  let mean = from
  for (let round = 0; ; round++) {
    const weights = values.map((value) => biweight((value - mean) / (BIWEIGHT * sd)))
    const weight = weights.reduce((sum, w) => sum + w, 0)
    if (weight === 0) return undefined
    const next = values.reduce((sum, value, i) => sum + value * weights[i]!, 0) / weight
    if (round === ROUNDS_MAX || Math.abs(next - mean) < 1e-12)
      return { mean: next, weight, setAside: weights.filter((w) => w === 0).length }
    mean = next
  }
}

const biweight = (u: number): number => (Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0)
