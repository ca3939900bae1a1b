import { z } from 'zod'
import { type Allowances, allowancesFrom, allowancesSchema } from './blank/allowances.ts'
import type { Mount } from './blank/mount.ts'
import type { YardGrade } from './cutting/board-grade.ts'
import { yardGrades } from './cutting/grade-names.ts'
import { day, lengthOf, listOf, readInput } from './input.ts'
import { type Breach, badInput } from './problem.ts'
import { profileBreaches } from './profile/check.ts'
import { partLimits, STATIONS_MAX } from './profile/part-limits.ts'
import { type Profile, shapeNames } from './profile/profile.ts'
import { sizeText } from './profile/size-text.ts'
import type { StairUse, StairWishes } from './profile/stair.ts'
import { stairSchema } from './profile/stair-schema.ts'
import { withTenons } from './profile/tenon-joints.ts'
import type { RouteInput, RouteJoint } from './route/input.ts'
import { inches, nm, type Units } from './units/length.ts'
import { usualSap } from './wood/sapwood.ts'

export type Finish = RouteInput['finish']
export type Grain = RouteInput['grain']

/** A joint cut into the part. Lengths mm, `angle` in degrees from face A. */
export type Joint = RouteJoint

export interface Tolerance {
  diameter: number
  position: number
  length: number
  side: number
  /** Diameters of tenons, which have to fit a hole; never more than that of other diameters. */
  tenon: number
}

/** What a job has that says nothing else, mm. Working habits of the bench: common practice, no source. */
export const defaultTolerance: Tolerance = {
  diameter: inches(1 / 32),
  position: inches(1 / 16),
  length: inches(1 / 32),
  side: inches(1 / 64),
  tenon: inches(1 / 64),
}

/** Width of the caliper jaws, mm, unless the job names another. Common practice, no source. */
export const JAW_WIDTH = inches(1 / 8)

/** What the wood of a job must be, as asked of the yard and looked for on a board. */
export interface Lumber {
  /** Whether sapwood may show, by the wood where nothing is said; where not, it is cut around like any defect. */
  sap: 'none' | 'allowed'
  dryness: 'kiln' | 'air' | 'green'
  /** The shop’s usual grade when absent. */
  grade?: YardGrade
  /** All from one board where that costs nothing; whatever it costs when true. */
  oneBoard: boolean
  /** Moisture content of the wood when it is sawn, %; that of turning when absent. */
  moisture?: number
  /** Whether boards on hand are cut first; else all is bought. */
  fromRack: boolean
}

/** A job as every part of the program uses it: lengths in mm, defaults filled in. */
export interface Job {
  name: string
  customer?: string
  due?: string
  units: Units
  species: string
  moisture: number
  serviceMoisture: number
  quantity: number
  match: boolean
  profile: Profile
  tolerance: Tolerance
  joints: Joint[]
  mount: Mount
  perBlank: number | 'auto'
  grain: Grain
  finish: Finish
  use: 'furniture' | StairUse
  /** What is known of the stair or guard, where it is one. */
  stair?: StairWishes
  /** Made in pairs: odd pieces are left hands, even ones right; their joints are each other’s mirror image. */
  mirrored?: boolean
  /** The shop’s lot of wood it is made from, by its name. */
  lot?: string
  lumber: Lumber
  allowances: Partial<Allowances>
  instrument: { jawWidth: number }
  notes?: string
  /** The profile of the library it was made from, as it was then. */
  from?: { profile: string; revision: number }
  /** Fields of the file that mean nothing here; said, never silently dropped. */
  unread: string[]
}

/** Characters of the longest name of a job, and of a profile of the library. */
export const NAME_MOST = 120

const text = (most: number) => z.string().max(most)

function stationSchema(units: Units) {
  const size = lengthOf(units)
  const shoulder = z.enum(['square', 'rounded'])
  return z.object({
    at: lengthOf(units, { least: -1e6, most: 1e6 }),
    diameter: lengthOf(units, { least: -1e6, most: 1e6 }).optional(),
    then: z.enum(shapeNames).default('straight'),
    name: text(80).optional(),
    key: z
      .string()
      .regex(/^[A-Za-z][\w-]{0,39}$/, 'must start with a letter and hold letters, digits, - and _ only')
      .optional(),
    rise: size.optional(),
    depth: size.optional(),
    side: size.optional(),
    shoulder: z
      .union([shoulder, z.tuple([shoulder, shoulder])], {
        error: 'must be "square", "rounded" or a pair of them',
      })
      .optional(),
    shoulderLength: size.optional(),
    check: z.boolean().optional(),
    fixed: z.boolean().optional(),
    tenon: z.boolean().optional(),
    plus: size.optional(),
    minus: size.optional(),
    trimLater: z.boolean().optional(),
  })
}

/** Everything a job file may hold, with lengths read in its own units. */
export function jobSchema(units: Units) {
  const size = lengthOf(units)
  return z.object({
    name: z.string().trim().min(1).max(NAME_MOST),
    customer: text(120).optional(),
    due: day.optional(),
    units: z.enum(['in', 'mm']),
    species: z.string().min(1).max(80),
    moisture: z.number().min(0).max(200).default(8),
    serviceMoisture: z.number().min(0).max(200).default(8),
    quantity: z.number().int().min(1).max(10_000),
    match: z.boolean().default(true),
    profile: z.object({
      stations: listOf(stationSchema(units), { least: 2, most: STATIONS_MAX }),
      split: z.boolean().default(false),
    }),
    tolerance: z
      .object({
        diameter: size.default(defaultTolerance.diameter),
        position: size.default(defaultTolerance.position),
        length: size.default(defaultTolerance.length),
        side: size.default(defaultTolerance.side),
        tenon: size.default(defaultTolerance.tenon),
      })
      .prefault({}),
    joints: listOf(
      z
        .object({
          kind: z.enum(['mortise', 'hole', 'tenon']),
          at: size,
          face: z
            .union([z.enum(['A', 'B', 'C', 'D']), z.number().min(-360).max(360)], {
              error: 'must be "A", "B", "C", "D" or an angle in degrees',
            })
            .optional(),
          angle: z.number().min(-360).max(360).optional(),
          size: z.union([size.transform((s) => [s]), z.array(size).min(1).max(2)], {
            error: 'must be a length or a list of one or two lengths',
          }),
          depth: size,
          stage: z.enum(['square', 'turned']).default('square'),
        })
        .transform(({ face, angle, ...joint }) =>
          typeof face === 'number' ? { ...joint, face: undefined, angle: face } : { ...joint, face, angle },
        ),
      { most: 200 },
    ).prefault([]),
    mount: z.enum(['spur', 'cup', 'chuck', 'screw', 'jam']).default('spur'),
    perBlank: z
      .union([z.number().int().min(1).max(100), z.literal('auto')], {
        error: 'must be a whole number from 1 to 100, or "auto"',
      })
      .default(1),
    grain: z.enum(['any', 'rift', 'straight']).default('any'),
    finish: z.enum(['none', 'oil', 'wax', 'polish', 'film']).default('oil'),
    use: z.enum(['furniture', 'stair', 'guard']).default('furniture'),
    stair: stairSchema(units).optional(),
    mirrored: z.boolean().optional(),
    lot: z.string().trim().min(1).max(80).optional(),
    lumber: z
      .object({
        sap: z.enum(['none', 'allowed']).optional(),
        dryness: z.enum(['kiln', 'air', 'green']).default('kiln'),
        grade: z.enum(yardGrades).optional(),
        oneBoard: z.boolean().default(false),
        moisture: z.number().min(0).max(200).optional(),
        fromRack: z.boolean().default(true),
      })
      .prefault({}),
    allowances: allowancesSchema(units).prefault({}),
    instrument: z.object({ jawWidth: size.default(JAW_WIDTH) }).prefault({}),
    notes: text(4000).optional(),
    from: z
      .object({ profile: z.string().min(1).max(200), revision: z.number().int().min(1).max(1e9) })
      .optional(),
  })
}

const schemas = { in: jobSchema('in'), mm: jobSchema('mm') }

/** What the interface adds to a stored job; not part of the file, and ignored when it is sent in. */
export const STORED_FIELDS = ['id', 'key', 'revision', 'state', 'createdAt', 'updatedAt']
/** The same, and what a plan adds to its job. */
const KNOWN_BESIDE = new Set([...STORED_FIELDS, 'unread'])

/** Paths of the fields in `input` that the schema did not read. */
function unreadFields(input: unknown, parsed: unknown, path = ''): string[] {
  if (typeof input !== 'object' || input === null || typeof parsed !== 'object' || parsed === null) return []
  return Object.entries(input).flatMap(([name, value]) => {
    const here = Array.isArray(input) ? `${path}[${name}]` : path ? `${path}.${name}` : name
    if (!Object.hasOwn(parsed, name)) return path === '' && KNOWN_BESIDE.has(name) ? [] : [here]
    return unreadFields(value, (parsed as Record<string, unknown>)[name], here)
  })
}

/** Joints that lie off the part, and a length between rails that is none of the part’s. */
function outsideBreaches({ profile, joints, stair }: Job): Breach[] {
  const length = profile.stations.at(-1)!.at
  const found: Breach[] = joints.flatMap(({ at }, i) =>
    nm(at) > nm(length)
      ? [
          {
            path: `joints[${i}].at`,
            message: `must lie on the part, between 0 and ${sizeText(length)}; read ${sizeText(at)}`,
          },
        ]
      : [],
  )
  const [from, to] = stair?.between ?? [0, length]
  if (nm(from) < nm(to) && nm(to) <= nm(length)) return found
  const read = `read ${sizeText(from)} and ${sizeText(to)}`
  const allowed = `must be two places of the part, the lower first, between 0 and ${sizeText(length)}`
  return [...found, { path: 'stair.between', message: `${allowed}; ${read}` }]
}

/**
 * A job file as read from outside, checked whole.
 * @throws Problem `bad-input` with every field that is wrong, what was read and what is allowed
 */
export function readJob(input: unknown): Job {
  const units = (input as { units?: unknown } | null)?.units === 'mm' ? 'mm' : 'in'
  const parsed = readInput(schemas[units], input)
  const job: Job = {
    ...parsed,
    lumber: { ...parsed.lumber, sap: parsed.lumber.sap ?? usualSap(parsed.species) },
    allowances: allowancesFrom(parsed.allowances),
    unread: unreadFields(input, parsed),
  }
  const breaches: Breach[] = profileBreaches(job.profile, 'profile', partLimits)
  if (breaches.length > 0) throw badInput(breaches)
  const outside = outsideBreaches(job)
  if (outside.length > 0) throw badInput(outside)
  return { ...job, profile: withTenons(job.profile, job.joints, job.tolerance) }
}
