import type { CutPlan } from '../../shared/cutting/board.ts'
import { riftWords } from '../../shared/cutting/rift-places.ts'
import { type RingBoard, ringText } from '../../shared/cutting/rings.ts'
import { sameBoardWords } from '../../shared/cutting/same-board-words.ts'
import { boardsText, type SawSetting, sawOrder, settingsOf } from '../../shared/cutting/saw-order.ts'
import {
  blanksOf,
  type CuttingSheet,
  piecesText,
  type SheetBlank,
  type SheetBoard,
  setBoardText,
  sparesText,
} from '../../shared/cutting/sheet.ts'
import { type Plan, partsOf, sheetOf, togetherOf } from '../../shared/plan.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { minorOf, moneyText } from '../../shared/units/money.ts'
import { besidePt, drawBoard, NUMBERS_PT, numberCuts, numbersOver, scaleFor } from './board-drawing.ts'
import { boardFeetText, countText, sizeText } from './figures.ts'
import { caution, heading, paragraph } from './flow.ts'
import {
  BENCH_PT,
  ensure,
  finishPrint,
  fitted,
  ink,
  line,
  openPrint,
  type Print,
  type PrintOptions,
  plainText,
  pt,
} from './print.ts'
import { setDrawings } from './set-drawing.ts'
import { table } from './table.ts'

/** Boards to scale, blanks, offcuts, board feet, cost with its bound, and the order at the saw. */
export function cutListPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Cut list', plan, options, { layout: 'landscape' })
  const sheet = sheetOf(plan)
  shortfalls(print, sheet)
  blankTable(print, sheet)
  totals(print, sheet)
  sawTable(print, sheet)
  boardDrawings(print, sheet)
  setDrawings(print, sheet)
  yardWords(print)
  return finishPrint(print)
}

function shortfalls(print: Print, { uncut }: CuttingSheet): void {
  const { cut, blank } = print.plan
  for (const { key, count } of cut.unmet)
    caution(
      print,
      `${countText(count, 'blank')} (${key}) cannot be cut from these boards: buy more wood before starting.`,
    )
  if (uncut.length > 0)
    caution(print, `No wood is cut for ${uncut.length === 1 ? 'piece' : 'pieces'} ${numbersText(uncut)}.`)
  for (const text of blank.cautions) caution(print, text)
}

const numbersText = (numbers: readonly number[]): string =>
  piecesText(numbers.map((number) => ({ label: String(number) })))

function blankTable(print: Print, { boards }: CuttingSheet): void {
  const { plan, options } = print
  const { style } = options
  const cut = placedCounts(boards)
  heading(print, 'Blanks')
  table(
    print,
    [
      { head: 'Blank', share: 24 },
      { head: 'Wanted', share: 12, align: 'right' },
      { head: 'Cut', share: 12, align: 'right' },
      { head: 'Width × length as sawn', share: 30, align: 'right', face: 'bold' },
      { head: 'Board at least', share: 18, align: 'right' },
    ],
    plan.cutOrder.blanks.map(({ key, side, length, count, thickness }) => ({
      cells: [
        key,
        countText(count, 'blank'),
        countText(cut.get(key) ?? 0, 'blank'),
        sizeText([side, length], style),
        `${lengthText(thickness ?? side, style)} thick`,
      ],
    })),
  )
  const { blank } = plan
  const layers =
    blank.layers > 1
      ? `, glued up of ${blank.layers} layers, each ${lengthText(blank.layerThickness, style)} thick`
      : ''
  const practice =
    blank.practice > 0 ? `; ${countText(blank.practice, 'blank')} of cheap wood to practise on` : ''
  paragraph(
    print,
    `On the lathe each blank is ${lengthText(blank.side, style)} square and ${lengthText(blank.length, style)} long${layers}, ` +
      `${blank.nominal ? `from ${blank.nominal} stock` : 'from no stock of the shop'}. ` +
      `${countText(blank.need, 'blank')} must come out good, ${countText(blank.spares, 'spare')} beside${practice}.`,
  )
}

function placedCounts(boards: readonly SheetBoard[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const { key } of boards.flatMap(blanksOf)) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}

function totals(print: Print, sheet: CuttingSheet): void {
  const { cut, cutOrder, blank, job } = print.plan
  heading(print, 'Lumber')
  table(
    print,
    [
      { head: 'Boards', share: 14 },
      { head: 'Bought, exact', share: 20, align: 'right', face: 'bold' },
      { head: 'Bought, tallied', share: 20, align: 'right' },
      ...(cut.boardFeetOnHand ? [{ head: 'From the rack', share: 20, align: 'right' as const }] : []),
      { head: 'In the blanks', share: 20, align: 'right' },
      { head: 'Yield', share: 10, align: 'right' },
      { head: isPriced(cut) ? 'Cost' : 'To compare by', share: 20, align: 'right', face: 'bold' },
    ],
    [
      {
        cells: [
          countText(cut.boards.length, 'board'),
          boardFeetText(cut.boardFeetBought),
          boardFeetText(cut.boardFeetTallied),
          ...(cut.boardFeetOnHand ? [boardFeetText(cut.boardFeetOnHand)] : []),
          boardFeetText(cut.boardFeetInBlanks),
          `${(cut.yield * 100).toFixed(1)} %`,
          amountText(print, cut.cost),
        ],
      },
    ],
  )
  paragraph(print, boundSentence(print), { face: 'bold' })
  if (job.match || blank.layers > 1) {
    const words = sameBoardWords(cutOrder, cut, togetherOf(print.plan), (cost) => amountText(print, cost))
    const text = [setBoardText(sheet, job.quantity), ...words].filter(Boolean).join(' ')
    if (text !== '') paragraph(print, text)
  }
  paragraph(
    print,
    `Kerf ${lengthText(cutOrder.kerf, print.options.style)} at every cut; trimmed ${lengthText(cutOrder.endTrim, print.options.style)} ` +
      `at each end and ${lengthText(cutOrder.edgeTrim, print.options.style)} at each edge. Offcuts of ` +
      `${lengthText(cutOrder.minOffcut, print.options.style)} and longer are worth keeping.`,
  )
}

const isPriced = ({ boards }: CutPlan): boolean => boards.some(({ cost }) => cost !== undefined)

/** Costs in money where the boards carry prices, in board feet where they do not. */
function amountText(print: Print, amount: number): string {
  const { cut, cutOrder } = print.plan
  return isPriced(cut)
    ? moneyText(minorOf(amount, cutOrder.currency), cutOrder.currency)
    : boardFeetText(amount)
}

function boundSentence(print: Print): string {
  const { cut } = print.plan
  if (cut.unmet.length > 0) return `What can be cut of it costs ${amountText(print, cut.cost)}.`
  const [less, takes] = isPriced(cut) ? ['cost less', 'costs'] : ['use less', 'uses']
  const bound = `No plan from this list can ${less} than ${amountText(print, cut.lowerBound)}; this one ${takes} ${amountText(print, cut.cost)}`
  return cut.proven ? `${bound}: none is better.` : `${bound}. A better one may exist.`
}

function sawTable(print: Print, sheet: CuttingSheet): void {
  const { style } = print.options
  const settings = sawOrder(sheet)
  if (settings.length === 0) return
  const times = settingsOf(settings)
  heading(print, `At the saw: ${countText(times, 'setting')} of fence and stop`)
  table(
    print,
    [
      { head: 'Step', share: 7 },
      { head: 'Setting', share: 44, face: 'bold' },
      { head: 'Count', share: 14 },
      { head: 'Boards', share: 42 },
    ],
    settings.map((setting, i) => ({
      cells: [
        String(i + 1),
        settingWords(setting, style),
        countText(setting.count, setting.what.slice(0, -1)),
        boardsWords(setting.boards),
      ],
    })),
  )
  caution(
    print,
    'Guard and riving knife on, push stick at hand, hearing and dust protection. Rip slightly wide where a strip springs, and let it rest before planing. The saw maker’s instructions come first.',
  )
}

/** Names beyond so many are looked up at the drawings. */
const NAMES_MAX = 3

/** `1, 2 (2 of rack 3)`: boards by their numbers, and by their names where they are few. */
function boardsWords(boards: readonly SheetBoard[]): string {
  const numbers = numbersText(boards.map(({ number }) => number))
  const names = new Set(boards.map(({ key }) => key)).size
  return names > NAMES_MAX ? numbers : `${numbers} (${boardsText(boards)})`
}

function settingWords({ saw, setting, side }: SawSetting<SheetBoard>, style: LengthStyle): string {
  if (saw === 'rip') return `rip, fence at ${lengthText(setting, style)}`
  return `crosscut, stop at ${lengthText(setting, style)}${side === undefined ? '' : `, strips ${lengthText(side, style)} wide`}`
}

/** More boards than this are drawn once for all that are cut alike. */
const DRAWN_SINGLY = 120

function boardDrawings(print: Print, { boards }: CuttingSheet): void {
  const { box, plan } = print
  const longest = Math.max(0, ...boards.map(({ length }) => length))
  const width = box.right - box.left
  const roughly = scaleFor(longest, width - NUMBERS_PT)
  const scale = scaleFor(longest, width - besidePt(boards, roughly))
  if (boards.length === 0) return
  heading(
    print,
    `Boards, drawn 1:${scale}, butt end left; white: blank, dashed: offcut, grey: waste, crossed out: defect`,
    120,
  )
  paragraph(
    print,
    [
      'The number on each blank is the piece it becomes; layers of one glue-up say a, b, c.',
      'Mark it on the butt end before the blank leaves its strip: the foot, unless the set layout says otherwise.',
      sparesText(partsOf(plan), plan.job.quantity),
    ]
      .filter(Boolean)
      .join(' '),
  )
  if (plan.job.grain === 'rift') paragraph(print, riftWords)
  const groups = boards.length > DRAWN_SINGLY ? alike(boards) : boards.map((board) => [board])
  for (const group of groups) boardSheet(print, group, scale)
}

/** Boards that are cut the same way. */
function alike(boards: readonly SheetBoard[]): SheetBoard[][] {
  const groups = new Map<string, SheetBoard[]>()
  for (const board of boards) {
    const layout = JSON.stringify({ ...board, copy: 0, number: 0 }, (name, value) =>
      ['label', 'pieces', 'layer'].includes(name) ? undefined : value,
    )
    groups.set(layout, [...(groups.get(layout) ?? []), board])
  }
  return [...groups.values()]
}

function boardSheet(print: Print, boards: SheetBoard[], scale: number): void {
  const { doc, plan, options, box } = print
  const { style } = options
  const board = boards[0]!
  const ordered = plan.cutOrder.boards.find(({ key }) => key === board.key)
  const words = cutWords(board, ordered ?? board, style)
  const over = numbersOver(board, scale)
  const below = board.sections ? NUMBERS_PT : over + 4
  ensure(print, pt(board.width / scale) + over + below + 26 + words.length * 13)
  boardHeading(print, boards)
  const place = { scale, x: box.left, y: print.y + over }
  const height = drawBoard(doc, board, place, { defects: ordered?.defects ?? [], style })
  numberCuts(doc, board, place)
  print.y = place.y + height + below
  for (const text of words) paragraph(print, text, { after: 1 })
  if (boards.length > 1) paragraph(print, othersText(boards), { after: 1 })
  print.y += 10
}

/** The pieces of boards that are cut like the one drawn. */
const othersText = ([, ...others]: SheetBoard[]): string =>
  `Drawn are the pieces of the first; in the same order, ${others
    .map((board) => `board ${board.number}: ${piecesText(blanksOf(board))}`)
    .join('; ')}.`

function boardHeading(print: Print, boards: SheetBoard[]): void {
  const { doc, options, box } = print
  const board = boards[0]!
  const price = board.cost === undefined || board.onHand ? '' : `, ${amountText(print, board.cost)}`
  const right = `${boardFeetText(board.boardFeet)}${price}${boards.length > 1 ? ' each' : ''}`
  ink(doc, 'plain', BENCH_PT)
  const rightWidth = doc.widthOfString(right)
  line(doc, right, box.right - rightWidth, print.y)
  const numbers = `${boards.length > 1 ? 'Boards' : 'Board'} ${numbersText(boards.map(({ number }) => number))}`
  const name = `${numbers}, ${board.key}${board.onHand ? ', on hand' : ''}`
  const size = sizeText([board.thickness, board.width, board.length], options.style)
  ink(doc, 'bold', 11)
  const left = `${plainText(name)}: ${size}, ${board.process.replace('-', ' ')}`
  line(doc, fitted(doc, left, box.right - box.left - rightWidth - 12), box.left, print.y)
  print.y += 16
}

/** What each strip or section holds, from the upper edge or the left end on. */
function cutWords(board: SheetBoard, known: RingBoard, style: LengthStyle): string[] {
  const strips = (board.strips ?? []).map(
    ({ side, across, blanks }, i) =>
      `Strip ${i + 1}, ${lengthText(side, style)} wide${commaBefore(ringText(known, [across]))}: ${runs(blanks, style, 'length')}`,
  )
  const sections = (board.sections ?? []).map(
    ({ from, to, blanks }, i) =>
      `Section ${i + 1}, ${lengthText(to - from, style)} long${commaBefore(
        ringText(
          known,
          blanks.map(({ across }) => across),
        ),
      )}: ${runs(blanks, style, 'side')}`,
  )
  const offcuts = board.offcuts.map(({ from, to, across }) =>
    sizeText([across[1] - across[0], to - from], style),
  )
  return [...strips, ...sections, ...(offcuts.length > 0 ? [`Offcuts: ${counted(offcuts).join(', ')}`] : [])]
}

const commaBefore = (text: string | undefined): string => (text === undefined ? '' : `, ${text}`)

/** `1 to 4 of 17-1/2 in, 5 of 12 in` in the order of cutting. */
function runs(blanks: readonly SheetBlank[], style: LengthStyle, by: 'length' | 'side'): string {
  const sized: { size: string; blanks: SheetBlank[] }[] = []
  for (const blank of blanks) {
    const { from, to, across } = blank
    const size = lengthText(by === 'length' ? to - from : across[1] - across[0], style)
    const last = sized.at(-1)
    if (last?.size === size) last.blanks.push(blank)
    else sized.push({ size, blanks: [blank] })
  }
  return sized.map(({ size, blanks }) => `${piecesText(blanks)} of ${size}`).join(', ')
}

/** Neighbours that are the same, with their number. */
function counted(words: string[]): string[] {
  const found: { word: string; count: number }[] = []
  for (const word of words) {
    const last = found.at(-1)
    if (last?.word === word) last.count++
    else found.push({ word, count: 1 })
  }
  return found.map(({ word, count }) => (count === 1 ? word : `${count} of ${word}`))
}

/** What to ask the yard for, with the yields it rests on. */
function yardWords(print: Print): void {
  const { yard } = print.plan
  const { style } = print.options
  const percent = (share: number) => `${Math.round(share * 100)} %`
  heading(print, 'Asking the yard')
  if (yard.boardFeet.net === 0) {
    paragraph(print, 'Nothing is to be bought: the boards on hand yield every blank.')
    return
  }
  if (yard.geometricYield > 0) {
    paragraph(
      print,
      `Ask for ${yard.boardFeet.ask} board feet${yard.nominal ? ` of ${yard.nominal}` : ''}, ${yard.gradeName}, at least ` +
        `${sizeText([yard.leastThickness, yard.leastWidth], style)} (thick × wide): ${boardFeetText(yard.boardFeet.net)} in the blanks, ` +
        `over ${percent(yard.geometricYield)} for how they lie on common boards and ${percent(yard.gradeYield)} for the grade, ` +
        `and ${percent(yard.extra)} extra. ${lengthsText(yard.bestLengths)}`.trimEnd(),
    )
  }
  for (const note of yard.notes) paragraph(print, note)
}

function lengthsText(lengths: Plan['yard']['bestLengths']): string {
  const best = lengths
    .slice(0, 3)
    .map(({ lengthFt, waste }) => `${lengthFt} ft (${Math.round(waste * 100)} % of the length wasted)`)
  return best.length > 0 ? `Lengths that waste least: ${best.join(', ')}.` : ''
}
