import { z } from 'zod'
import { type Breach, badInput } from './problem.ts'
import { READABLE_LENGTHS, readLength, type Units } from './units/length.ts'

/** `profile.stations[3].diameter` from the steps of a path. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, step) =>
      typeof step === 'number' ? `${text}[${step}]` : text === '' ? String(step) : `${text}.${String(step)}`,
    '',
  )
}

/** What was read, short enough for a message. */
export function readText(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number' || typeof value === 'bigint') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}

const WORDS: Record<string, string> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  record: 'an object',
  null: 'null',
  undefined: 'nothing',
} // prettier-ignore

/** What is allowed, in words, for the checks that schemas make by themselves. */
function allowedText(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? `is missing; ${WORDS[issue.expected] ?? issue.expected} is needed`
        : `must be ${WORDS[issue.expected] ?? issue.expected}`
    case 'too_small':
      if (issue.origin === 'array')
        return `must have at least ${issue.minimum} ${issue.minimum === 1 ? 'entry' : 'entries'}`
      if (issue.origin === 'string') return 'must not be empty'
      return `must be ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`
    case 'too_big':
      if (issue.origin === 'array')
        return `must have at most ${issue.maximum} ${issue.maximum === 1 ? 'entry' : 'entries'}`
      if (issue.origin === 'string') return `must be at most ${issue.maximum} characters`
      return `must be ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`
    case 'invalid_value':
      return `must be ${issue.values.map((v) => JSON.stringify(v)).join(' or ')}`
    case 'unrecognized_keys':
      return `has no field ${issue.keys.map((k) => JSON.stringify(k)).join(', ')}`
    case 'invalid_format':
      return `must be ${issue.format === 'uuid' ? 'a UUID' : issue.format === 'date' ? 'a real day written YYYY-MM-DD' : `a valid ${issue.format}`}`
    case 'not_multiple_of':
      return `must be a multiple of ${issue.divisor}`
    default:
      return 'cannot be used'
  }
}

const at = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, step) => (value as Record<PropertyKey, unknown> | null | undefined)?.[step],
    input,
  )

/** The breaches of a failed parse, each with its path, what is allowed and what was read; at most 50. */
export function breachesOf(error: z.core.$ZodError, input: unknown, prefix = ''): Breach[] {
  return error.issues.slice(0, 50).map((issue) => {
    const path = pathText(issue.path)
    const value = at(input, issue.path)
    const read =
      value === undefined && issue.message.startsWith('is missing') ? '' : `; read ${readText(value)}`
    return {
      path: prefix && path ? (path.startsWith('[') ? prefix + path : `${prefix}.${path}`) : prefix || path,
      message: issue.message.includes('; read ') ? issue.message : `${issue.message}${read}`,
    }
  })
}

/**
 * The input as the schema describes it.
 * @throws Problem `bad-input` that names every field found wrong, what was read and what is allowed
 */
export function readInput<S extends z.ZodType>(schema: S, input: unknown, prefix = ''): z.output<S> {
  const parsed = schema.safeParse(input, { error: (issue) => allowedText(issue) })
  if (!parsed.success) throw badInput(breachesOf(parsed.error, input, prefix))
  return parsed.data
}

/** A length in any written form, read to mm; `least` and `most` are limits in mm (inclusive). */
export function lengthOf(units: Units, { least = 0, most = 1e6 }: { least?: number; most?: number } = {}) {
  return z
    .union([z.number(), z.string()], { error: `must be a length: ${READABLE_LENGTHS}` })
    .transform((written, context) => {
      const mm = readLength(written, units)
      if (mm === undefined) {
        context.addIssue({
          code: 'custom',
          message: `is no length that can be read; allowed: ${READABLE_LENGTHS}`,
        })
        return z.NEVER
      }
      if (mm < least || mm > most) {
        context.addIssue({
          code: 'custom',
          message: `must be between ${least} and ${most} mm; read ${readText(written)} (${mm} mm)`,
        })
        return z.NEVER
      }
      return mm
    })
}

/** A list that is refused by its length before its entries are looked at, however many there are. */
export function listOf<S extends z.ZodType>(entry: S, { least = 0, most }: { least?: number; most: number }) {
  return z
    .unknown()
    .superRefine((value, context) => {
      if (Array.isArray(value) && value.length > most) {
        context.addIssue({
          code: 'custom',
          message: `must have at most ${most} entries; read a list of ${value.length}`,
          continue: false,
        })
      }
    })
    .pipe(z.array(entry).min(least)) as unknown as z.ZodArray<S>
}

/** A real calendar day, ISO 8601. */
export const day = z.iso.date()

/** A point in time, ISO 8601 with its offset. */
export const moment = z.iso.datetime({ offset: true })

/** Refines a list whose rows must each have a name of their own; `what` is what a row is called. */
export const uniqueNames =
  (what: string) =>
  (rows: readonly { name: string }[], context: z.RefinementCtx): void => {
    const first = new Map<string, number>()
    rows.forEach(({ name }, i) => {
      const other = first.get(name)
      if (other === undefined) first.set(name, i)
      else
        context.addIssue({
          code: 'custom',
          path: [i, 'name'],
          message: `must be unique; ${what} ${other} has the name ${JSON.stringify(name)} too`,
        })
    })
  }
