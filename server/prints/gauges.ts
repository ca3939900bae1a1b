import type { Plan } from '../../shared/plan.ts'
import { lengthText } from '../../shared/units/length.ts'
import { countText, minutesText } from './figures.ts'
import { caution, heading, paragraph } from './flow.ts'
import { type GapGauge, type GaugeShape, gapGauges, gaugeShape } from './gap-gauge.ts'
import { hatch } from './hatch.ts'
import {
  BENCH_PT,
  finishPrint,
  fitted,
  ink,
  line,
  newPage,
  openPrint,
  type Print,
  type PrintOptions,
  plainText,
  pt,
} from './print.ts'
import { scaleCheck } from './scale-check.ts'

/** Free between two gauges, mm: room for a saw. */
const BETWEEN = 5
const HATCH_MM = 4
/** Lines to saw and file to; the edge is their middle. */
const LINE_MM = 0.15
/** Two lines for the places of a gauge, points. */
const PLACES_PT = 26

/** A gauge where it lies on the sheet, mm from the left and upper end of its rows; turned where it only fits so. */
interface Laid {
  gauge: GapGauge
  shape: GaugeShape
  x: number
  turned: boolean
}

/** Gap gauges for the caliper settings and the tenons of a plan at true size, to be stuck to thin stuff and sawn. */
export function gaugesPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Gap gauges 1:1', plan, options, { foot: scaleCheck })
  const gauges = gapGauges(plan, options.style)
  if (gauges.length === 0) {
    paragraph(print, 'No place of this profile needs a gauge.')
    return finishPrint(print)
  }
  introduction(print, gauges)
  const room = roomOf(print)
  const [laid, tooWide] = rowsOf(gauges, room)
  for (const row of laid) drawRow(print, row)
  if (tooWide.length > 0) {
    heading(print, 'Wider than this paper')
    for (const { gap, stage, places } of tooWide)
      paragraph(
        print,
        `⌀ ${lengthText(gap, options.style)}, ${stage}, ${places}: print on a roll, or set a caliper with a rule.`,
      )
  }
  return finishPrint(print)
}

function introduction(print: Print, gauges: GapGauge[]): void {
  const { plan } = print
  caution(
    print,
    'Stop the lathe before a gauge is put to the work: a gap that catches is torn from the hand.',
  )
  paragraph(
    print,
    `${countText(gauges.length, 'gauge')} at true size. Stick the sheet to thin plywood or hardboard, saw on the hatched side of the lines and file ` +
      'to their middle. Prove every gap on a caliper that was set with a rule, and again after a knock.',
  )
  const paid = plan.calipers.gauges
  if (paid) paragraph(print, paidWords(print, paid), { after: 8 })
  else print.y += 5
}

function paidWords({ plan, options }: Print, gauges: NonNullable<Plan['calipers']['gauges']>): string {
  const { minutes, resetMinutes, few, why } = gauges
  const blanks = countText(plan.blank.count, 'blank')
  const all = `For ${blanks} the gauges of the settings take ${minutesText(minutes)} to make, setting calipers without them ${minutesText(resetMinutes)}.`
  const some = few?.pays
    ? ` Quickest: gauges for ${few.diameters.map((mm) => `⌀ ${lengthText(mm, options.style)}`).join(', ')} only, and a caliper left set for each other diameter: ${minutesText(few.minutes)}.`
    : ''
  return `${all} ${why}${some}`
}

/** Width and height for gauges on a sheet, mm. */
function roomOf({ pages }: Print): { width: number; height: number } {
  const { left, right, top, bottom } = pages.at(-1)!
  return { width: (right - left) / pt(1), height: (bottom - top) / pt(1) }
}

const across = ({ shape, turned }: Laid): number => (turned ? shape.height : shape.width)
const upright = ({ shape, turned }: Laid): number => (turned ? shape.width : shape.height)

/** The gauges in rows, and those that the paper is too small for. */
function rowsOf(gauges: GapGauge[], room: { width: number; height: number }): [Laid[][], GapGauge[]] {
  const rows: Laid[][] = []
  const tooWide: GapGauge[] = []
  let used = Number.POSITIVE_INFINITY
  for (const gauge of gauges) {
    const shape = gaugeShape(gauge)
    const fits = (wide: number, high: number) => wide <= room.width && high <= room.height
    const turned = !fits(shape.width, shape.height)
    if (turned && !fits(shape.height, shape.width)) {
      tooWide.push(gauge)
      continue
    }
    const wide = turned ? shape.height : shape.width
    if (used + wide > room.width) {
      rows.push([])
      used = 0
    }
    rows.at(-1)!.push({ gauge, shape, x: used, turned })
    used += wide + BETWEEN
  }
  return [rows, tooWide]
}

function drawRow(print: Print, row: Laid[]): void {
  const height = pt(Math.max(...row.map(upright)))
  if (print.y + height > print.box.bottom) newPage(print)
  for (const laid of row) drawGauge(print, laid, print.y)
  print.y += height + pt(BETWEEN)
}

function drawGauge(print: Print, laid: Laid, y: number): void {
  const { doc, box } = print
  doc.save().translate(box.left + pt(laid.x), y)
  if (laid.turned) doc.translate(pt(across(laid)), 0).rotate(90)
  outline(print, laid)
  wordsOn(print, laid)
  doc.restore()
}

function outline({ doc }: Print, { gauge: { gap }, shape: { width, height, depth } }: Laid): void {
  const side = (width - gap) / 2
  hatch(doc, { x: side, y: 0, width: gap, height: depth }, HATCH_MM)
  const corners: [number, number][] = [
    [side, 0],
    [side, depth],
    [side + gap, depth],
    [side + gap, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
  doc.lineWidth(pt(LINE_MM)).lineJoin('miter').moveTo(0, 0)
  for (const [x, y] of corners) doc.lineTo(pt(x), pt(y))
  doc.closePath().stroke('#000')
}

function wordsOn({ doc, plan, options }: Print, { gauge, shape: { width, depth } }: Laid): void {
  const room = pt(width) - 8
  const y = pt(depth) + 5
  ink(doc, 'bold', 14)
  line(doc, `⌀ ${lengthText(gauge.gap, options.style)}`, 4, y)
  ink(doc, 'plain', BENCH_PT)
  line(doc, fitted(doc, gauge.stage, room), 4, y + 19)
  doc.text(gauge.places, 4, y + 33, { width: room, height: PLACES_PT, ellipsis: true })
  line(doc, fitted(doc, plainText(plan.job.name), room), 4, y + 61)
}
