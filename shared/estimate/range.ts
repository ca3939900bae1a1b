/** The 90 % point of the standard normal distribution (NIST/SEMATECH e-Handbook, table 1.3.6.7.1). */
const Z90 = 1.2815515655446004

/**
 * Minutes that a batch stays under one time in ten, one in two and nine in ten, when its time is lognormal
 * with this mean and its standard deviation is `spread` times the mean. Closed form:
 * σ² = ln(1 + spread²), median = mean / √(1 + spread²), p90 = median · e^(1.2816 σ).
 *
 * @example timeRange(100, 0) // {"p10": 100, "p50": 100, "p90": 100}
 */
export function timeRange(mean: number, spread: number): { p10: number; p50: number; p90: number } {
  const sigma = Math.sqrt(Math.log1p(spread * spread))
  const p50 = mean / Math.sqrt(1 + spread * spread)
  return { p10: p50 * Math.exp(-Z90 * sigma), p50, p90: p50 * Math.exp(Z90 * sigma) }
}
