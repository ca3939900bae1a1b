import fc from 'fast-check'
import type { Board, CutBoard, CutOrder, CutPlan, PlacedBlank } from '../../../shared/cutting/board.ts'

export const inch = 25.4

/** An order with the habits of the tests: 1/8 in kerf, no trim, no prices; sizes in inches. */
export function orderOf(over: Partial<CutOrder>): CutOrder {
  return {
    units: 'in',
    kerf: inch / 8,
    endTrim: 0,
    edgeTrim: 0,
    process: 'either',
    priceBy: 'exact',
    minOffcut: 12 * inch,
    seconds: 1,
    currency: 'USD',
    blanks: [],
    boards: [],
    ...over,
  }
}

/** A board in inches. */
export const board = (key: string, width: number, length: number, over: Partial<Board> = {}): Board => ({
  key,
  width: width * inch,
  length: length * inch,
  thickness: 2 * inch,
  count: 1,
  ...over,
})

/** A row of blanks in inches. */
export const blanks = (key: string, side: number, length: number, count: number) => ({
  key,
  side: side * inch,
  length: length * inch,
  count,
})

export const placedOn = (cut: CutBoard): PlacedBlank[] =>
  [...(cut.strips ?? []), ...(cut.sections ?? [])].flatMap((part) => part.blanks)

export const cutCount = (plan: CutPlan): number => plan.boards.reduce((n, cut) => n + placedOn(cut).length, 0)

export const missingOf = (plan: CutPlan): number => plan.unmet.reduce((n, row) => n + row.count, 0)

const eighths = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((n) => (n * inch) / 8)

const defect = (width: number, length: number, partial: boolean) =>
  fc
    .record({
      at: fc.double({ min: -0.1, max: 1.05, noNaN: true }),
      // Some are checks narrower than the kerf.
      long: fc.oneof(
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 0.002, noNaN: true }),
      ),
      whole: fc.integer({ min: 0, max: 3 }),
      low: fc.double({ min: -0.1, max: 0.9, noNaN: true }),
      wide: fc.double({ min: 0, max: 0.4, noNaN: true }),
    })
    .map(({ at, long, whole, low, wide }) => {
      const along = { from: at * length, to: (at + long) * length }
      const across: [number, number] = [low * width, (low + wide) * width]
      // One in four runs the length of the board; of the rest half are partial where those are wanted.
      if (whole === 0) return { from: -1, to: length + 1, across }
      return partial && whole === 1 ? { ...along, across } : along
    })

/** Orders of every kind: few or many sizes, finite or endless boards, prices or none, defects anywhere. */
export function orders({ blanksMax = 12, boardsMax = 8, partial = true } = {}): fc.Arbitrary<CutOrder> {
  const oneBoard = fc
    .record({ width: eighths(16, 96), length: eighths(96, 960), thickness: fc.constantFrom(1, 1.5, 2, 3) })
    .chain(({ width, length, thickness }) =>
      fc.record({
        width: fc.constant(width),
        length: fc.constant(length),
        thickness: fc.constant(thickness * inch),
        count: fc.constantFrom(null, 1, 1, 1, 2, 3),
        price: fc.integer({ min: 100, max: 9000 }).map((cents) => cents / 100),
        defects: fc.array(defect(width, length, partial), { maxLength: 3 }),
      }),
    )
  return fc
    .record({
      kerf: fc.constantFrom(0, inch / 16, inch / 8, 3, 6.35),
      endTrim: fc.constantFrom(0, inch / 2, inch, 30),
      edgeTrim: fc.constantFrom(0, 0, inch / 8),
      process: fc.constantFrom('either' as const, 'rip-first' as const, 'crosscut-first' as const),
      priceBy: fc.constantFrom('exact' as const, 'tally' as const),
      priced: fc.constantFrom('price', 'foot', 'none'),
      boards: fc.array(oneBoard, { minLength: 1, maxLength: boardsMax }),
      blanks: fc.array(
        fc.record({
          side: eighths(8, 20),
          length: eighths(32, 320),
          count: fc.integer({ min: 1, max: blanksMax }),
          thinner: fc.boolean(),
        }),
        { minLength: 1, maxLength: 4 },
      ),
    })
    .map(({ priced, ...raw }) =>
      orderOf({
        ...raw,
        boards: raw.boards.map(({ price, ...b }, i) => ({
          key: `B${i + 1}`,
          ...b,
          ...(priced === 'price' ? { price } : priced === 'foot' ? { pricePerBoardFoot: price / 8 } : {}),
        })),
        blanks: raw.blanks.map(({ thinner, ...b }, i) => ({
          key: `b${i + 1}`,
          ...b,
          ...(thinner ? { thickness: inch } : {}),
        })),
      }),
    )
}
