import type { Profile } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'

const SPANS_TOLD = 80

/** The part in one line: what it is called and how long and thick it is. */
export function partTitle(profile: Profile, style: LengthStyle, name: string): string {
  const length = profile.stations.at(-1)?.at ?? 0
  const thickest = Math.max(0, ...profile.stations.map((s) => Math.max(s.diameter ?? 0, s.side ?? 0)))
  return `${name || 'Turned part'}: ${lengthText(length, style)} long, up to ${lengthText(thickest, style)} at its stations`
}

/** The profile told from the foot, span by span, for those who cannot see the drawing. */
export function partWords(profile: Profile, style: LengthStyle): string {
  const spans = profile.stations.flatMap((station, i) => {
    const next = profile.stations[i + 1]
    if (!next || next.at <= station.at) return []
    const reach = `from ${lengthText(station.at, style)} to ${lengthText(next.at, style)}`
    if (station.then === 'square') return [`square ${reach}, side ${lengthText(station.side ?? 0, style)}`]
    const [d0, d1] = [station.diameter ?? next.diameter ?? 0, next.diameter ?? station.diameter ?? 0]
    const diameters =
      d0 === d1
        ? `diameter ${lengthText(d0, style)}`
        : `diameter ${lengthText(d0, style)} to ${lengthText(d1, style)}`
    return [`${station.name ? `${station.name}, ` : ''}${station.then} ${reach}, ${diameters}`]
  })
  const more = spans.length > SPANS_TOLD ? `; and ${spans.length - SPANS_TOLD} spans more` : ''
  return `From the foot: ${spans.slice(0, SPANS_TOLD).join('; ')}${more}.`
}

/** One station told in a line: its name, place, diameter, and the span that follows. */
export function stationWords({ stations }: Profile, index: number, style: LengthStyle): string {
  const { at, diameter, name, then, side, rise, depth } = stations[index]!
  const size = { bead: rise, cove: depth, square: side }[then as string]
  const word = { bead: ' high', cove: ' deep', square: ' across' }[then as string] ?? ''
  const told = size === undefined ? then : `${then} ${lengthText(size, style)}${word}`
  return [
    `Station ${index}${name ? `, ${name}` : ''}: at ${lengthText(at, style)}`,
    ...(diameter === undefined ? [] : [`Ø ${lengthText(diameter, style)}`]),
    index === stations.length - 1 ? 'top' : `then ${told}`,
  ].join(', ')
}
