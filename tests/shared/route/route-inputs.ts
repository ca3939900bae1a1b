import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import { blankFor } from '../../../shared/blank/blank.ts'
import type { Profile, Station } from '../../../shared/profile/profile.ts'
import { solidOf } from '../../../shared/profile/solid.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import { inches } from '../../../shared/units/length.ts'

/** A profile written in inches: `[at, diameter, then, more]`. */
export type InchStation = [
  at: number,
  diameter: number | undefined,
  then?: Station['then'],
  more?: Partial<Station>,
]

export function inchProfile(stations: InchStation[], split = false): Profile {
  return {
    split,
    stations: stations.map(([at, diameter, then = 'straight', more = {}]) => ({
      at: inches(at),
      then,
      ...(diameter !== undefined && { diameter: inches(diameter) }),
      ...more,
    })),
  }
}

export const benchTools: RouteInput['tools'] = [
  { name: 'roughing gouge', kind: 'roughing-gouge', width: inches(1.25), steel: 'hss' },
  { name: 'small gouge', kind: 'spindle-gouge', width: inches(1 / 4), steel: 'hss' },
  { name: 'middle gouge', kind: 'spindle-gouge', width: inches(1 / 2), steel: 'hss' },
  { name: 'small skew', kind: 'skew', width: inches(1 / 4), steel: 'hss' },
  { name: 'big skew', kind: 'skew', width: inches(1), steel: 'hss' },
  { name: 'parting tool', kind: 'parting', width: inches(1 / 8), steel: 'hss' },
]

export const stepLathe: NonNullable<RouteInput['lathe']> = {
  name: 'Floor lathe',
  speeds: { steps: [400, 600, 850, 1200, 1700, 2400, 3000] },
  restLength: inches(12),
}

/** Everything a route asks for, from a profile and whatever differs from an ordinary job. */
export function routeInput(profile: Profile, more: Partial<RouteInput> = {}): RouteInput {
  const allowances = { ...defaultAllowances('in'), ...more.allowances }
  const { stations } = profile
  const [first, last] = [stations[0]!, stations.at(-1)!]
  const closing = stations.at(-2)!
  const squareTop = closing.then === 'square'
  const solid = solidOf(profile)
  const blank = blankFor({
    units: 'in',
    part: solid,
    ends: {
      foot: { square: first.then === 'square', diameter: first.side ?? first.diameter ?? 0 },
      top: { square: squareTop, diameter: (squareTop ? closing.side : last.diameter) ?? 0 },
    },
    joints: [],
    mount: more.mount ?? 'spur',
    perBlank: 1,
    quantity: more.quantity ?? 8,
    match: more.match ?? true,
    split: profile.split,
    allowances,
    density: 700,
    stock: [],
    lathes: [],
    confidence: 0.9,
    record: { spoiled: 0, made: 0 },
  })
  return {
    profile,
    checks: [],
    joints: [],
    mount: 'spur',
    blank: { ...blank, layers: 1 },
    allowances,
    units: 'in',
    quantity: 8,
    match: true,
    finish: 'oil',
    grain: 'any',
    use: 'furniture',
    moisture: 8,
    serviceMoisture: 8,
    lathe: stepLathe,
    tools: benchTools,
    grits: [120, 150, 180, 220],
    calipers: 3,
    whip: { at: solid.length / 2, criticalRpm: 6000, rest: 'none' },
    blankCriticalRpm: 9000,
    ...more,
  }
}

/** A leg: turned foot with a bead and a long taper, square at the top. */
export const leg = (): Profile =>
  inchProfile([
    [0, 1, 'straight'],
    [1.25, 1.25, 'bead', { rise: inches(1 / 4), name: 'foot bead' }],
    [1.75, 1.25, 'straight'],
    [12, 1.875, 'square', { side: inches(2.25) }],
    [16.5, undefined],
  ])
