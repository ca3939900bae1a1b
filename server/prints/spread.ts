import { labelPlaces } from '../../shared/profile/label-places.ts'

/** Places for labels at least `pitch` apart within `low` … `high`; empty when they do not fit. */
export function spreadPlaces(wanted: number[], pitch: number, low: number, high: number): number[] {
  return (wanted.length - 1) * pitch > high - low ? [] : labelPlaces(wanted, pitch, low, high)
}

/** Where there are more than fit, those of most weight, still in their order. */
export function weightiest<T extends { weight: number }>(entries: T[], most: number): T[] {
  if (entries.length <= most) return entries
  const kept = new Set(
    [...entries.keys()].sort((a, b) => entries[b]!.weight - entries[a]!.weight || a - b).slice(0, most),
  )
  return entries.filter((_, i) => kept.has(i))
}
