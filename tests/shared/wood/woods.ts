import { readFileSync } from 'node:fs'
import type { Species } from '../../../shared/wood/species.ts'

/** The table of woods as it is seeded. */
export const woods = JSON.parse(
  readFileSync(new URL('../../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]

export const wood = (key: string): Species => woods.find((species) => species.key === key)!

/** A wood of which only these values are known. */
export const woodWith = (values: Partial<Species>): Species => ({
  key: 'wood',
  name: 'Wood',
  kind: 'hardwood',
  source: 'test',
  confidence: 'read',
  safe: true,
  ...values,
})
