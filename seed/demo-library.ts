import { lengthText, MM_PER_INCH } from '../shared/units/length.ts'
import { balusters, knobs } from './demo-jobs.ts'
import { before, key } from './demo-keys.ts'

/** A profile of the demo with its versions, the oldest first. Times are ISO 8601 in UTC. */
export interface DemoProfile {
  id: string
  versions: { at: string; file: Record<string, unknown> }[]
}

/** A length as it is read off a rule in sixty-fourths of an inch. */
const read = (sixtyFourths: number): string => lengthText((sixtyFourths * MM_PER_INCH) / 64, 'fraction')

/** The gallery baluster as it was first drawn, and thickened twice where it whipped. */
function balusterVersions(now: string): DemoProfile['versions'] {
  const thinned = (diameters: Record<string, string>) => ({
    stations: balusters.profile.stations.map((station) => {
      const diameter = diameters[(station as { key?: string }).key ?? '']
      return diameter === undefined ? station : { ...station, diameter }
    }),
  })
  const file = { name: 'Gallery baluster', units: 'in', species: 'maple-sugar' }
  const drawn: [number, string, Record<string, string>][] = [
    [260, 'Drawn from the old gallery; neck and waist whip.', { waist: '3/4', neck: '5/8' }],
    [236, 'Neck up to 11/16.', { waist: '3/4' }],
    [204, 'Waist up to 7/8. This one was turned.', {}],
  ]
  return drawn.map(([hours, notes, diameters]) => ({
    at: before(now, hours),
    file: { ...file, profile: thinned(diameters), notes },
  }))
}

/**
 * Both front legs of one chair at their places: name, span, position and larger diameter in sixty-fourths of an
 * inch. How far the near leg lies above the mean of the two and the far one below, in position and in diameter, and
 * how oval both have become.
 */
const chairLegPlaces = [
  { name: 'foot', then: 'straight', at: 0, across: 56, off: [0, 0], oval: 2 },
  { name: 'foot bead', then: 'bead', sagitta: '1/8', at: 96, across: 72, off: [0, 1], oval: 1 },
  { then: 'straight', at: 128, across: 72, off: [1, 0], oval: 2 },
  { name: 'ankle', then: 'straight', check: true, at: 144, across: 64, off: [0, 1], oval: 1 },
  { name: 'swell', then: 'straight', check: true, at: 640, across: 112, off: [1, 1], oval: 2 },
  { name: 'groove', then: 'cove', sagitta: '1/8', at: 656, across: 112, off: [0, 0], oval: 1 },
  { name: 'collar', then: 'bead', sagitta: '3/16', at: 704, across: 104, off: [0, 1], oval: 1 },
  { then: 'straight', at: 736, across: 104, off: [1, 0], oval: 2 },
  { name: 'shoulder', then: 'straight', at: 1056, across: 72, off: [0, 1], oval: 1 },
  { name: 'seat tenon', then: 'straight', at: 1056, across: 56, off: [0, 0], oval: 0 },
  { name: 'top', then: 'straight', check: true, at: 1120, across: 56, off: [0, 0], oval: 1 },
] as const

/** The far leg stands on a foot worn by so much, and was read from its shoulder towards the foot. */
const WORN = 12
const SHOULDER = 1056

const twoDiameters = (larger: number, oval: number): string[] => [read(larger), read(larger - oval)]

const chairLegSheet = {
  units: 'in',
  way: 'running',
  choice: 'larger',
  stations: chairLegPlaces.map(({ at: _at, across: _across, off: _off, oval: _oval, ...place }) => place),
  originals: [
    {
      name: 'near leg',
      readings: chairLegPlaces.map(({ at, across, off, oval }) => ({
        at: read(at + off[0]),
        diameters: twoDiameters(across + off[1], oval),
      })),
    },
    {
      name: 'far leg',
      datum: { name: 'shoulder', fromFoot: read(SHOULDER - WORN), towards: 'foot' },
      wear: read(WORN),
      readings: chairLegPlaces.map(({ at, across, off, oval }) => ({
        at: at === 0 ? read(SHOULDER - WORN) : read(SHOULDER - at + off[0]),
        diameters: twoDiameters(across - off[1], oval),
      })),
    },
  ],
}

/** What the sheet tells, with the tenon marked. */
const chairLeg = {
  name: 'Orchard chair front leg',
  units: 'in',
  species: 'birch-yellow',
  profile: {
    stations: chairLegPlaces.map(({ name, then, sagitta, check, at, across }: ChairLegPlace) => ({
      at: read(at),
      diameter: read(across),
      then,
      ...(name !== undefined && { name }),
      ...(check && { check }),
      ...(name === 'seat tenon' && { tenon: true, fixed: true }),
      ...(sagitta !== undefined && { [then === 'bead' ? 'rise' : 'depth']: sagitta }),
    })),
  },
  sheet: chairLegSheet,
  notes: 'Measured from both front legs of one chair; the far one is worn.',
}

interface ChairLegPlace {
  name?: string
  then: string
  sagitta?: string
  check?: boolean
  at: number
  across: number
}

const knob = {
  name: 'Apothecary drawer knob',
  units: 'mm',
  species: 'walnut-black',
  profile: knobs.profile,
}

/** Two from one glued pair. */
const halfColumn = {
  name: 'Clock hood half column',
  units: 'mm',
  species: 'cherry-black',
  profile: {
    split: true,
    stations: [
      { at: 0, diameter: 36, then: 'straight', name: 'base' },
      { at: 10, diameter: 36, then: 'ovolo' },
      { at: 16, diameter: 27, then: 'straight' },
      { at: 20, diameter: 27, then: 'curve', name: 'shaft', check: true },
      { at: 120, diameter: 27, then: 'curve' },
      { at: 260, diameter: 22, then: 'straight', name: 'neck', check: true },
      { at: 264, diameter: 22, then: 'bead', rise: 1.5 },
      { at: 268, diameter: 22, then: 'straight' },
      { at: 274, diameter: 22, then: 'cavetto' },
      { at: 282, diameter: 34, then: 'straight', name: 'cap' },
      { at: 290, diameter: 34 },
    ],
  },
}

const finial = {
  name: 'Bookcase finial',
  units: 'mm',
  profile: {
    stations: [
      { at: 0, diameter: 10, tenon: true, fixed: true, check: true, name: 'spigot' },
      { at: 14, diameter: 10 },
      { at: 14, diameter: 30, then: 'ovolo', name: 'seat' },
      { at: 20, diameter: 22, then: 'cove', depth: 2.5 },
      { at: 32, diameter: 18, then: 'bead', rise: 2, name: 'ring' },
      { at: 37, diameter: 18, then: 'curve' },
      { at: 56, diameter: 32, then: 'curve', name: 'urn', check: true },
      { at: 74, diameter: 14, then: 'straight' },
      { at: 77, diameter: 14, then: 'curve' },
      { at: 88, diameter: 18, then: 'curve', name: 'flame' },
      { at: 112, diameter: 5 },
    ],
  },
}

/** Left at the bench half measured. */
const spindle = {
  name: 'Nursing chair back spindle',
  units: 'mm',
  sheet: {
    units: 'mm',
    way: 'span',
    choice: 'larger',
    stations: [
      { name: 'foot', then: 'straight' },
      { name: 'swell', then: 'straight', check: true },
      { name: 'bead', then: 'bead' },
      { then: 'straight' },
      { name: 'top', then: 'straight' },
    ],
    originals: [
      {
        name: 'third from the left',
        readings: [
          { at: 0, diameters: [10.5, 10.2] },
          { at: 128, diameters: [17.4, 17] },
          { at: 96, diameters: [] },
        ],
      },
    ],
  },
}

/** The library of the demo as it stands at `now` (ISO 8601). */
export function library(now: string): DemoProfile[] {
  const once = (n: number, hours: number, file: Record<string, unknown>): DemoProfile => ({
    id: key(6, n),
    versions: [{ at: before(now, hours), file }],
  })
  return [
    once(3, 430, knob),
    { id: key(6, 1), versions: balusterVersions(now) },
    once(2, 150, chairLeg),
    once(4, 120, halfColumn),
    once(5, 52, finial),
    once(6, 22, spindle),
  ]
}
