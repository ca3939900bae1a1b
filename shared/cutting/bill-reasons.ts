import { lengthText } from '../units/length.ts'
import { gradeRules } from './board-grade.ts'
import type { BillLine } from './yard-bill.ts'
import { billedFeet, soldAs, type YardBoard, type YardPrice, type YardTerms } from './yard-terms.ts'

/** Ways of counting that yards have, in words. */
const countings: { words: string; terms: Partial<YardTerms> }[] = [
  { words: 'that is the gross tally, as the boards were green', terms: { measure: 'gross' } },
  { words: 'that is the net tally', terms: { measure: 'net' } },
  { words: 'each board was rounded up to whole board feet', terms: { counts: 'up' } },
  { words: 'the odd inches of length were counted', terms: { counts: 'exact' } },
  { words: 'each board was counted by whole square feet', terms: { counts: 'tally' } },
]

const sum = (boards: readonly YardBoard[], terms: YardTerms): number =>
  boards.reduce((total, board) => total + billedFeet(board, terms), 0)

/** What explains the feet a line was billed at, where anything does. */
export function feetReason(
  billed: number,
  boards: readonly YardBoard[],
  terms: YardTerms,
  same: (billed: number, ours: number) => boolean,
): string | undefined {
  const counting = countings.find((each) => same(billed, sum(boards, { ...terms, ...each.terms })))
  if (counting) return counting.words
  const gross = countings
    .filter((each) => each.terms.counts)
    .find((each) => same(billed, sum(boards, { ...terms, ...each.terms, measure: 'gross' })))
  if (gross) return `${gross.words}, and by the gross tally`
  const more = billed - sum(boards, terms)
  const one = boards.find((board) => same(Math.abs(more), billedFeet(board, terms)))
  if (one) {
    const size = `${lengthText(one.width, 'fraction')} × ${lengthText(one.length, 'fraction')}`
    return `just one board of ${size} too ${more > 0 ? 'many' : 'few'}; count them`
  }
  return thinner(billed, boards, terms, same)
}

/** Boards billed as thicker than they measure. */
function thinner(
  billed: number,
  boards: readonly YardBoard[],
  terms: YardTerms,
  same: (billed: number, ours: number) => boolean,
): string | undefined {
  const nominals = ['4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4']
  const nominal = nominals.find((each) =>
    same(
      billed,
      sum(
        boards.map((board) => ({ ...board, nominal: each })),
        terms,
      ),
    ),
  )
  return nominal && `counted as ${nominal}`
}

const sortWords = ({ species, nominal, grade, surfaced }: YardPrice): string =>
  [
    nominal,
    species === '*' ? undefined : species.replaceAll('-', ' '),
    grade === '*' ? undefined : gradeRules[grade].name,
    surfaced ? 'surfaced' : undefined,
  ]
    .filter((word) => word !== undefined)
    .join(' ')

/** The row of the list whose price was billed instead, nearest to what was bought. */
export function priceReason(
  billed: number,
  line: Pick<BillLine, 'species' | 'nominal' | 'grade' | 'surfaced'>,
  { prices }: Pick<YardTerms, 'prices'>,
  same: (a: number, b: number) => boolean,
): string | undefined {
  const alike = (row: YardPrice) =>
    Number(row.species === line.species) * 4 +
    Number(row.nominal === line.nominal) * 2 +
    Number(!!row.surfaced === !!line.surfaced)
  const [row] = prices
    .filter((each) => same(each.pricePerBoardFoot, billed))
    .sort((a, b) => alike(b) - alike(a))
  return row && `that is the price of ${sortWords(row)}`
}

/** What is to be said of boards that do not measure what they are sold as; nothing where they do or were not measured. */
export function thinReason({ boards, nominal, surfaced }: BillLine): string | undefined {
  const sold = boards.flatMap(({ thickness }) =>
    thickness === undefined ? [] : { thickness, as: soldAs(thickness, surfaced) },
  )
  const thin = sold.find((each) => quarters(each.as) < quarters(nominal))
  return (
    thin &&
    `A board measures ${lengthText(thin.thickness, 'fraction')}: that makes ${thin.as}, not ${nominal}.`
  )
}

const quarters = (nominal: string): number => Number(nominal.split('/')[0])
