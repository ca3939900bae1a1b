import { z } from 'zod'
import { shopSchema } from '../shop.ts'

/** The shop's settings as sent in; what is left out keeps its default. */
export const shopFileSchema = shopSchema('in')

/** The shop's settings as answered, defaults filled in; lengths in mm. */
export const shopAnswerSchema = z.looseObject({
  name: z.string(),
  currency: z.string(),
  units: z.enum(['in', 'mm']),
  /** Wood bought together: masses g, volumes mm³, moisture %. */
  lots: z.array(
    z.looseObject({ name: z.string(), species: z.string(), weighings: z.array(z.looseObject({})) }),
  ),
})

/** A wood with where its figures come from and how sure they are. */
export const speciesSchema = z.looseObject({
  key: z.string(),
  name: z.string(),
  source: z.string(),
  confidence: z.string(),
  safe: z.boolean(),
})
