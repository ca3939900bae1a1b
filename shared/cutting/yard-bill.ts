import { roughThickness } from '../blank/nominal.ts'
import { amountOf, minorOf } from '../units/money.ts'
import { feetReason, priceReason, thinReason } from './bill-reasons.ts'
import type { YardGrade } from './board-grade.ts'
import { billedFeet, pricePerBoardFoot, serviceMinor, type YardBoard, type YardTerms } from './yard-terms.ts'

/** Boards of one size on a line of a bill, as the buyer measured them; mm. */
export interface BilledBoards {
  width: number
  length: number
  /** As it measures, where it was measured. */
  thickness?: number
  count: number
}

/** A line of a yard's bill for wood: what was bought, and what the yard wrote. Money in currency units. */
export interface BillLine {
  species: string
  nominal: string
  grade?: YardGrade
  surfaced?: boolean
  boards: BilledBoards[]
  feet?: number
  pricePerBoardFoot?: number
  amount?: number
}

/** A yard's bill as it was written. Money in currency units. */
export interface YardBill {
  lines: BillLine[]
  services: { name: string; amount: number }[]
  /** Sales tax, a fraction of the rest. */
  tax: number
  total?: number
}

/** How one figure of a bill stands to what it should be. */
export type Standing = 'agrees' | 'differs' | 'not known'

/** A line gone over. Money in whole minor units. */
export interface LineCheck {
  standing: Standing
  /** Board feet by the yard's own count; absent where no boards were measured. */
  feet?: number
  /** By the yard's list, currency units; absent where it has none for this wood. */
  pricePerBoardFoot?: number
  /** What the line should come to, as far as that can be told. */
  due?: number
  /** What was billed beyond it; below 0 where too little was. */
  over?: number
  /** What does not agree, and why that may be. */
  reasons: string[]
}

export interface ServiceCheck {
  name: string
  standing: Standing
  due?: number
  over?: number
  reason?: string
}

/** A whole bill gone over. Money in whole minor units. */
export interface BillCheck {
  lines: LineCheck[]
  services: ServiceCheck[]
  /** Board feet of all lines as far as known. */
  feet: number
  /** What the least charge adds. */
  toMinimum: number
  tax: number
  /** What the bill should come to: the lines as they should be, as billed where that cannot be told. */
  due: number
  /** What it does come to by its own lines, and as written at its foot. */
  added: number
  billed?: number
  /** Billed beyond what is due; below 0 where too little was. */
  over?: number
  standing: Standing
  reasons: string[]
}

/** Feet are written to the hundredth, or to whole feet at the end of a line. */
const sameFeet = (billed: number, ours: number): boolean =>
  Math.abs(billed - ours) < 0.0051 || (Number.isInteger(billed) && billed === Math.round(ours * (1 + 1e-12)))

/** A minor unit of rounding is nobody's mistake. */
const isCent = (minor: number): boolean => Math.abs(minor) <= 1

const samePrice = (a: number, b: number): boolean => Math.abs(a - b) < 5e-5

/** Every board of a line, as the yard would count it. */
export const boardsOnLine = (line: BillLine): YardBoard[] =>
  line.boards.flatMap(({ count, width, length, thickness }) =>
    Array.from({ length: Math.min(count, 1000) }, () => ({
      ...line,
      width,
      length,
      thickness: thickness ?? roughThickness(line.nominal),
    })),
  )

const feetOf = (boards: readonly YardBoard[], terms: YardTerms): number =>
  boards.reduce((sum, board) => sum + billedFeet(board, terms), 0)

function lineCheck(line: BillLine, terms: YardTerms, currency: string): LineCheck {
  const boards = boardsOnLine(line)
  const counted = boards.length > 0 ? feetOf(boards, terms) : undefined
  const listed = pricePerBoardFoot(terms, line)
  const reasons = [
    ...feetReasons(line, boards, counted, terms),
    ...priceReasons(line, listed, terms),
    ...sumReasons(line, currency),
    ...[thinReason(line)].filter((text) => text !== undefined),
  ]
  // The yard may round the feet of a line: what it wrote stands where it agrees.
  const agreed = line.feet !== undefined && counted !== undefined && sameFeet(line.feet, counted)
  const feet = agreed ? line.feet : (counted ?? line.feet)
  const price = listed ?? line.pricePerBoardFoot
  const due = feet === undefined || price === undefined ? undefined : minorOf(feet * price, currency)
  const over =
    due === undefined || line.amount === undefined ? undefined : minorOf(line.amount, currency) - due
  const known = counted !== undefined && listed !== undefined && over !== undefined
  return {
    standing: reasons.length > 0 || !isCent(over ?? 0) ? 'differs' : known ? 'agrees' : 'not known',
    ...(counted !== undefined && { feet: counted }),
    ...(listed !== undefined && { pricePerBoardFoot: listed }),
    ...(due !== undefined && { due }),
    ...(over !== undefined && { over }),
    reasons,
  }
}

const figure = (n: number): string => String(Math.round(n * 100) / 100)

function feetReasons(
  line: BillLine,
  boards: YardBoard[],
  counted: number | undefined,
  terms: YardTerms,
): string[] {
  if (line.feet === undefined || counted === undefined || sameFeet(line.feet, counted)) return []
  const more = line.feet - counted
  const why = feetReason(line.feet, boards, terms, sameFeet)
  return [
    `${figure(Math.abs(more))} bd ft ${more > 0 ? 'more' : 'less'} than the boards come to (${figure(counted)})${why ? `: ${why}` : ''}.`,
  ]
}

function priceReasons(line: BillLine, listed: number | undefined, terms: YardTerms): string[] {
  const billed = line.pricePerBoardFoot
  if (billed === undefined || listed === undefined || samePrice(billed, listed)) return []
  const why = priceReason(billed, line, terms, samePrice)
  return [
    `${figure(Math.abs(billed - listed))} a board foot ${billed > listed ? 'above' : 'below'} the list (${figure(listed)})${why ? `: ${why}` : ''}.`,
  ]
}

/** Where the line's own feet and price do not make its amount. */
function sumReasons({ feet, pricePerBoardFoot: price, amount }: BillLine, currency: string): string[] {
  if (feet === undefined || price === undefined || amount === undefined) return []
  const made = minorOf(feet * price, currency)
  if (isCent(made - minorOf(amount, currency))) return []
  return [
    `${figure(feet)} bd ft at ${figure(price)} make ${figure(amountOf(made, currency))}, not ${figure(amount)}.`,
  ]
}

function serviceCheck(
  { name, amount }: YardBill['services'][number],
  amounts: Parameters<typeof serviceMinor>[1],
  terms: YardTerms,
  currency: string,
): ServiceCheck {
  const service = terms.services.find((each) => each.name.toLowerCase() === name.trim().toLowerCase())
  if (!service) return { name, standing: 'not known', reason: 'The yard’s list has no such service.' }
  const due = serviceMinor(service, amounts, currency)
  const over = minorOf(amount, currency) - due
  return {
    name,
    standing: isCent(over) ? 'agrees' : 'differs',
    due,
    over,
    ...(!isCent(over) && {
      reason: `By the list it is ${figure(service.price)} a ${service.per.replace('-', ' ')}.`,
    }),
  }
}

/**
 * A yard's bill gone over line by line by the yard's own terms: feet against the boards as measured, prices against its
 * list, sums, services, least charge, tax and total. What was not measured or is not on the list is `not known`, never
 * taken for right.
 */
export function billCheck(bill: YardBill, terms: YardTerms, currency: string): BillCheck {
  const lines = bill.lines.map((line) => lineCheck(line, terms, currency))
  const boards = bill.lines.flatMap(boardsOnLine)
  const feet = lines.reduce((sum, each, i) => sum + (bill.lines[i]!.feet ?? each.feet ?? 0), 0)
  const amounts = {
    boards: boards.length,
    feetLong: boards.reduce((sum, { length }) => sum + length / (12 * 25.4), 0),
    boardFeet: feet,
  }
  const services = bill.services.map((each) => serviceCheck(each, amounts, terms, currency))
  const written = (amount: number | undefined) => minorOf(amount ?? 0, currency)
  const own = bill.lines.map(({ amount }) => written(amount))
  const extras = bill.services.map(({ amount }) => written(amount))
  const sumOf = (all: number[]) => all.reduce((sum, each) => sum + each, 0)
  const wood = sumOf(lines.map(({ due }, i) => due ?? own[i]!))
  const served = sumOf(services.map(({ due }, i) => due ?? extras[i]!))
  const least = bill.lines.length > 0 ? minorOf(terms.minimumCharge, currency) : 0
  const toMinimum = Math.max(0, least - wood - served)
  const tax = Math.round((wood + served + toMinimum) * bill.tax)
  const due = wood + served + toMinimum + tax
  const before = sumOf(own) + sumOf(extras)
  const added = before + Math.round(before * bill.tax)
  const billed = bill.total === undefined ? undefined : written(bill.total)
  const reasons = totalReasons(billed, added, toMinimum, figureOf(currency))
  return {
    lines,
    services,
    feet,
    toMinimum,
    tax,
    due,
    added,
    ...(billed !== undefined && { billed, over: billed - due }),
    standing: standingOf([...lines, ...services], reasons, billed === undefined ? undefined : billed - due),
    reasons,
  }
}

const figureOf = (currency: string) => (minor: number) => figure(amountOf(minor, currency))

function totalReasons(
  billed: number | undefined,
  added: number,
  toMinimum: number,
  text: (minor: number) => string,
): string[] {
  if (billed === undefined || isCent(billed - added)) return []
  if (toMinimum > 0 && billed > added) return [`The least charge adds ${text(toMinimum)}.`]
  return [`The lines add up to ${text(added)}, not ${text(billed)}.`]
}

function standingOf(
  parts: readonly { standing: Standing }[],
  reasons: string[],
  over: number | undefined,
): Standing {
  const least = reasons.length === 1 && reasons[0]!.startsWith('The least charge')
  if (parts.some(({ standing }) => standing === 'differs') || (reasons.length > 0 && !least)) return 'differs'
  if (over !== undefined && !isCent(over)) return 'differs'
  return over === undefined || parts.some(({ standing }) => standing === 'not known') ? 'not known' : 'agrees'
}
