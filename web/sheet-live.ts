import { readLibraryProfile } from '../shared/library.ts'
import { Problem } from '../shared/problem.ts'
import type { Snap } from '../shared/profile/edit/snap.ts'
import { type GatheredStation, gatheredStations } from '../shared/profile/measured/gathered.ts'
import { positionsFromFoot } from '../shared/profile/measured/positions.ts'
import {
  type Missing,
  type OfferedTolerance,
  offeredTolerance,
  type ProfileOfSheet,
  profileOfSheet,
} from '../shared/profile/measured/profile-of-sheet.ts'
import type { Sheet } from '../shared/profile/measured/sheet.ts'
import { readSheet } from '../shared/profile/measured/sheet-schema.ts'
import type { Profile } from '../shared/profile/profile.ts'
import { nm } from '../shared/units/length.ts'
import { enteredStations, readStations } from './entered-stations.ts'
import { withEntry } from './entry.ts'
import { inUnitsFirst } from './field-words.ts'
import type { EnteredStation } from './job-file.ts'
import { type EnteredSheet, readingAt, sentSheet } from './sheet-file.ts'

/** What can be told of a sheet while it is being measured. */
export interface LiveSheet {
  sheet: Sheet
  /** What cannot be read, by its path in the sheet; it is left out of all else. */
  errors: Map<string, string>
  gathered: GatheredStation[]
  /** By original: where its stations lie, mm from the foot. */
  positions: (number | undefined)[][]
  made: ProfileOfSheet
  offered: OfferedTolerance
  /** As it can be drawn so far; absent below two stations. */
  profile?: Profile
  /** What is left to do before it is a profile that can be turned, in sentences; none when it is one. */
  lacking: string[]
}

/** Rounds of leaving out what cannot be read: a field left out may lay bare another. */
const ROUNDS = 4

/** The sheet with what cannot be read left out, and why. */
function readable(entered: EnteredSheet): { sheet: Sheet; errors: Map<string, string> } {
  const errors = new Map<string, string>()
  let left: EnteredSheet = sentSheet(entered)
  for (let round = 0; ; round++) {
    try {
      return { sheet: readSheet(left), errors }
    } catch (problem) {
      if (!(problem instanceof Problem) || round === ROUNDS) throw problem
      for (const { path, message } of problem.errors) {
        if (!errors.has(path)) errors.set(path, inUnitsFirst(message, entered.units))
        left = withEntry(left, path, undefined)
      }
    }
  }
}

const whatIsMissing: Record<Missing['what'], string> = {
  at: 'lacks its position',
  diameter: 'lacks its diameter',
  side: 'lacks the side of its square',
  order: 'does not lie between its neighbours',
}

function lackingIn(stations: readonly EnteredStation[], entered: EnteredSheet): string[] {
  try {
    readLibraryProfile({ name: '…', units: entered.units, profile: { stations } })
    return []
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    return problem.errors.map(({ path, message }) => {
      const station = /stations\[(\d+)\]\.?(\w*)/.exec(path)
      const told = inUnitsFirst(message, entered.units)
      return station ? `Station ${station[1]}, ${station[2] || 'as a whole'}: ${told}` : `Stations: ${told}`
    })
  }
}

/** The stations as they were written on the sheet, so that they keep their text where it still reads the same. */
const writtenStations = (entered: EnteredSheet): EnteredStation[] =>
  entered.stations.map(({ then = 'straight', name, sagitta, side }, i) => {
    const { at = '', diameters } = readingAt(entered, 0, i)
    const size = then === 'bead' ? { rise: sagitta } : then === 'cove' ? { depth: sagitta } : { side }
    return Object.fromEntries(
      Object.entries({ at, diameter: diameters[0], then, name, ...size }).filter(
        ([, value]) => value !== undefined,
      ),
    ) as unknown as EnteredStation
  })

/** The stations of the profile that the sheet makes, to be entered; with the range of the originals as tolerance if asked. */
export function stationsOfSheet(
  live: LiveSheet,
  entered: EnteredSheet,
  asTolerance: boolean,
): EnteredStation[] {
  const { stations, from } = live.made
  const spread = new Map(live.offered.stations.map(({ index, plus, minus }) => [index, { plus, minus }]))
  const made = stations.map((station, i) => ({ ...station, ...(asTolerance && spread.get(from[i]!)) }))
  return enteredStations(made, writtenStations(entered), entered.units)
}

/** Reads the sheet as the server will, and draws what it tells so far, on the grid that was chosen. */
export function liveSheet(entered: EnteredSheet, snap: Snap = 'none'): LiveSheet {
  const { sheet, errors } = readable(entered)
  const made = profileOfSheet(sheet, { snap })
  const live: LiveSheet = {
    sheet,
    errors,
    gathered: gatheredStations(sheet),
    positions: sheet.originals.map((original) => positionsFromFoot(sheet, original)),
    made,
    offered: offeredTolerance(sheet, { snap }),
    ...(made.stations.length > 1 && { profile: { stations: made.stations, split: false } }),
    lacking: [],
  }
  const missing = made.missing.map(({ index, what }) => {
    const name = entered.stations[index]?.name
    return `Station ${index}${name ? ` (${name})` : ''} ${whatIsMissing[what]}.`
  })
  live.lacking =
    errors.size > 0
      ? ['Some figures cannot be read: put them right.', ...missing]
      : missing.length > 0
        ? missing
        : lackingIn(stationsOfSheet(live, entered, false), entered)
  return live
}

/** The stretch of the profile above a place of the sheet, mm from the foot; nothing where it is not drawn. */
export function spanAbove({ stations, from }: ProfileOfSheet, place: number): [number, number] | undefined {
  const at = (index: number) => stations[from.indexOf(index)]?.at
  const [low, high] = [at(place), at(place + 1)]
  return low === undefined || high === undefined || nm(high) <= nm(low) ? undefined : [low, high]
}

/** Whether two lists of stations draw the same part; tolerances and names aside. */
export function sameStations(
  a: readonly EnteredStation[],
  b: readonly EnteredStation[],
  units: EnteredSheet['units'],
): boolean {
  const drawn = (stations: readonly EnteredStation[]) =>
    readStations(stations, units)?.map(({ at, diameter, then, rise, depth, side, shoulder }) => [
      ...[at, diameter, rise, depth, side].map((mm) => (mm === undefined ? undefined : nm(mm))),
      then,
      shoulder ?? 'square',
    ])
  return JSON.stringify(drawn(a)) === JSON.stringify(drawn(b))
}
