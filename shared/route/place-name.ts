import type { RouteContext } from './context.ts'
import type { Feature } from './features.ts'
import type { OperationKind } from './kinds.ts'

/** What each formed feature is called. */
const featureWords: Partial<Record<OperationKind, string>> = {
  straight: 'straight',
  taper: 'taper',
  bead: 'bead',
  cove: 'cove',
  ovolo: 'ovolo',
  cavetto: 'cavetto',
  ogee: 'ogee',
  curve: 'curve',
  tenon: 'tenon',
}

/** The feature with its place: `the foot bead`, `the cove at 2 in`, `the 5 beads from 2 in to 4-1/2 in`. */
export function featureName({ text }: RouteContext, feature: Feature): string {
  const word = featureWords[feature.kind] ?? feature.kind
  const name = feature.spans[0]!.station.name
  const count = feature.spans.length
  if (feature.kind === 'bead' && count > 1)
    return `the ${count} beads from ${text(feature.from)} to ${text(feature.to)}`
  if (name === undefined) return `the ${word} at ${text(feature.from)}`
  return name.toLowerCase().includes(word) ? `the ${name}` : `the ${name} (${word})`
}

/** A place on the part: its own name, else where it lies. */
export const placeName = ({ text }: RouteContext, at: number, name?: string): string =>
  name === undefined ? `at ${text(at)}` : `at the ${name}`
