import type { Profile, Span } from '../../shared/profile/profile.ts'
import { spansOf } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'

/** How thick the part is on one side of a position: a diameter, or the side of a square. Lengths mm. */
export interface Thickness {
  kind: 'diameter' | 'side'
  size: number
}

/** A place along the axis where something is to be struck: running length from the foot, mm. */
export interface Position {
  at: number
  /** One thickness where the profile runs through, two at a step or a shoulder, towards the foot first. */
  thicknesses: Thickness[]
  name: string
  /** A place with a name or a step is written out before others where room is scarce. */
  weight: number
}

const before = (span: Span): Thickness =>
  span.shape === 'square'
    ? { kind: 'side', size: span.station.side ?? span.d1 }
    : { kind: 'diameter', size: span.d1 }
const after = (span: Span): Thickness =>
  span.shape === 'square'
    ? { kind: 'side', size: span.station.side ?? span.d0 }
    : { kind: 'diameter', size: span.d0 }

/** Every position of the profile from foot to top, with what is there. */
export function positionsOf(profile: Profile): Position[] {
  const spans = spansOf(profile)
  const places = new Map<number, Thickness[]>()
  const put = (at: number, thickness: Thickness) => {
    const there = places.get(nm(at)) ?? []
    const same = there.some((t) => t.kind === thickness.kind && nm(t.size) === nm(thickness.size))
    if (!same) there.push(thickness)
    places.set(nm(at), there)
  }
  for (const span of spans) {
    put(span.from, after(span))
    put(span.to, before(span))
  }
  // A step gives its second thickness with the next span, so that order is from foot to top already.
  return [...places]
    .sort(([a], [b]) => a - b)
    .map(([key, thicknesses]) => {
      const here = profile.stations.filter((station) => nm(station.at) === key)
      const name = [...new Set(here.flatMap((station) => station.name ?? []))].join(', ')
      const marked = here.some((station) => station.check)
      return {
        at: here[0]?.at ?? key / 1e6,
        thicknesses,
        name,
        weight: (name ? 2 : 0) + (marked ? 2 : 0) + (thicknesses.length > 1 ? 1 : 0),
      }
    })
}

/** `⌀ 1-1/4 in`, `□ 2-1/4 in`; at a step `⌀ 1 in | ⌀ 1-1/4 in`, towards the foot first. */
export const thicknessesText = ({ thicknesses }: Position, style: LengthStyle): string =>
  thicknesses.map(({ kind, size }) => `${kind === 'side' ? '□' : '⌀'} ${lengthText(size, style)}`).join(' | ')
