/**
 * Places for labels at least `pitch` apart within `low` … `high`, as near as can be (least squares) to where
 * they belong. `wanted` is in rising order. Empty when they do not fit.
 */
export function spreadPlaces(wanted: number[], pitch: number, low: number, high: number): number[] {
  if ((wanted.length - 1) * pitch > high - low) return []
  // With i·pitch taken off, "at least a pitch apart" is "not falling": pool adjacent violators.
  const pools: { sum: number; count: number }[] = []
  wanted.forEach((place, i) => {
    pools.push({ sum: place - i * pitch, count: 1 })
    for (;;) {
      const [last, previous] = [pools.at(-1)!, pools.at(-2)]
      if (!previous || previous.sum / previous.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: previous.sum + last.sum, count: previous.count + last.count })
    }
  })
  const most = high - (wanted.length - 1) * pitch
  return pools
    .flatMap(({ sum, count }) => Array<number>(count).fill(Math.min(Math.max(sum / count, low), most)))
    .map((place, i) => place + i * pitch)
}

/** Where there are more than fit, those of most weight, still in their order. */
export function weightiest<T extends { weight: number }>(entries: T[], most: number): T[] {
  if (entries.length <= most) return entries
  const kept = new Set(
    [...entries.keys()].sort((a, b) => entries[b]!.weight - entries[a]!.weight || a - b).slice(0, most),
  )
  return entries.filter((_, i) => kept.has(i))
}
