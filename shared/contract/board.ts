import { z } from 'zod'
import { lengthOf, listOf, readInput } from '../input.ts'
import { nm, type Units } from '../units/length.ts'
import { inSmallLetters } from './key.ts'

function boardSchema(units: Units) {
  const size = lengthOf(units, { least: 1e-3, most: 20_000 })
  const place = lengthOf(units, { least: -20_000, most: 40_000 })
  const money = z.number().min(0).max(1e9)
  return z
    .object({
      key: z.string().trim().min(1).max(80).overwrite(inSmallLetters),
      units: z.enum(['in', 'mm']).optional(),
      species: z.string().min(1).max(80).optional(),
      width: size,
      length: size,
      thickness: size,
      count: z
        .union([z.number().int().min(1).max(10_000), z.null()], {
          error: 'must be a whole number from 1 to 10000, or null for as many as needed',
        })
        .default(1),
      pricePerBoardFoot: money.optional(),
      price: money.optional(),
      grade: z.string().max(40).optional(),
      defects: listOf(
        z
          .object({
            from: place,
            to: place,
            across: z.tuple([place, place]).optional(),
            kind: z.string().max(80).optional(),
          })
          .refine(({ from, to }) => nm(to) >= nm(from), {
            path: ['to'],
            message: 'must not lie before where the defect starts',
          })
          .refine(({ across }) => !across || nm(across[1]) >= nm(across[0]), {
            path: ['across'],
            message: 'must not end before where it starts',
          }),
        { most: 200 },
      ).optional(),
      /** Its ends and edges are sawn already, as an offcut’s are. */
      trimmed: z.boolean().optional(),
      /** How far the edge bends away from a straight line over the whole length. */
      crook: lengthOf(units, { most: 2_000 }).optional(),
      /** Moisture content, %. */
      moisture: z.number().min(0).max(200).optional(),
      /** Where the tree’s heart lies at the butt end: from the edge that defects are measured from, and below the face. */
      heart: z.object({ across: place, below: place }).optional(),
      /** Where it came from: the yard, the load, the board it was cut from. */
      from: z.string().max(200).optional(),
      notes: z.string().max(1000).optional(),
    })
    .refine(({ price, pricePerBoardFoot }) => price === undefined || pricePerBoardFoot === undefined, {
      path: ['pricePerBoardFoot'],
      message: 'must not stand beside a price for the whole board: give one of the two',
    })
}

const schemas = { in: boardSchema('in'), mm: boardSchema('mm') }

/** A board on the rack as entered; text lengths without a unit are in its `units`, else in the shop's. */
export const boardEntrySchema = schemas.in

export type RackBoard = z.output<typeof schemas.in>

/** A board as answered: lengths in mm. */
export const boardAnswerSchema = z.looseObject({
  key: z.string(),
  width: z.number(),
  length: z.number(),
  thickness: z.number(),
  count: z.number().nullable(),
})

/** A board as it is listed: with the started batches that have some of it reserved. */
export const heldBoardSchema = boardAnswerSchema.extend({
  reserved: z.array(z.object({ job: z.string(), name: z.string(), count: z.number().int() })).optional(),
})

/** A board on the rack, and who has it reserved. */
export type HeldBoard = RackBoard & Pick<z.output<typeof heldBoardSchema>, 'reserved'>

/**
 * A board sent in; lengths in mm.
 * @param units what text lengths are in when the board does not say
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readBoard(body: unknown, units: Units): RackBoard {
  const own = (body as { units?: unknown } | null)?.units
  return readInput(schemas[own === 'in' || own === 'mm' ? own : units], body)
}
