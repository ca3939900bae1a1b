import { z } from 'zod'
import { listOf, uniqueNames } from '../input.ts'
import { yardGrades } from './grade-names.ts'
import { servicePer, tallyRules, usualTerms } from './yard-terms.ts'

const money = z.number().min(0).max(1e6)

const price = z.object({
  species: z.string().trim().min(1).max(80),
  nominal: z.string().regex(/^[1-9]\d?\/4$/, 'must be quarters of an inch such as 4/4, 5/4 or 8/4'),
  grade: z.enum([...yardGrades, '*']).default('*'),
  surfaced: z.boolean().optional(),
  pricePerBoardFoot: money,
})

const service = z.object({
  name: z.string().trim().min(1).max(80),
  per: z.enum(servicePer).default('board-foot'),
  price: money,
})

const terms = z.object({
  name: z.string().trim().min(1).max(80),
  prices: listOf(price, { most: 500 }).prefault([]),
  counts: z.enum(tallyRules).default(usualTerms.counts),
  measure: z.enum(['net', 'gross']).default(usualTerms.measure),
  grossOver: z.number().min(0).max(0.5).default(usualTerms.grossOver),
  services: listOf(service, { most: 40 }).prefault([]),
  minimumFeet: z.number().min(0).max(1e6).default(usualTerms.minimumFeet),
  minimumCharge: money.default(usualTerms.minimumCharge),
})

/** The yards of a shop as the outside may send them, the usual one first: no two of one name. Money in currency units. */
export const yardsSchema = listOf(terms, { most: 40 }).superRefine(uniqueNames('yard'))
