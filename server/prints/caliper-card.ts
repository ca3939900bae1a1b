import type { Plan } from '../../shared/plan.ts'
import type { CheckStation } from '../../shared/profile/check-stations.ts'
import {
  type CaliperRow,
  type CaliperSheet,
  caliperSheets,
  resetWords,
  type SizingTurn,
} from '../../shared/turning/caliper-sheet.ts'
import { sumText } from '../../shared/turning/setting-words.ts'
import { type LengthStyle, lengthText, limitText, nm } from '../../shared/units/length.ts'
import { countText, unitOf } from './figures.ts'
import { caution, heading, paragraph } from './flow.ts'
import {
  BENCH_PT,
  ensure,
  finishPrint,
  fitted,
  ink,
  line,
  newPage,
  openPrint,
  type Print,
  type PrintOptions,
  pt,
} from './print.ts'
import { scaleCheck } from './scale-check.ts'
import { stationWords } from './station-words.ts'
import { table } from './table.ts'

/** Caliper settings in working order in large type, drawn true size, and the limits of the checks. */
export function caliperCardPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Caliper card', plan, options, { foot: scaleCheck })
  const sheets = caliperSheets(plan.calipers, plan.blank.count)
  caution(
    print,
    'Stop the lathe before a caliper touches the work, unless it is a spring caliper with rounded tips.',
  )
  introduction(print, sheets)
  sheets.forEach((sheet, i) => {
    if (sheets.length > 1) heading(print, `Mounting ${i + 1} with sizing cuts, all blanks through it`)
    drawSheet(print, sheet)
  })
  checkTable(print)
  diameterStrip(print, sheets)
  return finishPrint(print)
}

function drawSheet(print: Print, sheet: CaliperSheet): void {
  const beside = besideFigures(print, sheet)
  roundHeads(print, sheet)
  for (const row of sheet.rows) settingRow(print, row, beside)
}

function introduction(print: Print, sheets: CaliperSheet[]): void {
  const { calipers, blank } = print.plan
  const rows = sheets.flatMap((sheet) => sheet.rows)
  if (rows.length === 0) {
    paragraph(print, 'No place of this profile needs a caliper.')
    return
  }
  const sizes = countText(new Set(rows.map(({ diameter }) => nm(diameter))).size, 'size')
  const letters = rows[0]!.turns[0]!.caliper
    ? ' Numbers are the order of the sizing cuts on a piece, letters the calipers; white on black: set it anew before this cut.'
    : ''
  paragraph(
    print,
    `${sizes} with ${countText(calipers.count, 'caliper')}: ${resetWords(calipers, blank.count)}.${letters} ` +
      'The figures are for the sizing cut: what later cuts and sanding take off is in them.',
    { after: 8 },
  )
}

const figureText = ({ options }: Print, { diameter }: CaliperRow): string =>
  `⌀ ${lengthText(diameter, options.style)}`

const FIGURE_PT = 30
/** Room for the number of a cut and its caliper, points; less where there are many rounds. */
const TURN_PT = 58
const TURNS_PT = 150

const turnWidth = ({ rounds }: CaliperSheet): number => Math.min(TURN_PT, TURNS_PT / rounds.length)

/** Where figures begin, and where names do so that they clear the widest figure. */
function besideFigures(print: Print, sheet: CaliperSheet): { figures: number; names: number; turn: number } {
  ink(print.doc, 'bold', FIGURE_PT)
  const widest = Math.max(0, ...sheet.rows.map((row) => print.doc.widthOfString(figureText(print, row))))
  const turn = turnWidth(sheet)
  const figures = print.box.left + sheet.rounds.length * turn + 6
  return { figures, names: figures + widest + 14, turn }
}

/** Above each round which pieces go by it. */
function roundHeads(print: Print, sheet: CaliperSheet): void {
  const { doc, box } = print
  const turn = turnWidth(sheet)
  ink(doc, 'plain', BENCH_PT)
  const width = turn - 4
  const height = Math.max(...sheet.rounds.map((pieces) => doc.heightOfString(pieces, { width })))
  ensure(print, height + 44)
  ink(doc, 'plain', BENCH_PT)
  sheet.rounds.forEach((pieces, i) => {
    doc.text(pieces, box.left + i * turn, print.y, { width })
  })
  print.y += height + 4
  rule(print)
}

const rule = ({ doc, box, y }: Print): void =>
  void doc.lineWidth(0.5).moveTo(box.left, y).lineTo(box.right, y).stroke('#000')

/** Number of a cut and the letter of its caliper, on black where it has to be set. */
function drawTurn({ doc }: Print, { place, caliper, reset }: SizingTurn, x: number, y: number): void {
  ink(doc, 'bold', 15)
  line(doc, String(place), x, y)
  if (!caliper) return
  const at = x + doc.widthOfString(String(place)) + 11
  if (reset) doc.circle(at, y + 9, 9).fill('#000')
  ink(doc, 'plain', 13, reset ? '#fff' : '#000')
  line(doc, caliper, at - doc.widthOfString(caliper) / 2, y + 1)
}

function settingRow(print: Print, row: CaliperRow, beside: ReturnType<typeof besideFigures>): void {
  const { doc, box, plan, options } = print
  const stations = [...new Set(row.stations)].map((key) => stationWords(plan, key, options.style)).join('; ')
  const sums = row.sums.map((sum) => sumText(sum, options.style)).join('; or ')
  const width = box.right - beside.names
  ink(doc, 'plain', 13)
  const names = doc.heightOfString(stations || ' ', { width })
  ink(doc, 'plain', BENCH_PT)
  const below = sums ? doc.heightOfString(sums, { width }) : 0
  const height = Math.max(40, names + below + 8)
  ensure(print, height)
  row.turns.forEach((turn, i) => {
    drawTurn(print, turn, box.left + i * beside.turn, print.y + 11)
  })
  ink(doc, 'bold', FIGURE_PT)
  line(doc, figureText(print, row), beside.figures, print.y + 2)
  const top = print.y + (height - names - below) / 2
  ink(doc, 'plain', 13)
  doc.text(stations, beside.names, top, { width })
  ink(doc, 'plain', BENCH_PT)
  if (sums) doc.text(sums, beside.names, top + names, { width })
  print.y += height
  rule(print)
}

/** Finished sizes with their limits, for the checks. */
function checkTable(print: Print): void {
  const { checkStations } = print.plan
  const { style } = print.options
  if (checkStations.length === 0) return
  print.y += 6
  heading(print, 'Checks, finished size')
  table(
    print,
    [
      { head: 'From the foot', share: 18, align: 'right' },
      { head: 'Target', share: 20, align: 'right', face: 'bold' },
      { head: 'Least to most', share: 30, align: 'right' },
      { head: 'Place', share: 32 },
    ],
    checkStations.map((check) => ({
      cells: [
        lengthText(check.at, style),
        `${check.kind === 'side' ? '□' : '⌀'} ${lengthText(check.target, style)}`,
        limitsText(check, style),
        [check.name ?? check.key, check.fixed ? 'fixed size' : ''].filter(Boolean).join(', '),
      ],
      cautions: check.caution ? [check.caution] : [],
    })),
  )
}

/** Least and most as true as a caliper tells: a limit rounded to the nearest mark would pass what is out. */
function limitsText({ target, plus, minus }: CheckStation, style: LengthStyle): string {
  const [least, most] = [limitText(target - minus, style), limitText(target + plus, style)]
  return `${least.slice(0, -unitOf(style).length - 1)} – ${most}`
}

const ROW_MM = 11

/** Each setting as a bar of its own length, to set a caliper on or to prove it. */
function diameterStrip(print: Print, sheets: CaliperSheet[]): void {
  const rows = sheets.flatMap((sheet) => sheet.rows)
  const distinct = rows.filter(
    ({ diameter }, i) => rows.findIndex((one) => nm(one.diameter) === nm(diameter)) === i,
  )
  if (distinct.length === 0) return
  const needed = 60 + pt(ROW_MM) * Math.min(distinct.length, 18)
  if (print.y + needed > print.box.bottom) newPage(print)
  heading(print, 'Diameters at true size, in working order')
  paragraph(print, 'Prove a caliper on its bar when it is set, and again after a knock.', { after: 6 })
  for (const { diameter, turns } of distinct)
    diameterBar(print, diameter, sheets.length > 1 ? undefined : turns[0]!.place)
}

function diameterBar(print: Print, diameter: number, number?: number): void {
  const { doc, box, options } = print
  ensure(print, pt(ROW_MM))
  const width = box.right - box.left
  // A bar wider than the paper is drawn from its middle.
  const half = pt(diameter) > width
  const drawn = half ? diameter / 2 : diameter
  const size = `⌀ ${lengthText(diameter, options.style)}`
  const words = number === undefined ? size : `${number}: ${size}`
  if (pt(drawn) > width) {
    paragraph(print, `${words} is wider than this paper: set it with a rule.`)
    return
  }
  const y = print.y + pt(ROW_MM) - 4
  doc
    .lineWidth(pt(0.2))
    .moveTo(box.left, y - pt(2))
    .lineTo(box.left + pt(drawn), y - pt(2))
    .stroke('#000')
  for (const x of [box.left, box.left + pt(drawn)])
    doc
      .moveTo(x, y - pt(5))
      .lineTo(x, y + 1)
      .stroke('#000')
  ink(doc, 'bold', BENCH_PT)
  const label = half ? `${words}, half of it` : words
  const beside = box.left + pt(drawn) + 6
  const fits = beside + doc.widthOfString(label) <= box.right
  line(
    doc,
    fitted(doc, label, fits ? box.right - beside : pt(drawn) - 12),
    fits ? beside : box.left + 6,
    fits ? y - pt(4) : y - pt(6),
  )
  print.y += pt(ROW_MM)
}
