import { z } from 'zod'
import { lengthOf } from '../input.ts'
import { inches, type Units } from '../units/length.ts'
import { pulleySteps } from './pulleys.ts'

const rpm = z.number().min(1).max(20_000)

/** A drive by pulleys; its steps are worked out anew, whatever was sent of them. */
function pulleysSchema(units: Units) {
  const pulleys = z
    .array(lengthOf(units, { least: 5, most: 2_000 }))
    .min(1)
    .max(20)
  return z
    .object({ motorRpm: rpm, motorPulleys: pulleys, spindlePulleys: pulleys })
    .superRefine(({ motorPulleys, spindlePulleys }, context) => {
      if (motorPulleys.length !== spindlePulleys.length)
        context.addIssue({
          code: 'custom',
          path: ['spindlePulleys'],
          message: `must be as many as the motor has, one facing each: read ${spindlePulleys.length} for ${motorPulleys.length}`,
        })
    })
    .transform((drive) => ({ steps: pulleySteps(drive), ...drive }))
}

/** Steps alone: pulleys half entered are no steps. */
const none = z.never().optional()
const stepsSchema = z
  .object({ steps: z.array(rpm).min(1).max(40), motorRpm: none, motorPulleys: none, spindlePulleys: none })
  .transform(({ steps }) => ({ steps }))

const pulleyFields = ['motorRpm', 'motorPulleys', 'spindlePulleys']

/** What is wrong with speeds; of pulleys, which field of theirs. */
function speedsError({ input, errors }: { input?: unknown; errors?: z.core.$ZodIssue[][] }): string {
  const byPulleys = pulleyFields.some((name) => name in Object(input))
  const [issue] = byPulleys ? (errors?.[0] ?? []) : []
  if (issue) return `${z.core.toDotPath(issue.path)} ${issue.message}`
  return 'must be { steps: [rpm, …] }, { least: rpm, most: rpm } with least not above most, or { motorRpm, motorPulleys: […], spindlePulleys: […] }'
}

/** A lathe of the shop as the outside may send it; lengths without a unit are in `units`. */
export function latheSchema(units: Units) {
  const size = lengthOf(units, { least: 1, most: 20_000 })
  return z.object({
    name: z.string().trim().min(1).max(80),
    betweenCentres: size,
    swing: size,
    swingOverRest: size,
    speeds: z.union(
      [
        pulleysSchema(units),
        stepsSchema,
        z.object({ least: rpm, most: rpm }).refine((r) => r.least <= r.most, 'least must not be above most'),
      ],
      { error: speedsError },
    ),
    limitRpm: rpm.optional(),
    restLength: size.default(inches(12)),
    rests: z.array(size).max(10).optional(),
  })
}
