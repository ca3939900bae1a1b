import { z } from 'zod'
import { lengthOf, listOf, readInput } from '../../input.ts'
import { type Breach, badInput } from '../../problem.ts'
import { nm, type Units } from '../../units/length.ts'
import { partLimits, STATIONS_MAX } from '../part-limits.ts'
import { shapeNames } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import { diameterChoices, type Original, type Sheet } from './sheet.ts'

// a sheet holds no more than a profile can
const { lengthMax: LENGTH_MAX, thicknessMax: THICKNESS_MAX } = partLimits
const ORIGINALS_MAX = 50
const LINES_MAX = 8
const PIXELS_MAX = 100_000

const isBlank = (written: unknown): boolean =>
  written === undefined || written === null || (typeof written === 'string' && written.trim() === '')

/** A field that may still be empty: blank text and null are no entry. */
const maybe = <S extends z.ZodType>(schema: S) =>
  z.preprocess((written) => (isBlank(written) ? undefined : written), schema.optional())

/** A length of more than nothing. */
const sizeOf = (units: Units) =>
  lengthOf(units, { most: THICKNESS_MAX }).refine((mm) => nm(mm) > 0, { error: 'must be more than 0' })

const placeSchema = (units: Units) =>
  z.object({
    name: maybe(z.string().max(80)),
    then: z.enum(shapeNames).default('straight'),
    sagitta: maybe(lengthOf(units, { most: THICKNESS_MAX })),
    side: maybe(sizeOf(units)),
    check: z.boolean().optional(),
  })

function readingSchema(units: Units) {
  const across = maybe(sizeOf(units))
  return z.object({
    at: maybe(lengthOf(units, { least: -LENGTH_MAX, most: LENGTH_MAX })),
    diameters: listOf(across, { most: 2 })
      .prefault([])
      .transform((read) => read.filter((mm) => mm !== undefined)),
  })
}

const originalSchema = (units: Units) =>
  z.object({
    name: z.string().max(80).default(''),
    datum: z
      .object({
        name: z.string().max(80).default(''),
        fromFoot: maybe(lengthOf(units, { most: LENGTH_MAX })),
        towards: z.enum(['top', 'foot']).default('top'),
      })
      .optional(),
    wear: maybe(lengthOf(units, { most: LENGTH_MAX })),
    readings: listOf(readingSchema(units), { most: STATIONS_MAX }).prefault([]),
  })

const pixel = z.tuple([z.number().min(0).max(PIXELS_MAX), z.number().min(0).max(PIXELS_MAX)], {
  error: 'must be two numbers, pixels from the left and from the upper edge',
})

const photoSchema = (units: Units) =>
  z.object({
    lines: listOf(
      z.object({
        from: pixel,
        to: pixel,
        length: maybe(
          lengthOf(units, { most: LENGTH_MAX }).refine((mm) => nm(mm) > 0, { error: 'must be more than 0' }),
        ),
        way: z.enum(['along', 'across']).optional(),
      }),
      { most: LINES_MAX },
    ).prefault([]),
    foot: pixel.optional(),
  })

/**
 * A measuring sheet as entered: lengths are text in its units or numbers of mm, fields still empty are left out,
 * blank or null. Gives the sheet in mm.
 */
export const sheetSchema = (units: Units) =>
  z.object({
    units: z.enum(['in', 'mm']),
    way: z.enum(['running', 'span']).default('running'),
    choice: z.enum(diameterChoices).default('larger'),
    stations: listOf(placeSchema(units), { most: STATIONS_MAX }).prefault([]),
    originals: listOf(originalSchema(units), { most: ORIGINALS_MAX }).prefault([]),
    photo: photoSchema(units).optional(),
  })

const schemas = { in: sheetSchema('in'), mm: sheetSchema('mm') }

/** The index of the place that an original's positions start with when each is read from the one before. */
function firstRead({ datum, readings }: Original): number | undefined {
  const read = readings.flatMap(({ at }, i) => (at === undefined ? [] : [i]))
  return datum?.towards === 'foot' ? read.at(-1) : read[0]
}

/** Positions that no tape can read: less than nothing where there is nothing behind the start. */
function positionBreaches(original: Original, way: Sheet['way'], path: string): Breach[] {
  const start = firstRead(original)
  return original.readings.flatMap(({ at }, i): Breach[] => {
    if (at === undefined || nm(at) >= 0) return []
    const message =
      way === 'running'
        ? `must not be less than 0 on a tape that starts at the foot; read ${sizeText(at)}: name the datum if positions are counted from another place`
        : `must not be less than 0, since it is counted from the station before; read ${sizeText(at)}`
    return original.datum && (way === 'running' || i === start)
      ? []
      : [{ path: `${path}.readings[${i}].at`, message }]
  })
}

function sheetBreaches(sheet: Sheet, path: string): Breach[] {
  return sheet.originals.flatMap((original, k) => {
    const here = `${path ? `${path}.` : ''}originals[${k}]`
    const beyond = original.readings.length - sheet.stations.length
    const message = `must be at most one a station, ${sheet.stations.length} on this sheet; read a list of ${original.readings.length}`
    return [
      ...(beyond > 0 ? [{ path: `${here}.readings`, message }] : []),
      ...positionBreaches(original, sheet.way, here),
    ]
  })
}

/**
 * A measuring sheet as entered, read to mm. Places not measured yet are no fault: they stay absent, and
 * `profileOfSheet` names them. `path` is where the sheet stands in the input.
 *
 * @throws Problem `bad-input` with every field that cannot be read, what was read and what is allowed
 * @example readSheet({ units: 'in', stations: [{}], originals: [{ readings: [{ at: '0', diameters: ['1 1/2'] }] }] }).originals[0].readings[0] // { at: 0, diameters: [38.1] }
 */
export function readSheet(input: unknown, path = ''): Sheet {
  const units = (input as { units?: unknown } | null | undefined)?.units === 'mm' ? 'mm' : 'in'
  const sheet: Sheet = readInput(schemas[units], input, path)
  const breaches = sheetBreaches(sheet, path)
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
  return sheet
}
