import { z } from 'zod'
import { lengthOf, listOf, readInput } from '../input.ts'
import { type Breach, badInput } from '../problem.ts'
import { mmOfNm, nm, type Units } from '../units/length.ts'
import type { Board, CutBlank, CutOrder } from './board.ts'
import { isPriced } from './priced.ts'

const ENTRIES_MAX = 10_000
const COUNT_MAX = 100_000
/** Blanks of one order altogether: each is listed singly in the plan. */
const BLANKS_MAX = 100_000
/** The least size that can be meant, mm: a hair. */
const LEAST = 0.01
/** An offcut this long is worth keeping unless the order says otherwise, mm: common practice, no source. */
const ONE_FOOT = 304.8

const key = z.string().trim().min(1).max(80)
const price = z.number().min(0).max(1e6)

function orderSchema(units: Units) {
  const size = lengthOf(units, { least: LEAST, most: 1e5 })
  const anywhere = lengthOf(units, { least: -1e6, most: 1e6 })
  const defect = z.object({
    from: anywhere,
    to: anywhere,
    across: z.tuple([anywhere, anywhere], { error: 'must be a pair of lengths, from one edge' }).optional(),
    kind: z.string().max(80).optional(),
  })
  return z.object({
    units: z.enum(['in', 'mm']),
    kerf: lengthOf(units, { most: 25.4 }),
    endTrim: lengthOf(units, { most: 1e4 }),
    edgeTrim: lengthOf(units, { most: 1e4 }),
    process: z.enum(['rip-first', 'crosscut-first', 'either']).default('either'),
    priceBy: z.enum(['exact', 'tally']).default('exact'),
    minOffcut: lengthOf(units, { most: 1e5 }).default(ONE_FOOT),
    seconds: z.number().min(0).max(3600).default(10),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'must be a currency code of three capitals such as USD')
      .default('USD'),
    blanks: listOf(
      z.object({
        key,
        side: size,
        length: size,
        count: z.number().int().min(1).max(COUNT_MAX),
        thickness: size.optional(),
      }),
      { least: 1, most: ENTRIES_MAX },
    ),
    boards: listOf(
      z.object({
        key,
        width: size,
        length: size,
        thickness: size,
        count: z.number().int().min(0).max(COUNT_MAX).nullable(),
        pricePerBoardFoot: price.optional(),
        price: price.optional(),
        grade: z.string().max(40).optional(),
        defects: listOf(defect, { most: 200 }).optional(),
        trimmed: z.boolean().optional(),
        onHand: z.boolean().optional(),
        heart: z.object({ across: anywhere, below: anywhere }).optional(),
      }),
      { most: ENTRIES_MAX },
    ),
  })
}

const schemas = { in: orderSchema('in'), mm: orderSchema('mm') }

/**
 * A cut order as read from outside: lengths to mm in the order's own units, defaults filled in.
 * @throws Problem `bad-input` with every field that is wrong, what was read and what is allowed
 */
export function readCutOrder(input: unknown): CutOrder {
  const units = (input as { units?: unknown } | null)?.units === 'mm' ? 'mm' : 'in'
  const order: CutOrder = readInput(schemas[units], input)
  const breaches = [
    ...repeated(order.blanks, 'blanks'),
    ...repeated(order.boards, 'boards'),
    ...reversed(order.boards),
    ...unpriced(order.boards),
    ...pricedTwice(order.boards),
    ...tooMany(order.blanks),
  ]
  if (breaches.length > 0) throw badInput(breaches)
  return order
}

function repeated(rows: { key: string }[], list: string): Breach[] {
  const seen = new Map<string, number>()
  return rows.flatMap((row, i) => {
    const first = seen.get(row.key)
    if (first === undefined) seen.set(row.key, i)
    return first === undefined
      ? []
      : [
          {
            path: `${list}[${i}].key`,
            message: `must differ from all others; read ${JSON.stringify(row.key)}, which ${list}[${first}] has`,
          },
        ]
  })
}

function reversed(boards: Board[]): Breach[] {
  const message = (from: number, to: number) =>
    `must not lie before where it starts; read ${mmOfNm(nm(from))} to ${mmOfNm(nm(to))} mm`
  return boards.flatMap((board, i) =>
    (board.defects ?? []).flatMap(({ from, to, across }, j) => {
      const path = `boards[${i}].defects[${j}]`
      if (nm(to) < nm(from)) return [{ path: `${path}.to`, message: message(from, to) }]
      if (across && nm(across[1]) < nm(across[0]))
        return [{ path: `${path}.across`, message: message(...across) }]
      return []
    }),
  )
}

function unpriced(boards: Board[]): Breach[] {
  const without = boards.findIndex((board) => !board.onHand && !isPriced(board))
  const priced = boards.find((board) => !board.onHand && isPriced(board))
  if (without < 0 || !priced) return []
  return [
    {
      path: `boards[${without}]`,
      message: `must have a price or pricePerBoardFoot, as ${priced.key} has: either every board has a price or none; read neither`,
    },
  ]
}

function pricedTwice(boards: Board[]): Breach[] {
  return boards.flatMap(({ price, pricePerBoardFoot }, i) =>
    price === undefined || pricePerBoardFoot === undefined
      ? []
      : [
          {
            path: `boards[${i}].pricePerBoardFoot`,
            message: `must not stand beside a price for the whole board: give one of the two; read ${pricePerBoardFoot} beside price ${price}`,
          },
        ],
  )
}

function tooMany(blanks: CutBlank[]): Breach[] {
  const total = blanks.reduce((sum, blank) => sum + blank.count, 0)
  return total > BLANKS_MAX
    ? [
        {
          path: 'blanks',
          message: `must not ask for more than ${BLANKS_MAX} blanks in one order; read ${total}`,
        },
      ]
    : []
}
