import fc from 'fast-check'
import type { Profile, ShapeName, Station } from '../../../shared/profile/profile.ts'

// the same profiles in every run
fc.configureGlobal({ seed: 1919 })

/** A station as it is written in a test: position, diameter, shape, whatever else. Lengths mm. */
export const station = (
  at: number,
  diameter?: number,
  then: ShapeName = 'straight',
  more: Partial<Station> = {},
): Station => ({
  at,
  ...(diameter === undefined ? {} : { diameter }),
  then,
  ...more,
})

export const profileOf = (...stations: Station[]): Profile => ({ stations, split: false })

/** One span of that shape. */
export const oneSpan = (
  shape: ShapeName,
  width: number,
  d0: number,
  d1: number,
  more: Partial<Station> = {},
): Profile => profileOf(station(0, d0, shape, more), station(width, d1))

/** The same part, read from the other end. */
export function mirrored({ stations, split }: Profile): Profile {
  const length = stations.at(-1)!.at
  const turned = stations.map(({ at, diameter }, i): Station => {
    const { at: _, diameter: __, shoulder, ...span } = stations[i - 1] ?? { at: 0, then: 'straight' }
    const flipped = Array.isArray(shoulder)
      ? { shoulder: [shoulder[1], shoulder[0]] as typeof shoulder }
      : shoulder && { shoulder }
    return { ...span, ...flipped, at: length - at, ...(diameter === undefined ? {} : { diameter }) }
  })
  return { stations: turned.reverse(), split }
}

/** The same part, all its lengths times `k`. */
export function scaledBy(k: number, { stations, split }: Profile): Profile {
  const lengths = ['at', 'diameter', 'side', 'rise', 'depth', 'shoulderLength'] as const
  const scaled = (s: Station): Station => {
    const written = lengths.filter((length) => s[length] !== undefined)
    return { ...s, ...Object.fromEntries(written.map((length) => [length, s[length]! * k])) }
  }
  return { stations: stations.map(scaled), split }
}

const shapes: ShapeName[] = ['straight', 'bead', 'cove', 'ovolo', 'cavetto', 'ogee', 'curve', 'square']

/** Any sound profile: 1 to 12 spans of any shape, steps among them, squares with every kind of shoulder. */
export const anyProfile: fc.Arbitrary<Profile> = fc
  .array(
    fc.record({
      shape: fc.constantFrom(...shapes),
      width: fc.double({ min: 2, max: 80, noNaN: true }),
      diameter: fc.double({ min: 12, max: 40, noNaN: true }),
      share: fc.double({ min: 0.05, max: 1, noNaN: true }),
      step: fc.option(fc.double({ min: 12, max: 40, noNaN: true }), { nil: undefined, freq: 4 }),
      shoulder: fc.constantFrom(
        'square',
        'rounded',
        ['rounded', 'square'],
        ['square', 'rounded'],
      ) as fc.Arbitrary<Station['shoulder']>,
    }),
    { minLength: 1, maxLength: 12 },
  )
  .chain((parts) => fc.double({ min: 12, max: 40, noNaN: true }).map((last) => built(parts, last)))

interface Part {
  shape: ShapeName
  width: number
  diameter: number
  share: number
  step?: number
  shoulder: Station['shoulder']
}

function built(parts: Part[], last: number): Profile {
  const stations: Station[] = []
  let at = 0
  for (const { shape, width, diameter, share, step, shoulder } of parts) {
    if (step !== undefined && stations.length > 0) stations.push(station(at, step))
    // arcs of at most 5 mm keep a cove clear of the axis and a bead inside the square
    const sagitta = share * Math.min(width / 2, 5)
    const own = { bead: { rise: sagitta }, cove: { depth: sagitta }, square: { side: 60, shoulder } }[
      shape as string
    ]
    stations.push(station(at, diameter, shape, own))
    at += width
  }
  stations.push(station(at, last))
  return profileOf(...stations)
}
