import type { Profile, Span, Station } from '../../shared/profile/profile.ts'
import { spansOf } from '../../shared/profile/profile.ts'
import { spanRadius, spanTurns } from '../../shared/profile/radius.ts'
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

const thickness = ({ shape }: Span, size: number): Thickness => ({
  kind: shape === 'square' ? 'side' : 'diameter',
  size,
})

/** Every position of the profile from foot to top, with what is there; crests and roots of beads and coves too. */
export function positionsOf(profile: Profile): Position[] {
  const spans = spansOf(profile)
  const places = new Map<number, Position>()
  const put = (at: number, here: Thickness) => {
    const there = places.get(nm(at)) ?? { at, thicknesses: [], name: '', weight: 0 }
    const same = there.thicknesses.some((t) => t.kind === here.kind && nm(t.size) === nm(here.size))
    if (!same) there.thicknesses.push(here)
    places.set(nm(at), there)
  }
  // A step gives its second thickness with the next span, so that the order is from foot to top already.
  for (const span of spans) {
    put(span.from, thickness(span, span.d0))
    for (const x of spanTurns(span)) put(x, { kind: 'diameter', size: 2 * spanRadius(span, x) })
    put(span.to, thickness(span, span.d1))
  }
  for (const station of profile.stations) nameAt(places.get(nm(station.at)), station)
  for (const span of spans) for (const x of spanTurns(span)) nameTurn(places.get(nm(x)), span)
  return [...places.values()].sort((a, b) => a.at - b.at)
}

function nameAt(position: Position | undefined, { name, check }: Station): void {
  if (!position) return
  if (name && position.name !== name) position.name = position.name ? `${position.name}, ${name}` : name
  position.weight += (name ? 2 : 0) + (check ? 2 : 0) + (position.thicknesses.length > 1 ? 1 : 0)
}

function nameTurn(position: Position | undefined, { shape }: Span): void {
  if (!position || position.name) return
  position.name = shape === 'cove' ? 'root' : 'crest'
  position.weight += 1
}

/** `⌀ 1-1/4 in`, `□ 2-1/4 in`; at a step `⌀ 1 in | ⌀ 1-1/4 in`, towards the foot first. */
export const thicknessesText = ({ thicknesses }: Position, style: LengthStyle): string =>
  thicknesses.map(({ kind, size }) => `${kind === 'side' ? '□' : '⌀'} ${lengthText(size, style)}`).join(' | ')
