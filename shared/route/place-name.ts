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
  const names = feature.spans.map((span) => span.station.name)
  if (count === 2 && feature.kind === 'bead' && names.every((one) => one !== undefined))
    return `the ${names.join(' and the ')}`
  if (feature.kind === 'bead' && count > 1)
    return `the ${count} beads from ${text(feature.from)} to ${text(feature.to)}`
  if (name === undefined) return `the ${word} at ${text(feature.from)}`
  return name.toLowerCase().includes(word) ? `the ${name}` : `the ${name} (${word})`
}

/** A place on the part: its own name, else where it lies. */
export const placeName = ({ text }: RouteContext, at: number, name?: string): string =>
  name === undefined ? `at ${text(at)}` : `at the ${name}`

/** `the stretch from 0 in to 20 in`. */
export const stretchName = ({ text }: RouteContext, from: number, to: number): string =>
  `the stretch from ${text(from)} to ${text(to)}`

/** Figures that are spoken with a vowel first: eight, eleven, eighteen, eighty and so on. */
const SPOKEN_WITH_VOWEL = /^(8|11(?!\d)|18(?!\d))(?!\/)/

/**
 * The indefinite article before a size.
 *
 * @example withArticle('8-1/4 in cylinder') // 'an 8-1/4 in cylinder'
 * @example withArticle('1/8 in groove') // 'a 1/8 in groove'
 */
export const withArticle = (size: string): string => `${SPOKEN_WITH_VOWEL.test(size) ? 'an' : 'a'} ${size}`
