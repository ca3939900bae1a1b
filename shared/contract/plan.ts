import { z } from 'zod'
import { cutPlanSchema } from './cut.ts'
import { id } from './key.ts'

const minutes = z.number().min(0)
const length = z.number()

const part = z.looseObject({
  length,
  maxDiameter: length,
  minDiameter: length,
  volume: z.number(),
  surface: z.number(),
  surfaceTurned: z.number(),
  centroid: length,
  mass: z.number().optional(),
  whip: z
    .looseObject({
      compliance: z.number(),
      at: length,
      sag: length,
      criticalRpm: z.number(),
      rest: z.enum(['none', 'advised', 'needed']),
      restAt: length.optional(),
      restJournal: z.tuple([length, length]).optional(),
      why: z.string(),
    })
    .optional(),
  lot: z.looseObject({ name: z.string(), factor: z.number(), weighings: z.number().int() }).optional(),
})

/** Stair parts: lengths mm, N, N·mm, MPa. */
const stair = z.looseObject({
  use: z.enum(['stair', 'guard']),
  gap: length,
  between: z.tuple([length, length]),
  least: z.object({ at: length, diameter: length }),
  /** Centre to centre the parts stand closer than this. */
  spacingBelow: length,
  run: z
    .object({ run: length, count: z.number().int(), clear: length, spacing: length, first: length })
    .optional(),
  bending: z
    .object({
      at: length,
      diameter: length,
      load: z.number(),
      over: length,
      moment: z.number(),
      stress: z.number(),
      rupture: z.number(),
      reserve: z.number(),
    })
    .optional(),
  whyNoBending: z.string().optional(),
  cautions: z.array(z.string()),
})

const blank = z.looseObject({
  side: length,
  sawn: length,
  length,
  stock: z.looseObject({ perBlank: z.number().int(), sticks: z.number().int() }),
  layers: z.number().int(),
  /** Glue lines off the axis, and the feather edges they leave from the foot on; mm, degrees. */
  glueUp: z
    .looseObject({
      layers: z.number().int(),
      middle: length,
      outer: length,
      lines: z.array(length),
      feathers: z.array(
        z.looseObject({ line: length, from: length, to: length, angle: z.number(), neck: z.boolean() }),
      ),
    })
    .optional(),
  /** Added because it dries after it is sawn: mm, moisture %. */
  shrinkage: z
    .looseObject({ across: length, onLathe: length, from: z.number(), to: z.number(), share: z.number() })
    .optional(),
  nominal: z.string().optional(),
  diagonal: length,
  mass: z.number().optional(),
  lathes: z.array(z.looseObject({ name: z.string(), fits: z.boolean(), why: z.array(z.string()) })),
  need: z.number().int(),
  spares: z.number().int(),
  count: z.number().int(),
})

const operation = z.looseObject({
  key: z.string(),
  name: z.string(),
  stage: z.string(),
  pass: z.number().int(),
  where: z.tuple([length, length]).nullable(),
  tool: z.string(),
  rpm: z.number().optional(),
  rpmCeiling: z.number().optional(),
  ceilingBy: z.string().optional(),
  caliper: length.optional(),
  /** Counted along the part from the tailstock, from 1. */
  restPosition: z.number().int().min(1).optional(),
  minutesOnce: minutes,
  minutesEach: minutes,
  /** What the shop's setting or its own times made of the usual minutes. */
  factor: z.number().optional(),
  after: z.array(z.string()),
  why: z.string(),
  caution: z.string().optional(),
})

/** The price before wood is cut; amounts in currency units. */
export const quoteSchema = z.looseObject({
  currency: z.string(),
  lines: z.array(z.looseObject({ key: z.string(), name: z.string(), amount: z.number(), why: z.string() })),
  total: z.number(),
  perPiece: z.number(),
})

/** Everything worked out for a job. Lengths mm, areas mm², volumes mm³, masses g, times minutes. */
export const planSchema = z.looseObject({
  job: z.looseObject({ name: z.string(), quantity: z.number().int() }),
  part,
  stair: stair.optional(),
  checkStations: z.array(
    z.looseObject({ key: z.string(), at: length, target: length, plus: length, minus: length }),
  ),
  blank,
  cut: cutPlanSchema,
  yard: z.looseObject({}),
  boardFeet: z.looseObject({
    blanks: z.number(),
    bought: z.number(),
    tallied: z.number(),
    onHand: z.number().optional(),
  }),
  operations: z.array(operation),
  calipers: z.looseObject({
    settings: z.array(z.looseObject({ diameter: length, stations: z.array(z.string()) })),
    perPiece: z.number(),
    total: z.number(),
    order: z.array(length),
  }),
  passes: z.looseObject({}),
  grinding: z.array(z.looseObject({ tool: z.string(), minutes })),
  sanding: z.looseObject({}),
  finish: z.looseObject({}),
  time: z.looseObject({
    minutes,
    perPiece: minutes,
    first: minutes,
    last: minutes,
    p10: minutes,
    p50: minutes,
    p90: minutes,
    /** How far it stands on the shop's own times. */
    trust: z
      .looseObject({
        batches: z.number().int(),
        records: z.number().int(),
        share: z.number(),
        why: z.string(),
      })
      .optional(),
  }),
  quote: quoteSchema.optional(),
  cautions: z.array(z.looseObject({ about: z.string(), text: z.string() })),
})

/** A plan as it was frozen when a batch was started. */
export const frozenPlanSchema = z.object({
  id,
  job: id,
  jobRevision: z.number().int(),
  madeAt: z.string(),
  version: z.string(),
  plan: planSchema,
})
