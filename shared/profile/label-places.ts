/**
 * Places for labels along a drawing, as near to where they belong (least squares) as `pitch` between neighbours
 * lets them be. `wanted` is in rising order; the places stay within `low` … `high` where they can all be held there.
 * Any unit, the same throughout. Pool-adjacent-violators: Barlow, Bartholomew, Bremner & Brunk, Statistical
 * Inference under Order Restrictions (1972), ch. 1 (from memory).
 *
 * @example labelPlaces([10, 10], 4, 0, 100) // [8, 12]
 */
export function labelPlaces(wanted: readonly number[], pitch: number, low: number, high: number): number[] {
  // With i·pitch taken off, "at least a pitch apart" is "not falling".
  const pools: { sum: number; count: number }[] = []
  wanted.forEach((place, i) => {
    let pool = { sum: place - i * pitch, count: 1 }
    for (
      let before = pools.at(-1);
      before && before.sum / before.count > pool.sum / pool.count;
      before = pools.at(-1)
    ) {
      pool = { sum: pool.sum + before.sum, count: pool.count + before.count }
      pools.pop()
    }
    pools.push(pool)
  })
  const most = high - Math.max(0, wanted.length - 1) * pitch
  return pools
    .flatMap(({ sum, count }) => Array<number>(count).fill(Math.max(low, Math.min(most, sum / count))))
    .map((place, i) => place + i * pitch)
}
