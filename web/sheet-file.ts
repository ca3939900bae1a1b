import type { DiameterChoice } from '../shared/profile/measured/sheet.ts'
import type { ShapeName } from '../shared/profile/profile.ts'
import { readLength, type Units } from '../shared/units/length.ts'
import type { Entered } from './job-file.ts'

/** A place that is measured on every original, as entered. */
export interface EnteredPlace {
  name?: string
  then?: ShapeName
  sagitta?: Entered
  side?: Entered
  check?: boolean
}

/** What was read at one place of one original, as entered. */
export interface EnteredReading {
  at?: Entered
  diameters: Entered[]
}

export interface EnteredDatum {
  name: string
  fromFoot?: Entered
  towards: 'top' | 'foot'
}

export interface EnteredOriginal {
  name: string
  datum?: EnteredDatum
  wear?: Entered
  readings: EnteredReading[]
}

/** A length known on a photograph: between two points, in its pixels. */
export interface EnteredPhotoLine {
  from: [number, number]
  to: [number, number]
  length?: Entered
  way?: 'along' | 'across'
}

/** A measuring sheet as entered: lengths stay as they were written. */
export interface EnteredSheet {
  units: Units
  way: 'running' | 'span'
  choice: DiameterChoice
  stations: EnteredPlace[]
  originals: EnteredOriginal[]
  photo?: { lines: EnteredPhotoLine[]; foot?: [number, number] }
}

/** The sheet a person starts from: one original, nothing read yet. */
export const newSheet = (units: Units): EnteredSheet => ({
  units,
  way: 'running',
  choice: 'larger',
  stations: [],
  originals: [{ name: 'Original 1', readings: [] }],
})

/** A sheet as it may be stored: readings may be missing. */
type StoredSheet = Partial<Omit<EnteredSheet, 'originals'>> & {
  originals?: (Partial<Omit<EnteredOriginal, 'readings'>> & { readings?: Partial<EnteredReading>[] })[]
}

/** A stored sheet with what it may leave out filled in, in the units of its profile. */
export function sheetOf(stored: Record<string, unknown> | undefined, units: Units): EnteredSheet {
  const { originals = [], ...given } = (stored ?? {}) as StoredSheet
  const fresh = newSheet(given.units ?? units)
  const sheet: EnteredSheet = {
    ...fresh,
    ...given,
    ...(originals.length > 0 && {
      originals: originals.map(({ readings = [], ...original }, k) => ({
        ...original,
        name: original.name ?? `Original ${k + 1}`,
        readings: readings.map((reading) => filled({ ...reading, diameters: reading.diameters ?? [] })),
      })),
    }),
  }
  return sheetInUnits(sheet, units)
}

/** What was read at a place of an original; nothing yet where none is. */
export const readingAt = (sheet: EnteredSheet, original: number, place: number): EnteredReading =>
  sheet.originals[original]?.readings[place] ?? { diameters: [] }

/** The fields with empty ones taken away, so that an emptied field is a missing one. */
const filled = <T extends object>(fields: T): T =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined && value !== '')) as T

const replaced = <T>(list: readonly T[], index: number, value: T): T[] =>
  list.map((each, i) => (i === index ? value : each))

const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, i) => i !== index)

const grown = <T>(list: readonly T[], length: number, fresh: () => T): T[] => [
  ...list,
  ...Array.from({ length: Math.max(0, length - list.length) }, fresh),
]

const freshPlace = (): EnteredPlace => ({ then: 'straight' })
const freshReading = (): EnteredReading => ({ diameters: [] })

/** The sheet with a change to a place; places up to it come into being. */
export function withPlace(
  sheet: EnteredSheet,
  place: number,
  change: Partial<Record<keyof EnteredPlace, unknown>>,
): EnteredSheet {
  const stations = grown(sheet.stations, place + 1, freshPlace)
  stations[place] = filled({ ...stations[place], ...change }) as EnteredPlace
  return { ...sheet, stations }
}

/** The sheet with a change to what was read at a place of an original; the place comes into being. */
export function withReading(
  sheet: EnteredSheet,
  original: number,
  place: number,
  change: { at?: Entered; diameters?: Entered[] },
): EnteredSheet {
  const readings = grown(sheet.originals[original]!.readings, place + 1, freshReading)
  readings[place] = filled({ ...readings[place]!, ...change })
  return {
    ...withPlace(sheet, place, {}),
    originals: replaced(sheet.originals, original, { ...sheet.originals[original]!, readings }),
  }
}

/** The sheet with one of two diameters at 90° entered. */
export function withDiameter(
  sheet: EnteredSheet,
  original: number,
  place: number,
  which: 0 | 1,
  text: string,
): EnteredSheet {
  const diameters = grown(readingAt(sheet, original, place).diameters, which + 1, (): Entered => '')
  diameters[which] = text
  while (diameters.at(-1) === '') diameters.pop()
  return withReading(sheet, original, place, { diameters })
}

const eachOriginal = (
  sheet: EnteredSheet,
  change: (readings: EnteredReading[]) => EnteredReading[],
): EnteredOriginal[] =>
  sheet.originals.map((original) => ({ ...original, readings: change(original.readings) }))

/** The sheet with a new place before the one of this index, on every original. */
export function insertedPlace(sheet: EnteredSheet, place: number): EnteredSheet {
  const stations = [...sheet.stations]
  stations.splice(place, 0, freshPlace())
  return {
    ...sheet,
    stations,
    originals: eachOriginal(sheet, (readings) => {
      const known = grown(readings, place, freshReading)
      return [...known.slice(0, place), freshReading(), ...known.slice(place)]
    }),
  }
}

/** The sheet without a place, on every original. */
export const withoutPlace = (sheet: EnteredSheet, place: number): EnteredSheet => ({
  ...sheet,
  stations: without(sheet.stations, place),
  originals: eachOriginal(sheet, (readings) => without(readings, place)),
})

/** The sheet with its first place as the topmost one, on every original. */
export function withFirstOnTop(sheet: EnteredSheet): EnteredSheet {
  const count = sheet.stations.length
  const turned = <T>(list: readonly T[]): T[] => [...list.slice(1), ...list.slice(0, 1)]
  return {
    ...sheet,
    stations: turned(sheet.stations),
    originals: eachOriginal(sheet, (readings) => turned(grown(readings, count, freshReading))),
  }
}

/** The sheet with another original beside those there are, measured from the same datum as the last one. */
export function withOriginal(sheet: EnteredSheet): EnteredSheet {
  const taken = new Set(sheet.originals.map(({ name }) => name))
  let number = sheet.originals.length + 1
  while (taken.has(`Original ${number}`)) number++
  const datum = sheet.originals.at(-1)?.datum
  const fresh: EnteredOriginal = { name: `Original ${number}`, ...(datum && { datum }), readings: [] }
  return { ...sheet, originals: [...sheet.originals, fresh] }
}

/** The sheet without an original and all that was read on it; the last one stays. */
export const withoutOriginal = (sheet: EnteredSheet, original: number): EnteredSheet =>
  sheet.originals.length < 2 ? sheet : { ...sheet, originals: without(sheet.originals, original) }

/** The sheet with a change to an original. */
export const withOriginalChange = (
  sheet: EnteredSheet,
  original: number,
  change: Partial<Record<'name' | 'datum' | 'wear', unknown>>,
): EnteredSheet => ({
  ...sheet,
  originals: replaced(sheet.originals, original, {
    ...(filled({ ...sheet.originals[original]!, ...change }) as EnteredOriginal),
    name: (change.name ?? sheet.originals[original]!.name) as string,
  }),
})

const nothingRead = ({ at, diameters }: EnteredReading): boolean =>
  at === undefined && diameters.every((text) => text === '')

/** Whether nothing at all was entered for a place. */
export function isEmptyPlace(sheet: EnteredSheet, place: number): boolean {
  const { then = 'straight', ...more } = sheet.stations[place] ?? {}
  return (
    then === 'straight' &&
    Object.keys(more).length === 0 &&
    sheet.originals.every((_, k) => nothingRead(readingAt(sheet, k, place)))
  )
}

/** The sheet as it is read and sent: without empty places at its end, every original with a reading for each place. */
export function sentSheet(sheet: EnteredSheet): EnteredSheet {
  let count = sheet.stations.length
  while (count > 0 && isEmptyPlace(sheet, count - 1)) count--
  return {
    ...sheet,
    stations: sheet.stations.slice(0, count),
    originals: sheet.originals.map((original) => ({
      ...original,
      readings: grown(original.readings.slice(0, count), count, freshReading).map(({ at, diameters }) =>
        filled({ at, diameters: diameters.filter((text) => text !== '') }),
      ),
    })),
  } as EnteredSheet
}

/** The sheet in other units, every length meaning what it meant: text without a unit gets the one it was read in. */
export function sheetInUnits(sheet: EnteredSheet, units: Units): EnteredSheet {
  if (units === sheet.units) return sheet
  const keep = <T extends Entered | undefined>(value: T): T =>
    typeof value === 'string' && readLength(value, 'in') !== readLength(value, 'mm')
      ? (`${value} ${sheet.units}` as T)
      : value
  return {
    ...sheet,
    units,
    stations: sheet.stations.map((place) =>
      filled({ ...place, sagitta: keep(place.sagitta), side: keep(place.side) }),
    ),
    originals: sheet.originals.map(({ datum, ...original }) =>
      filled({
        ...original,
        ...(datum && { datum: filled({ ...datum, fromFoot: keep(datum.fromFoot) }) }),
        wear: keep(original.wear),
        readings: original.readings.map(({ at, diameters }) =>
          filled({ at: keep(at), diameters: diameters.map(keep) }),
        ),
      }),
    ),
    ...(sheet.photo && {
      photo: {
        ...sheet.photo,
        lines: sheet.photo.lines.map((line) => filled({ ...line, length: keep(line.length) })),
      },
    }),
  } as EnteredSheet
}
