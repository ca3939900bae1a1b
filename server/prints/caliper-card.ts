import type { Plan } from '../../shared/plan.ts'
import type { CheckStation } from '../../shared/profile/check-stations.ts'
import { stationOfKey } from '../../shared/profile/station-key.ts'
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
import { table } from './table.ts'

/** Caliper settings in working order in large type, drawn true size, and the limits of the checks. */
export function caliperCardPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Caliper card', plan, options, { foot: scaleCheck })
  const settings = settingsInOrder(plan, options.style)
  caution(
    print,
    'Stop the lathe before a caliper touches the work, unless it is a spring caliper with rounded tips.',
  )
  introduction(print)
  const beside = besideFigures(print, settings)
  for (const setting of settings) settingRow(print, setting, beside)
  checkTable(print)
  diameterStrip(print, settings)
  return finishPrint(print)
}

interface SettingRow {
  there: number
  /** Absent where every piece is sized in the same order. */
  back?: number
  diameter: number
  stations: string
}

/** The diameters in working order with the names of the places they are for. */
function settingsInOrder(plan: Plan, style: LengthStyle): SettingRow[] {
  const { order, settings, oneWay } = plan.calipers
  return order.map((diameter, i) => ({
    there: i + 1,
    ...(oneWay ? {} : { back: order.length - i }),
    diameter,
    stations: [
      ...new Set(settings.filter((one) => nm(one.diameter) === nm(diameter)).flatMap((one) => one.stations)),
    ]
      .map((key) => stationWords(plan, key, style))
      .join('; '),
  }))
}

/** A station's name, or where it is. */
function stationWords({ job, checkStations }: Plan, key: string, style: LengthStyle): string {
  const check = checkStations.find((one) => one.key === key)
  const station = job.profile.stations[stationOfKey(job.profile.stations, key)?.index ?? -1]
  const at = check?.at ?? station?.at
  const name = check?.name ?? station?.name
  const where = at === undefined ? key : `at ${lengthText(at, style)}`
  return name ? `${name} ${where}` : where
}

function introduction(print: Print): void {
  const { calipers, blank } = print.plan
  const { length } = calipers.order
  if (length === 0) {
    paragraph(print, 'No place of this profile needs a caliper.')
    return
  }
  const order = calipers.oneWay
    ? `Every piece: 1 to ${length}, downwards (↓); slender work is sized stretch by stretch.`
    : `Odd pieces: 1 to ${length}, downwards (↓). Even pieces: back again, upwards (↑).`
  const total = calipers.oneWay?.total ?? calipers.total
  paragraph(
    print,
    `${order} ${countText(length, 'size')} with ${countText(calipers.count, 'caliper')}: calipers are set ${countText(total, 'time')} in all ` +
      `for ${countText(blank.count, 'blank')}. The figures are for the sizing cut: what later cuts and sanding take off is in them.`,
    { after: 8 },
  )
}

const figureText = ({ options }: Print, { diameter }: SettingRow): string =>
  `⌀ ${lengthText(diameter, options.style)}`

const FIGURE_PT = 30
const FIGURE_INDENT = 74

/** Where the names begin, so that they clear the widest figure. */
function besideFigures(print: Print, settings: SettingRow[]): number {
  ink(print.doc, 'bold', FIGURE_PT)
  const widest = Math.max(
    0,
    ...settings.map((setting) => print.doc.widthOfString(figureText(print, setting))),
  )
  return print.box.left + FIGURE_INDENT + widest + 14
}

function settingRow(print: Print, setting: SettingRow, beside: number): void {
  const { doc, box } = print
  const { there, back, stations } = setting
  const room = box.right - beside
  ink(doc, 'plain', 13)
  const names = doc.heightOfString(stations || ' ', { width: room })
  const height = Math.max(40, names + 8)
  ensure(print, height)
  ink(doc, 'bold', 15)
  line(doc, `↓ ${there}`, box.left, print.y + 11)
  ink(doc, 'plain', 15)
  if (back !== undefined) line(doc, `↑ ${back}`, box.left + 36, print.y + 11)
  ink(doc, 'bold', FIGURE_PT)
  line(doc, figureText(print, setting), box.left + FIGURE_INDENT, print.y + 2)
  ink(doc, 'plain', 13)
  doc.text(stations, beside, print.y + (height - names) / 2, { width: room })
  print.y += height
  doc.lineWidth(0.5).moveTo(box.left, print.y).lineTo(box.right, print.y).stroke('#000')
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
function diameterStrip(print: Print, settings: SettingRow[]): void {
  const distinct = settings.filter(
    ({ diameter }, i) => settings.findIndex((one) => nm(one.diameter) === nm(diameter)) === i,
  )
  if (distinct.length === 0) return
  const needed = 40 + pt(ROW_MM) * Math.min(distinct.length, 18)
  if (print.y + needed > print.box.bottom) newPage(print)
  heading(print, 'Diameters at true size, in working order')
  for (const { diameter, there } of distinct) diameterBar(print, diameter, there)
}

function diameterBar(print: Print, diameter: number, number: number): void {
  const { doc, box, options } = print
  ensure(print, pt(ROW_MM))
  const width = box.right - box.left
  // A bar wider than the paper is drawn from its middle.
  const half = pt(diameter) > width
  const drawn = half ? diameter / 2 : diameter
  const words = `${number}: ⌀ ${lengthText(diameter, options.style)}`
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
