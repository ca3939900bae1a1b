import type { SizedPlace } from '../turning/calipers.ts'
import type { OperationDraft } from './operation.ts'
import type { SizedCut } from './sized-cuts.ts'

/** For each operation, the keys of those with a caliper that come before it, however far before. */
function sizedBefore(drafts: OperationDraft[]): Map<string, Set<string>> {
  const before = new Map<string, Set<string>>()
  const sizes = new Set(drafts.flatMap(({ key, caliper }) => (caliper === undefined ? [] : [key])))
  for (const { key, after } of drafts) {
    const keys = new Set<string>()
    for (const earlier of after) {
      if (sizes.has(earlier)) keys.add(earlier)
      for (const sized of before.get(earlier) ?? []) keys.add(sized)
    }
    before.set(key, keys)
  }
  return before
}

/**
 * What the calipers are set to and where, in the order of the operations, and what has to be sized before; diameters
 * in mm. Each operation stands after all it waits for; of a part of the order, what lies outside of it counts for nothing.
 * `cuts` tell what the settings are made up of.
 */
export function placesOf(drafts: OperationDraft[], cuts: SizedCut[] = []): SizedPlace[] {
  const before = sizedBefore(drafts)
  const sums = new Map(cuts.map(({ station, sum }) => [station, sum]))
  return drafts.flatMap(({ key, caliper, caliperStation, caliperAlso = [] }) =>
    caliper === undefined
      ? []
      : [caliperStation!, ...caliperAlso].map((station) => ({
          station,
          diameter: caliper,
          operation: key,
          after: [...before.get(key)!],
          ...(sums.has(station) && { sum: sums.get(station)! }),
        })),
  )
}
