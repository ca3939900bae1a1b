import type { CutBoard, CutPlan, PlacedBlank } from '../../shared/cutting/board.ts'
import { boardsText, type SawSetting, sawOrder } from '../../shared/cutting/saw-order.ts'
import type { Plan } from '../../shared/plan.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { minorOf, moneyText } from '../../shared/units/money.ts'
import {
  besidePt,
  drawBoard,
  NUMBERS_PT,
  numberCuts,
  numbersOver,
  placedOn,
  scaleFor,
} from './board-drawing.ts'
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
import { table } from './table.ts'

/** Boards to scale, blanks, offcuts, board feet, cost with its bound, and the order at the saw. */
export function cutListPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Cut list', plan, options, { layout: 'landscape' })
  const letters = blankLetters(plan)
  shortfalls(print)
  blankTable(print, letters)
  totals(print)
  sawTable(print)
  boardDrawings(print, letters)
  yardWords(print)
  return finishPrint(print)
}

/** A letter for each kind of blank, in the order's own order. */
export function blankLetters({ cutOrder }: Plan): Map<string, string> {
  return new Map(
    cutOrder.blanks.map(({ key }, i) => [key, i < 26 ? String.fromCharCode(65 + i) : `B${i + 1}`]),
  )
}

function shortfalls(print: Print): void {
  for (const { key, count } of print.plan.cut.unmet) {
    caution(
      print,
      `${countText(count, 'blank')} ${letterAndKey(key, blankLetters(print.plan))} cannot be cut from these boards: buy more wood before starting.`,
    )
  }
  for (const text of print.plan.blank.cautions) caution(print, text)
}

const letterAndKey = (key: string, letters: Map<string, string>): string =>
  `${letters.get(key) ?? ''} (${key})`

function blankTable(print: Print, letters: Map<string, string>): void {
  const { plan, options } = print
  const { style } = options
  const cut = placedCounts(plan.cut.boards)
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
        `${letters.get(key)}  ${key}`,
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

function placedCounts(boards: CutBoard[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const { key } of boards.flatMap(placedOn)) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}

function totals(print: Print): void {
  const { cut, cutOrder } = print.plan
  heading(print, 'Lumber')
  table(
    print,
    [
      { head: 'Boards', share: 14 },
      { head: 'Bought, exact', share: 20, align: 'right', face: 'bold' },
      { head: 'Bought, tallied', share: 20, align: 'right' },
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
          boardFeetText(cut.boardFeetInBlanks),
          `${(cut.yield * 100).toFixed(1)} %`,
          amountText(print, cut.cost),
        ],
      },
    ],
  )
  paragraph(print, boundSentence(print), { face: 'bold' })
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

function sawTable(print: Print): void {
  const { style } = print.options
  const settings = sawOrder(print.plan.cut)
  if (settings.length === 0) return
  heading(print, 'At the saw')
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
        boardsText(setting.boards),
      ],
    })),
  )
  caution(
    print,
    'Guard and riving knife on, push stick at hand, hearing and dust protection. Rip slightly wide where a strip springs, and let it rest before planing. The saw maker’s instructions come first.',
  )
}

function settingWords({ saw, setting, side }: SawSetting, style: LengthStyle): string {
  if (saw === 'rip') return `rip, fence at ${lengthText(setting, style)}`
  return `crosscut, stop at ${lengthText(setting, style)}${side === undefined ? '' : `, strips ${lengthText(side, style)} wide`}`
}

function boardDrawings(print: Print, letters: Map<string, string>): void {
  const { plan, box } = print
  const longest = Math.max(0, ...plan.cut.boards.map(({ length }) => length))
  const width = box.right - box.left
  const roughly = scaleFor(longest, width - NUMBERS_PT)
  const scale = scaleFor(longest, width - besidePt(plan.cut.boards, roughly))
  const layouts = alike(plan.cut.boards)
  if (layouts.length === 0) return
  heading(
    print,
    `Boards, drawn 1:${scale}; white: blank, dashed: offcut, grey: waste, crossed out: defect`,
    120,
  )
  for (const boards of layouts) boardSheet(print, boards, scale, letters)
}

/** Boards that are cut the same way, drawn once. */
function alike(boards: CutBoard[]): CutBoard[][] {
  const groups = new Map<string, CutBoard[]>()
  for (const board of boards) {
    const layout = JSON.stringify({ ...board, copy: 0 })
    groups.set(layout, [...(groups.get(layout) ?? []), board])
  }
  return [...groups.values()]
}

function boardSheet(print: Print, boards: CutBoard[], scale: number, letters: Map<string, string>): void {
  const { doc, plan, options, box } = print
  const { style } = options
  const board = boards[0]!
  const words = cutWords(board, letters, style)
  const over = numbersOver(board, scale)
  const below = board.sections ? NUMBERS_PT : over + 4
  ensure(print, pt(board.width / scale) + over + below + 26 + words.length * 13)
  boardHeading(print, boards)
  const defects = plan.cutOrder.boards.find(({ key }) => key === board.key)?.defects ?? []
  const place = { scale, x: box.left, y: print.y + over }
  const height = drawBoard(doc, board, place, { letters, defects, style })
  numberCuts(doc, board, place, (blanks) =>
    counted(blanks.map(({ key }) => letters.get(key) ?? key)).join(', '),
  )
  print.y = place.y + height + below
  for (const text of words) paragraph(print, text, { after: 1 })
  print.y += 10
}

function boardHeading(print: Print, boards: CutBoard[]): void {
  const { doc, options, box } = print
  const board = boards[0]!
  const price = board.cost === undefined ? '' : `, ${amountText(print, board.cost)}`
  const right = `${boardFeetText(board.boardFeet)}${price}${boards.length > 1 ? ' each' : ''}`
  ink(doc, 'plain', BENCH_PT)
  const rightWidth = doc.widthOfString(right)
  line(doc, right, box.right - rightWidth, print.y)
  const name = boards.length > 1 ? `${boards.length} boards ${board.key}` : `Board ${board.key}`
  const size = sizeText([board.thickness, board.width, board.length], options.style)
  ink(doc, 'bold', 11)
  const left = `${plainText(name)}: ${size}, ${board.process.replace('-', ' ')}`
  line(doc, fitted(doc, left, box.right - box.left - rightWidth - 12), box.left, print.y)
  print.y += 16
}

/** What each strip or section holds, from the upper edge or the left end on. */
function cutWords(board: CutBoard, letters: Map<string, string>, style: LengthStyle): string[] {
  const strips = (board.strips ?? []).map(
    ({ side, blanks }, i) =>
      `Strip ${i + 1}, ${lengthText(side, style)} wide: ${runs(blanks, letters, style, 'length')}`,
  )
  const sections = (board.sections ?? []).map(
    ({ from, to, blanks }, i) =>
      `Section ${i + 1}, ${lengthText(to - from, style)} long: ${runs(blanks, letters, style, 'side')}`,
  )
  const offcuts = board.offcuts.map(({ from, to, across }) =>
    sizeText([across[1] - across[0], to - from], style),
  )
  return [
    ...repeats([...strips, ...sections]),
    ...(offcuts.length > 0 ? [`Offcuts: ${counted(offcuts, ' of ').join(', ')}`] : []),
  ]
}

/** `4 × A 17-1/2 in, 1 × B 12 in` in the order of cutting. */
function runs(
  blanks: PlacedBlank[],
  letters: Map<string, string>,
  style: LengthStyle,
  by: 'length' | 'side',
): string {
  const words = blanks.map(({ key, from, to, across }) => {
    const size = by === 'length' ? to - from : across[1] - across[0]
    return `${letters.get(key) ?? key} ${lengthText(size, style)}`
  })
  return counted(words).join(', ') || 'nothing'
}

/** Neighbours that are the same, with their number. */
function counted(words: string[], of = ' × '): string[] {
  const found: { word: string; count: number }[] = []
  for (const word of words) {
    const last = found.at(-1)
    if (last?.word === word) last.count++
    else found.push({ word, count: 1 })
  }
  return found.map(({ word, count }) => (count === 1 && of !== ' × ' ? word : `${count}${of}${word}`))
}

/** `Strip 1, …`, `Strip 2, …` with the same contents as one line: `Strips 1 to 2, …`. */
function repeats(lines: string[]): string[] {
  const found: { what: string; first: number; last: number; rest: string }[] = []
  lines.forEach((text) => {
    const [, what, number, rest] = /^(\w+) (\d+)(.*)$/s.exec(text)!
    const last = found.at(-1)
    if (last && last.what === what && last.rest === rest) last.last = Number(number)
    else found.push({ what: what!, first: Number(number), last: Number(number), rest: rest! })
  })
  return found.map(({ what, first, last, rest }) =>
    first === last ? `${what} ${first}${rest}` : `${what}s ${first} to ${last}${rest}`,
  )
}

/** What to ask the yard for, with the yields it rests on. */
function yardWords(print: Print): void {
  const { yard } = print.plan
  const { style } = print.options
  const percent = (share: number) => `${Math.round(share * 100)} %`
  heading(print, 'Asking the yard')
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
