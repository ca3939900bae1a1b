import { z } from 'zod'
import { lengthOf, listOf, readInput } from '../input.ts'
import { type Breach, badInput } from '../problem.ts'
import type { Units } from '../units/length.ts'
import { hasWidth } from './reading.ts'
import type { SetFile } from './set.ts'

const SET_STATIONS_MAX = 500
const SET_PIECES_MAX = 10_000
/** Values of one reading, taken around a piece. */
const SET_VALUES_MAX = 1_000
/** Beyond any gauge; larger figures would leave the range of numbers when squared. */
const LARGEST = 1e100

const key = z
  .union([z.string(), z.number().int().min(0)], { error: 'must be text or a whole number' })
  .transform(String)
  .refine(
    (text) => text.length >= 1 && text.length <= 80 && text !== '__proto__',
    'must be text of 1 to 80 characters',
  )

function setSchema(units: Units) {
  const size = lengthOf(units, { least: -LARGEST, most: LARGEST })
  const positive = size.refine((mm) => mm > 0, 'must be more than 0')
  const margin = size.refine((mm) => mm >= 0, 'must be at least 0')
  const station = z
    .object({ key, target: positive, plus: margin, minus: margin, fixed: z.boolean().optional() })
    .refine(hasWidth, 'needs a tolerance: plus and minus together must be more than 0')
  const several = listOf(positive, { most: SET_VALUES_MAX })
  // Parsed here and not as a union, so that a breach names the very value that is wrong.
  const reading = z.unknown().transform((value, context) => {
    const parsed = (Array.isArray(value) ? several : positive).safeParse(value)
    if (!parsed.success)
      for (const { path, message } of parsed.error.issues) context.addIssue({ code: 'custom', path, message })
    else if (Array.isArray(parsed.data) && parsed.data.length === 0)
      context.addIssue({ code: 'custom', message: 'must have at least one value' })
    else return parsed.data
    return z.NEVER
  })
  return z.object({
    units: z.enum(['in', 'mm']),
    stations: listOf(station, { least: 1, most: SET_STATIONS_MAX }),
    pieces: listOf(z.object({ key, readings: z.record(z.string(), reading) }), {
      least: 1,
      most: SET_PIECES_MAX,
    }),
    choose: z.number().int().min(1).optional(),
  })
}

const schemas = { in: setSchema('in'), mm: setSchema('mm') }

function repeats(keys: string[], list: string): Breach[] {
  const first = new Map<string, number>()
  return keys.flatMap((key, i) => {
    const earlier = first.get(key)
    if (earlier === undefined) first.set(key, i)
    return earlier === undefined
      ? []
      : [
          {
            path: `${list}[${i}].key`,
            message: `must be used once; read ${JSON.stringify(key)}, as in ${list}[${earlier}]`,
          },
        ]
  })
}

function unknownStations(file: SetFile): Breach[] {
  const known = new Set(file.stations.map((s) => s.key))
  const list = file.stations
    .slice(0, 12)
    .map((s) => s.key)
    .join(', ') // prettier-ignore
  return file.pieces.flatMap((piece, i) =>
    Object.keys(piece.readings)
      .filter((station) => !known.has(station))
      .map((station) => ({
        path: `pieces[${i}].readings.${station}`,
        message: `is no station of the set; the stations are ${list}${known.size > 12 ? ' …' : ''}`,
      })),
  )
}

/**
 * A set of readings as read from outside; lengths in mm, text without a unit in the file's `units`.
 * @throws Problem `bad-input` with every field that is wrong, what was read and what is allowed
 */
export function readSetFile(input: unknown): SetFile {
  const units = (input as { units?: unknown } | null)?.units === 'mm' ? 'mm' : 'in'
  const file: SetFile = readInput(schemas[units], input)
  const breaches = [
    ...repeats(
      file.stations.map((s) => s.key),
      'stations',
    ),
    ...repeats(
      file.pieces.map((p) => p.key),
      'pieces',
    ),
    ...unknownStations(file),
  ] // prettier-ignore
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
  return file
}
