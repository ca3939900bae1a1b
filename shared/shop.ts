import { z } from 'zod'
import { type Allowances, allowanceSources, allowancesFrom, allowancesSchema } from './blank/allowances.ts'
import type { LatheSize } from './blank/lathe-fit.ts'
import type { Stock } from './blank/nominal.ts'
import type { SpoilRecord } from './blank/spares.ts'
import type { YardGrade } from './cutting/board-grade.ts'
import { yardGrades } from './cutting/grade-names.ts'
import type { YardTerms } from './cutting/yard-terms.ts'
import { yardsSchema } from './cutting/yard-terms-schema.ts'
import { baseMinutesSource } from './estimate/base-minutes.ts'
import { day, lengthOf, listOf, readInput } from './input.ts'
import type { RouteTool } from './route/input.ts'
import type { PassCosts } from './route/passes.ts'
import { type WeekDay, weekDays } from './schedule/days.ts'
import { grindingAngles, type TurningToolKind } from './turning/bevel.ts'
import type { TurningLathe } from './turning/lathe.ts'
import { latheSchema } from './turning/lathe-schema.ts'
import { inches, type Units } from './units/length.ts'
import type { Air } from './wood/air.ts'
import { airSchema } from './wood/air-schema.ts'
import type { Lot } from './wood/lot.ts'
import { lotsSchema } from './wood/lot-schema.ts'
import type { Species } from './wood/species.ts'

/** A lathe of the shop. Lengths mm, speeds rpm. */
export interface Lathe extends LatheSize, TurningLathe {}

export const toolKinds = Object.keys(grindingAngles) as TurningToolKind[]

/** Rough thicknesses a yard sells, in quarters of an inch. */
export const nominals = ['4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4'] as const

/** A thickness the yard sells in one wood. */
export interface ShopStock extends Stock {
  /** Species key, or `*` for every wood without rows of its own. */
  species: string
  nominal: (typeof nominals)[number]
}

/** The shop's own settings; lengths mm, money in currency units. */
export interface Shop {
  name: string
  heading?: string
  /** ISO 4217. */
  currency: string
  units: Units
  lathes: Lathe[]
  tools: RouteTool[]
  /** Calipers that can stay set side by side. */
  calipers: number
  stock: ShopStock[]
  /** Sizes a yard commonly brings, when no boards are named. */
  yardBoards: { width: number; length: number }[]
  /** What the yards sell by, the usual one first. */
  yards: YardTerms[]
  grade: YardGrade
  /** Extra bought over the computed need, a fraction. */
  extraWood: number
  kerf: number
  endTrim: number
  edgeTrim: number
  minOffcut: number
  priceBy: 'exact' | 'tally'
  allowances: Partial<Allowances>
  spareConfidence: number
  record: SpoilRecord
  learningRate: number
  /** Whether the rate is of each piece’s own minutes or of the average of all pieces so far. */
  learningForm: 'unit' | 'average'
  hoursPerDay: number
  /** Who works on batches at the same time, each `hoursPerDay`. */
  people: number
  /** Days of the week the shop works. */
  workDays: WeekDay[]
  /** Days it is closed all the same, ISO 8601. */
  closed: string[]
  /** Minutes of what is changed between operations: mounting, tool, speed, caliper, tool rest. */
  changes: Partial<PassCosts>
  /** Minutes it takes to make one preset gauge for a diameter. */
  gaugeMinutes: number
  /** Fraction added to working time for rest and interruption. */
  restAllowance: number
  /** Standard deviation of a batch's time as a fraction of it. */
  timeSpread: number
  /** The shop's own factor on the minutes of a kind of operation; 1 when absent. */
  minuteFactors: Record<string, number>
  grits: number[]
  touchUpsPerRegrind: number
  touchUpMinutes: number
  regrindMinutes: number
  labourPerHour: number
  marginOnCost: number
  finishPerSquareMetre: number
  abrasivePerPiece: number
  minimumCharge: number
  /** Air the wood stands in; absent where it was never measured. */
  air?: Air
  /** Woods the shop adds to the handbook's. */
  species: Species[]
  /** Wood bought together, with what finished pieces of it weighed. */
  lots: Lot[]
}

/** What a new shop starts with. Nothing here is a rule: `shopSources` says where each figure comes from. */
export const defaultShop: Shop = {
  name: 'My shop',
  currency: 'USD',
  units: 'in',
  lathes: [
    {
      name: 'Floor lathe',
      betweenCentres: inches(42),
      swing: inches(14),
      swingOverRest: inches(11),
      speeds: { steps: [400, 600, 850, 1200, 1700, 2400, 3000] },
      restLength: inches(12),
    },
  ],
  tools: [
    { name: '1-1/4 in roughing gouge', kind: 'roughing-gouge', width: inches(1.25), steel: 'hss' },
    { name: '3/8 in spindle gouge', kind: 'spindle-gouge', width: inches(3 / 8), steel: 'hss' },
    { name: '1/2 in spindle gouge', kind: 'spindle-gouge', width: inches(1 / 2), steel: 'hss' },
    { name: '1/2 in skew', kind: 'skew', width: inches(1 / 2), steel: 'hss' },
    { name: '1 in skew', kind: 'skew', width: inches(1), steel: 'hss' },
    { name: '1/8 in parting tool', kind: 'parting', width: inches(1 / 8), steel: 'hss' },
    { name: '1/2 in round-nose scraper', kind: 'scraper', width: inches(1 / 2), steel: 'hss' },
  ],
  calipers: 3,
  stock: [
    { species: '*', nominal: '4/4' },
    { species: '*', nominal: '5/4' },
    { species: '*', nominal: '6/4' },
    { species: '*', nominal: '8/4' },
  ],
  yardBoards: [6, 8].flatMap((width) =>
    [8, 10, 12].map((feet) => ({ width: inches(width), length: inches(12 * feet) })),
  ),
  yards: [],
  grade: 'FAS',
  extraWood: 0.2,
  kerf: inches(1 / 8),
  endTrim: inches(1),
  edgeTrim: inches(1 / 8),
  minOffcut: inches(12),
  priceBy: 'tally',
  allowances: {},
  spareConfidence: 0.9,
  record: { spoiled: 0, made: 0 },
  learningRate: 0.95,
  learningForm: 'unit',
  hoursPerDay: 6,
  people: 1,
  workDays: ['mon', 'tue', 'wed', 'thu', 'fri'],
  closed: [],
  changes: {},
  gaugeMinutes: 4,
  restAllowance: 0.1,
  timeSpread: 0.15,
  minuteFactors: {},
  grits: [120, 150, 180, 220],
  touchUpsPerRegrind: 8,
  touchUpMinutes: 1,
  regrindMinutes: 5,
  labourPerHour: 45,
  marginOnCost: 0.2,
  finishPerSquareMetre: 12,
  abrasivePerPiece: 0.4,
  minimumCharge: 0,
  species: [],
  lots: [],
}

const CP = 'common practice, no source'

/** Where each default comes from, by the name of the setting. */
export const shopSources: Record<string, string> = {
  lathes: `${CP}; put in your own: the maker’s plate and manual come first`,
  tools: `${CP}; put in your own`,
  calipers: CP,
  stock: `${CP}: 4/4 to 8/4 are commonly stocked; prices are your yard’s`,
  yardBoards: `${CP}; hardwood comes in random widths and lengths`,
  yards:
    'as your yards say: the first is the usual one, and its prices come before the table of stock; a new yard counts the NHLA way, net, until you say otherwise',
  grade: 'NHLA standard grades: FAS 10/12 clear',
  extraWood: `${CP}: 15 to 30 % over the net`,
  kerf: CP,
  endTrim: CP,
  edgeTrim: CP,
  minOffcut: CP,
  priceBy: 'NHLA practice: yards bill by tally',
  spareConfidence: CP,
  record: 'your own count; before any, 2 in 50 are taken as spoiled (common practice, no source)',
  learningRate: CP,
  learningForm: `${CP}; published tables are mostly of the unit form`,
  hoursPerDay: CP,
  people: 'as it is in your shop',
  workDays: CP,
  closed: 'your own calendar',
  changes: `${CP}; put in your own`,
  gaugeMinutes: `${CP}: print, stick to thin ply, saw and file; it pays from about eight pieces`,
  restAllowance: CP,
  timeSpread: CP,
  minuteFactors: `your own record; the minutes they stand on: ${baseMinutesSource}`,
  grits:
    'sequences in use at turners’ associations; stop at 220 for film finish (common practice, no source)',
  touchUpsPerRegrind: CP,
  touchUpMinutes: CP,
  regrindMinutes: CP,
  labourPerHour: 'a figure to start from; put in your own rate',
  marginOnCost: 'a figure to start from; put in your own',
  finishPerSquareMetre: 'a figure to start from; put in your own',
  abrasivePerPiece: 'a figure to start from; put in your own',
  minimumCharge: 'none until you set one',
  air: 'your own thermometer and hygrometer; the moisture wood comes to by Wood Handbook eq. 4-5',
  lots: 'your own weighings; before any, the wood table',
  ...Object.fromEntries(
    Object.entries(allowanceSources).map(([name, source]) => [`allowances.${name}`, source]),
  ),
}

const rate = z.number().min(0).max(1e6)
const changeMinutes = z.number().min(0).max(60).optional()

/** Lives of an edge as counted: minutes of slicing, m/s at the rim, N of side hardness. */
const livesSchema = listOf(
  z.object({
    minutes: z.number().min(0.1).max(10_000),
    rim: z.number().min(0.1).max(60).optional(),
    hardnessN: z.number().min(50).max(30_000).optional(),
  }),
  { most: 20 },
)

const share = z.number().min(0).max(1).optional()
const speciesSchema = z.object({
  key: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be lower case words joined by -'),
  name: z.string().trim().min(1).max(80),
  botanical: z.string().max(120).optional(),
  kind: z.enum(['hardwood', 'softwood']),
  sgGreen: z.number().min(0.05).max(1.4).optional(),
  sg12: z.number().min(0.05).max(1.5).optional(),
  moeGPa: z.number().min(0.1).max(40).optional(),
  morMPa: z.number().min(1).max(400).optional(),
  hardnessN: z.number().min(50).max(30_000).optional(),
  shrinkRadialPct: z.number().min(0).max(30).optional(),
  shrinkTangentialPct: z.number().min(0).max(40).optional(),
  shrinkVolumetricPct: z.number().min(0).max(60).optional(),
  cr: share,
  ct: share,
  source: z.string().max(200).default('the shop’s own'),
  confidence: z.enum(['cross', 'read', 'computed', 'memory', 'shop']).default('shop'),
  fieldConfidence: z.string().max(400).optional(),
  safe: z.boolean().default(false),
  notes: z.string().max(400).optional(),
})

/** The shop's settings as the outside may send them; what is left out keeps its default. */
export function shopSchema(units: Units) {
  const size = lengthOf(units, { most: 20_000 })
  const board = lengthOf(units, { least: 1, most: 20_000 })
  const d = defaultShop
  return z.object({
    name: z.string().trim().min(1).max(120).default(d.name),
    heading: z.string().max(600).optional(),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'must be a currency code of three capitals, such as USD or EUR')
      .default(d.currency),
    units: z.enum(['in', 'mm']).default(d.units),
    lathes: listOf(latheSchema(units), { least: 1, most: 20 }).prefault(d.lathes),
    tools: listOf(
      z.object({
        name: z.string().trim().min(1).max(80),
        kind: z.enum(toolKinds),
        width: size,
        steel: z.enum(['carbon', 'hss', 'powder']).default('hss'),
        piecesPerEdge: z.number().min(0.1).max(10_000).optional(),
        lives: livesSchema.optional(),
      }),
      { most: 60 },
    ).prefault(d.tools),
    calipers: z.number().int().min(1).max(40).default(d.calipers),
    stock: listOf(
      z.object({
        species: z.string().min(1).max(80),
        nominal: z.enum(nominals),
        surfaced: z.boolean().optional(),
        pricePerBoardFoot: rate.optional(),
      }),
      { least: 1, most: 1000 },
    ).prefault(d.stock),
    yardBoards: listOf(z.object({ width: board, length: board }), { least: 1, most: 60 }).prefault(
      d.yardBoards,
    ),
    yards: yardsSchema.prefault([]),
    grade: z.enum(yardGrades).default(d.grade),
    extraWood: z.number().min(0).max(3).default(d.extraWood),
    kerf: size.default(d.kerf),
    endTrim: size.default(d.endTrim),
    edgeTrim: size.default(d.edgeTrim),
    minOffcut: size.default(d.minOffcut),
    priceBy: z.enum(['exact', 'tally']).default(d.priceBy),
    allowances: allowancesSchema(units).prefault({}).transform(allowancesFrom),
    spareConfidence: z.number().min(0.5).max(0.999).default(d.spareConfidence),
    record: z
      .object({ spoiled: z.number().int().min(0).max(1e6), made: z.number().int().min(0).max(1e6) })
      .refine((r) => r.spoiled <= r.made, 'spoiled must not be more than made')
      .prefault(d.record),
    learningRate: z.number().min(0.5).max(1).default(d.learningRate),
    learningForm: z.enum(['unit', 'average']).default(d.learningForm),
    hoursPerDay: z.number().min(0.25).max(24).default(d.hoursPerDay),
    people: z.number().int().min(1).max(20).default(d.people),
    workDays: z.array(z.enum(weekDays)).min(1).max(7).default(d.workDays),
    closed: z.array(day).max(400).default([]),
    changes: z
      .object({
        mounting: changeMinutes,
        toolChange: changeMinutes,
        speedChange: changeMinutes,
        reset: changeMinutes,
        restMove: changeMinutes,
      })
      .prefault({}),
    gaugeMinutes: z.number().min(0).max(240).default(d.gaugeMinutes),
    restAllowance: z.number().min(0).max(2).default(d.restAllowance),
    timeSpread: z.number().min(0).max(2).default(d.timeSpread),
    minuteFactors: z.record(z.string().max(40), z.number().min(0.05).max(20)).default({}),
    grits: z.array(z.number().int().min(24).max(4000)).max(12).default(d.grits),
    touchUpsPerRegrind: z.number().int().min(1).max(1000).default(d.touchUpsPerRegrind),
    touchUpMinutes: z.number().min(0).max(120).default(d.touchUpMinutes),
    regrindMinutes: z.number().min(0).max(240).default(d.regrindMinutes),
    labourPerHour: rate.default(d.labourPerHour),
    marginOnCost: z.number().min(0).max(10).default(d.marginOnCost),
    finishPerSquareMetre: rate.default(d.finishPerSquareMetre),
    abrasivePerPiece: rate.default(d.abrasivePerPiece),
    minimumCharge: rate.default(d.minimumCharge),
    air: airSchema(units).optional(),
    species: listOf(speciesSchema, { most: 500 }).prefault([]),
    lots: lotsSchema.prefault([]),
  })
}

const schemas = { in: shopSchema('in'), mm: shopSchema('mm') }

/**
 * The shop's settings as read from outside; text lengths are in the settings' own `units`.
 * @throws Problem `bad-input` with every field that is wrong, what was read and what is allowed
 */
export function readShop(input: unknown): Shop {
  const units = (input as { units?: unknown } | null)?.units === 'mm' ? 'mm' : 'in'
  return readInput(schemas[units], input)
}
