/**
 * Mean and sample standard deviation (n − 1) of readings in any unit; no deviation below two readings.
 * Readings are taken from the first of them before they are added up, and the deviations corrected for what
 * the mean was rounded by, so that no digits are lost on large figures that differ little (Chan, Golub &
 * LeVeque, The American Statistician 37, 1983, p. 242).
 *
 * @example moments([10000001, 10000003, 10000002]) // {"mean": 10000002, "sd": 1}
 */
export function moments(readings: readonly number[]): { mean: number; sd?: number } {
  const [n, from] = [readings.length, readings[0] ?? 0]
  const shift = compensatedSum(readings, (x) => x - from) / n
  if (n < 2) return { mean: from + shift }
  const squares = compensatedSum(readings, (x) => (x - from - shift) ** 2)
  const rounding = compensatedSum(readings, (x) => x - from - shift)
  const variance = (squares - rounding ** 2 / n) / (n - 1)
  return { mean: from + shift, sd: Math.sqrt(Math.max(0, variance)) }
}

/** The sum with the digits that each addition drops (Neumaier 1974). */
function compensatedSum(readings: readonly number[], term: (x: number) => number): number {
  let [sum, dropped] = [0, 0]
  for (const reading of readings) {
    const x = term(reading)
    const next = sum + x
    dropped += Math.abs(sum) >= Math.abs(x) ? sum - next + x : x - next + sum
    sum = next
  }
  return sum + dropped
}
