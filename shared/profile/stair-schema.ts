import { z } from 'zod'
import { lengthOf, readText } from '../input.ts'
import { READABLE_FORCES, readForce } from '../units/force.ts'
import type { Units } from '../units/length.ts'
import type { StairWishes } from './stair.ts'

/** Limits of what is read, mm and N: far beyond any stair, so that a slip of the unit is caught. */
const RUN_MOST = 100_000
const GAP_MOST = 1_000
const LOAD_MOST = 20_000

function loadOf(units: Units) {
  return z
    .union([z.number(), z.string()], { error: `must be a force: ${READABLE_FORCES}` })
    .transform((written, context) => {
      const newtons = readForce(written, units)
      if (newtons !== undefined && newtons > 0 && newtons <= LOAD_MOST) return newtons
      const message =
        newtons === undefined
          ? `is no force that can be read; allowed: ${READABLE_FORCES}`
          : `must be more than 0 and at most ${LOAD_MOST} N; read ${readText(written)} (${newtons} N)`
      context.addIssue({ code: 'custom', message })
      return z.NEVER
    })
}

/** What a job file may say of its stair parts, read to mm and N. */
export function stairSchema(units: Units) {
  return z
    .object({
      run: lengthOf(units, { least: 1, most: RUN_MOST }).optional(),
      gap: lengthOf(units, { least: 1, most: GAP_MOST }).optional(),
      load: loadOf(units).optional(),
      between: z
        .tuple([lengthOf(units), lengthOf(units)], {
          error: 'must be two lengths from the foot, from where to where it shows between the rails',
        })
        .optional(),
    })
    .transform(
      ({ run, gap, load, between }): StairWishes => ({
        ...(run !== undefined && { run }),
        ...(gap !== undefined && { gap }),
        ...(load !== undefined && { load }),
        ...(between && { between }),
      }),
    )
}
