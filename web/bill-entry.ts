import type { YardGrade } from '../shared/cutting/board-grade.ts'
import { yardGrades } from '../shared/cutting/grade-names.ts'
import type { BilledBoards, BillLine, YardBill } from '../shared/cutting/yard-bill.ts'
import { readLength, type Units } from '../shared/units/length.ts'
import { enteredNumber } from './entry.ts'

/** A line of a bill as it is typed. */
export interface EnteredLine {
  species?: string
  nominal: string
  grade?: string
  surfaced?: boolean
  /** Boards as measured, one a line: width × length, and how many where it is more than one. */
  boards?: string
  feet?: string
  pricePerBoardFoot?: string
  amount?: string
}

/** A bill as it is typed, kept on this device. */
export interface EnteredBill {
  lines: EnteredLine[]
  services: { name?: string; amount?: string }[]
  tax?: string
  total?: string
}

export const emptyBill: EnteredBill = { lines: [], services: [] }

/** A bill as read, and what of it could not be, by the path of the field. */
export interface ReadBill {
  bill: YardBill
  errors: ReadonlyMap<string, string>
}

const LINES_MOST = 200
const COUNT_MOST = 1000

/** Lengths of boards are said in feet where widths are in inches. */
const lengthOf = (text: string, units: Units): number | undefined =>
  units === 'in' && /^[\d\s./,½¼¾-]+$/.test(text)
    ? readLength(`${text.trim()} ft`, 'in')
    : readLength(text, units)

/**
 * Boards as they are written on a tally, one a line or with commas of lists between: `6 1/4 x 8`, `7 x 10 ft x 3`. A
 * bare width is in the shop’s units, a bare length in feet where those are inches. `undefined` for a line that cannot
 * be read.
 *
 * @example boardsWritten('6 x 8\n7 1/2 x 10 x 3', 'in').length // 2
 */
export function boardsWritten(text: string, units: Units): (BilledBoards | undefined)[] {
  return text
    .split(/[\n;]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => {
      const [first = '', second = '', third, ...more] = line.split(/\s*[x×*]\s*/i)
      const [width, length] = [readLength(first, units), lengthOf(second, units)]
      const count = third === undefined ? 1 : Number(third)
      const known = width !== undefined && length !== undefined && width > 0 && length > 0
      const whole = Number.isInteger(count) && count >= 1 && count <= COUNT_MOST
      return known && whole && more.length === 0 ? { width, length, count } : undefined
    })
}

const MONEY = 'must be a figure such as 12.50, 0 or more'

/** The bill as it can be checked; what cannot be read is left out of it and told. */
export function readBill({ lines, services, tax, total }: EnteredBill, units: Units): ReadBill {
  const errors = new Map<string, string>()
  const amount = (path: string, text = ''): number | undefined => {
    const read = enteredNumber(text)
    if (typeof read === 'number' && read >= 0) return read
    if (read !== undefined) errors.set(path, MONEY)
    return undefined
  }
  const bill: YardBill = {
    lines: lines.map((line, i) => lineOf(line, `lines[${i}]`, units, amount, errors)),
    services: services.flatMap(({ name = '', amount: text }, i) => {
      const read = amount(`services[${i}].amount`, text)
      return name.trim() === '' || read === undefined ? [] : { name: name.trim(), amount: read }
    }),
    tax: (amount('tax', tax?.replace('%', '')) ?? 0) / 100,
  }
  const written = amount('total', total)
  return { bill: { ...bill, ...(written !== undefined && { total: written }) }, errors }
}

function lineOf(
  line: EnteredLine,
  at: string,
  units: Units,
  amount: (path: string, text?: string) => number | undefined,
  errors: Map<string, string>,
): BillLine {
  const written = boardsWritten(line.boards ?? '', units)
  const boards = written.slice(0, LINES_MOST)
  const wrong = boards.indexOf(undefined)
  if (written.length > LINES_MOST)
    errors.set(
      `${at}.boards`,
      `must be at most ${LINES_MOST} lines; read ${written.length}: put the rest on another line of the bill`,
    )
  else if (wrong >= 0) {
    const example = units === 'in' ? '6 1/4 x 8 ft' : '150 x 2400'
    errors.set(
      `${at}.boards`,
      `line ${wrong + 1} cannot be read; write width x length, such as ${example}, and x 3 where there are three (${COUNT_MOST} at most)`,
    )
  }
  const grade = yardGrades.find((each) => each === line.grade) as YardGrade | undefined
  const [feet, price, sum] = (['feet', 'pricePerBoardFoot', 'amount'] as const).map((name) =>
    amount(`${at}.${name}`, line[name]),
  )
  return {
    species: line.species ?? '',
    nominal: line.nominal,
    // Judged by some of its boards alone, a line that is right would differ.
    boards: errors.has(`${at}.boards`) ? [] : boards.filter((board) => board !== undefined),
    ...(grade && { grade }),
    ...(line.surfaced && { surfaced: true }),
    ...(feet !== undefined && { feet }),
    ...(price !== undefined && { pricePerBoardFoot: price }),
    ...(sum !== undefined && { amount: sum }),
  }
}
