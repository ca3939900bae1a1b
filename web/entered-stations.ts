import { type Joint, readJob } from '../shared/job.ts'
import { Problem } from '../shared/problem.ts'
import type { Station } from '../shared/profile/profile.ts'
import { lengthFigure, MM_PER_INCH, mmOfNm, nm, readLength, type Units } from '../shared/units/length.ts'
import { sentJoints } from './job-entries.ts'
import type { Entered, EnteredJoint, EnteredStation } from './job-file.ts'

/** The fields of a station that hold a length. */
const sizes = ['at', 'diameter', 'rise', 'depth', 'side', 'shoulderLength', 'plus', 'minus'] as const

/** The stations as the trade reads them, mm; nothing while they cannot all be read or turned. */
export function readStations(stations: readonly EnteredStation[], units: Units): Station[] | undefined {
  try {
    const job = { name: '…', units, species: 'any', quantity: 1, profile: { stations } }
    return readJob(job).profile.stations
  } catch (problem) {
    if (problem instanceof Problem) return undefined
    throw problem
  }
}

/** The joints that can be read, to be drawn; none while the stations or one of them cannot. */
export function readJoints(
  joints: readonly EnteredJoint[],
  stations: readonly EnteredStation[],
  units: Units,
): readonly Joint[] {
  if (joints.length === 0) return []
  try {
    const job = {
      name: '…',
      units,
      species: 'any',
      quantity: 1,
      profile: { stations },
      joints: sentJoints([...joints]),
    }
    return readJob(job).joints
  } catch (problem) {
    if (problem instanceof Problem) return []
    throw problem
  }
}

/** Decimals of an inch that tell one nanometre from the next. */
const INCH_DECIMALS = [4, 5, 6, 7, 8]

/**
 * A length as it is entered, exact to the nanometre: a fraction of an inch where it is one, else decimal inches, mm
 * where those are whole hundredths, else inches with as many decimals as it takes.
 */
export function enteredLength(mm: number, units: Units): string {
  const exact = String(mmOfNm(nm(mm)))
  if (units === 'mm') return exact
  const readsBack = (text: string) => nm(readLength(text, units) ?? Number.NaN) === nm(mm)
  const inches = [lengthFigure(mm, 'fraction').replace('-', ' '), lengthFigure(mm, 'decimal')]
  const hundredths = nm(mm) % nm(0.01) === 0 ? [`${exact} mm`] : []
  const decimals = INCH_DECIMALS.map((count) => (mm / MM_PER_INCH).toFixed(count))
  const figures = [...inches, ...hundredths, ...decimals]
  return figures.find(readsBack) ?? `${exact} mm`
}

type Sized = Partial<Record<(typeof sizes)[number], Entered>>

/** Texts as they were entered, by field and by what they read. */
function textsOf(stations: readonly EnteredStation[], units: Units): Map<string, Entered> {
  const texts = new Map<string, Entered>()
  for (const station of stations as readonly Sized[]) {
    for (const field of sizes) {
      const text = station[field]
      const mm = text === undefined ? undefined : readLength(text, units)
      if (mm !== undefined && !texts.has(`${field} ${nm(mm)}`)) texts.set(`${field} ${nm(mm)}`, text!)
    }
  }
  return texts
}

/** Which station of before each one was: by its number where none came or went, else by its place. */
function formerly(
  stations: readonly Station[],
  before: readonly EnteredStation[],
  units: Units,
): (EnteredStation | undefined)[] {
  if (stations.length === before.length) return [...before]
  const left = before.map((station) => ({ station, place: nm(readLength(station.at, units) ?? Number.NaN) }))
  return stations.map(({ at }) => {
    const found = left.findIndex(({ place }) => place === nm(at))
    return found < 0 ? undefined : left.splice(found, 1)[0]!.station
  })
}

/** Stations to enter in place of others. Lengths that were written before, and still read the same, stay as written. */
export function enteredStations(
  stations: readonly Station[],
  before: readonly EnteredStation[],
  units: Units,
): EnteredStation[] {
  const texts = textsOf(before, units)
  const former = formerly(stations, before, units)
  return stations.map((station, i) => {
    const was = former[i] as (EnteredStation & Sized) | undefined
    const text = (field: (typeof sizes)[number], mm: number): Entered => {
      const here = was?.[field]
      if (here !== undefined && nm(readLength(here, units) ?? Number.NaN) === nm(mm)) return here
      return texts.get(`${field} ${nm(mm)}`) ?? enteredLength(mm, units)
    }
    const entered = Object.entries(station).flatMap(([name, value]): [string, unknown][] => {
      if (value === undefined || (name === 'then' && value === 'straight' && was?.then === undefined))
        return []
      const field = sizes.find((size) => size === name)
      return [[name, field ? text(field, value as number) : value]]
    })
    return Object.fromEntries(entered) as unknown as EnteredStation
  })
}

/** The joints at the places where a change of the profile has laid them; those that stay keep their text. */
export function followedJoints(
  joints: readonly EnteredJoint[],
  placeOf: (at: number) => number,
  units: Units,
): EnteredJoint[] {
  return joints.map((joint) => {
    const at = readLength(joint.at, units)
    if (at === undefined) return joint
    const now = placeOf(at)
    return nm(now) === nm(at) ? joint : { ...joint, at: enteredLength(now, units) }
  })
}
