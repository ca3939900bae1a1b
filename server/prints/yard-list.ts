import { type BestLength, lengthWhy } from '../../shared/cutting/best-lengths.ts'
import { demands, gradeWords, serviceWords, sortWords } from '../../shared/cutting/list-words.ts'
import type { YardList } from '../../shared/cutting/yard-list.ts'
import type { Lumber, LumberAsk, LumberJob } from '../../shared/lumber.ts'
import { shareWords } from '../../shared/lumber-on-hand.ts'
import { badInput } from '../../shared/problem.ts'
import { lengthText } from '../../shared/units/length.ts'
import { loadText } from '../../shared/units/mass.ts'
import { minorOf, moneyText } from '../../shared/units/money.ts'
import { countText, sizeText } from './figures.ts'
import { heading, paragraph } from './flow.ts'
import { isRoll } from './paper.ts'
import { finishPrint, openPrint, type Print, type PrintOptions, plainText } from './print.ts'
import { table } from './table.ts'

/** Empty lines of the tally for each kind of lumber. */
const TALLY_LINES = 10

/**
 * What to ask the yard for jobs together, with lines to tally the boards on.
 * @throws Problem `bad-input` when a roll is asked for
 */
export function yardListPdf(
  lumber: Lumber,
  jobs: readonly LumberJob[],
  options: Omit<PrintOptions, 'subject'>,
): Promise<Buffer> {
  if (isRoll(options.paper))
    throw badInput([{ path: 'paper', message: 'must be letter or a4 for yard-list; read "roll"' }])
  const names = jobs.map(({ plan }) => plainText(plan.job.name))
  const words = [
    lumber.yard && `Prices and tally of ${plainText(lumber.yard)}`,
    `${countText(lumber.boardFeet, 'board foot', 'board feet')} in all`,
    lumber.mass === undefined ? undefined : `about ${loadText(lumber.mass, options.shop.units)} to carry`,
  ]
  const subject = { name: names.join(', '), words: words.filter(Boolean).join(' · ') }
  const print = openPrint('Yard list', jobs[0]!.plan, { ...options, subject })
  if (lumber.asks.length === 0)
    paragraph(print, 'Nothing to buy: the boards on hand yield every blank.', { size: 12 })
  for (const share of lumber.onHand)
    paragraph(print, `On hand for ${plainText(share.job.name)}: ${plainText(shareWords(share))}`)
  for (const ask of lumber.asks) asked(print, ask, lumber)
  together(print, lumber)
  messages(print, lumber)
  for (const ask of lumber.asks) tally(print, ask)
  return finishPrint(print)
}

const money = (amount: number, currency: string): string => moneyText(minorOf(amount, currency), currency)

function asked(print: Print, ask: LumberAsk, { currency }: Lumber): void {
  const { list, wood, jobs, cost } = ask
  const { style } = print.options
  heading(print, `${list.boardFeet.ask} board feet of ${wood}: ${sortWords(list)}`, 120)
  paragraph(print, `For ${jobs.map(({ name }) => plainText(name)).join(', ')}.`)
  table(
    print,
    [
      { head: 'Every board', share: 16 },
      { head: '', share: 84, face: 'bold' },
    ],
    [
      ...demands(list, style),
      ...(cost === undefined ? [] : [['Price', `about ${money(cost, currency)}`] as [string, string]]),
    ].map((cells) => ({ cells })),
  )
  paragraph(print, reckoning(list))
  lengths(print, list.bestLengths)
  grades(print, list, currency)
  instead(print, list)
  for (const note of list.notes) paragraph(print, `– ${note}`)
}

const percent = (share: number): string => `${Math.round(share * 100)} %`

function reckoning({ boardFeet, geometricYield, gradeYield, extra }: YardList): string {
  const feet = (amount: number) => amount.toFixed(1)
  return (
    `Board feet: ${feet(boardFeet.net)} in the blanks; ${feet(boardFeet.geometric)} as they lie on boards (${percent(geometricYield)}); ` +
    `${feet(boardFeet.grade)} at what the grade yields (${percent(gradeYield)}); ${percent(extra)} over for choice: ${boardFeet.ask}.`
  )
}

function lengths(print: Print, best: readonly BestLength[]): void {
  if (best.length === 0) return
  table(
    print,
    [
      { head: 'Length', share: 12, face: 'bold' },
      { head: 'Wasted', share: 12, align: 'right' },
      { head: 'Why', share: 76 },
    ],
    best.map((row) => ({
      cells: [`${row.lengthFt} ft`, percent(row.waste), lengthWhy(row, print.options.style)],
    })),
  )
}

function grades(print: Print, list: YardList, currency: string): void {
  if (list.softwood || list.grades.length === 0) return
  const priced = list.grades.some(({ cost }) => cost !== undefined)
  table(
    print,
    [
      { head: 'Grade', share: 20, face: 'bold' },
      { head: 'Board feet', share: 14, align: 'right' },
      ...(priced ? [{ head: 'About', share: 18, align: 'right' as const }] : []),
      { head: 'What it promises', share: 62 },
    ],
    list.grades.map(({ name, ask, cost, fit, promise }) => ({
      cells: [
        name,
        String(ask),
        ...(priced ? [cost === undefined ? 'no price' : money(cost, currency)] : []),
        gradeWords({ fit, promise }),
      ],
    })),
  )
}

function instead(print: Print, { squares, dressed }: YardList): void {
  const { style } = print.options
  for (const { side, length, count, boardFeet, grades: names } of squares)
    paragraph(
      print,
      `Instead: ${countText(count, 'square')} ${sizeText([side, side, length], style)} (${boardFeet.toFixed(1)} board feet), ` +
        `kiln dried, graded ${names.join(', ')}.`,
    )
  for (const { nominal, thickness, width, lengthFt, sticks, boardFeet } of dressed)
    paragraph(
      print,
      `By dressed sizes: ${countText(sticks, 'piece')} of ${nominal.join(' × ')} in, ${lengthFt} ft, ` +
        `measuring ${sizeText([thickness, width], style)} (${boardFeet.toFixed(1)} board feet by its name).`,
    )
}

function together(print: Print, { pooled, currency, notes, services }: Lumber): void {
  if (pooled.length > 0) heading(print, 'Bought together')
  for (const { wood, priced, apart, together: joint, saved } of pooled) {
    const text = (amount: number) => (priced ? money(amount, currency) : `${amount.toFixed(1)} board feet`)
    const boards = (n: number) => countText(n, 'board')
    paragraph(
      print,
      `${wood}: ${text(joint.cost)} in ${boards(joint.boards)} for all; ${text(apart.cost)} in ${boards(apart.boards)} job by job. ` +
        (saved > 0 ? `Buying together saves ${text(saved)}.` : 'Buying together saves nothing here.'),
    )
  }
  if (services.length > 0) {
    const words = services.map((each) => serviceWords(each, (amount) => money(amount, currency)))
    paragraph(print, `The yard also does: ${words.join('; ')}.`)
  }
  for (const note of notes) paragraph(print, note, { face: 'bold' })
}

function messages(print: Print, { messages: texts }: Lumber): void {
  if (texts.length === 0) return
  heading(print, 'To write or to read out')
  for (const text of texts) paragraph(print, text, { size: 11 })
}

/** Lines to write on: what is loaded, board by board. */
function tally(print: Print, { list, wood }: LumberAsk): void {
  heading(print, `Tally: ${wood}${list.nominal ? `, ${list.nominal}` : ''}`, 80)
  const heads = ['No.', 'Thick', 'Width', 'Length', 'Board feet', 'Knots, splits, sap']
  table(
    print,
    heads.map((head, i) => ({ head, share: i === 5 ? 40 : 12 })),
    Array.from({ length: TALLY_LINES }, (_, i) => ({
      cells: [String(i + 1), ...heads.slice(1).map(() => '')],
    })),
    { pad: 5 },
  )
  paragraph(
    print,
    `Least thickness ${lengthText(list.leastThickness, print.options.style)}: measure every board.`,
  )
}
