import type { Plan } from '../../shared/plan.ts'
import { cautionSentences } from '../../shared/route/cautions.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { countText, massText, minutesText, rangeText } from './figures.ts'
import { caution, heading, paragraph } from './flow.ts'
import { finishPrint, openPrint, type Print, type PrintOptions } from './print.ts'
import { restPlace } from './rest-place.ts'
import { stairFigures, stairHeading } from './stair-figures.ts'
import { type Column, type Row, table } from './table.ts'

/** The order of work with tools, speeds, calipers and minutes; then edges, sanding, finish and cautions. */
export function workOrderPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Work order', plan, options, { layout: 'landscape' })
  stockLine(print)
  operationTable(print)
  timeLines(print)
  edges(print)
  sandingAndFinish(print)
  stairParts(print)
  cautions(print)
  return finishPrint(print)
}

function stockLine(print: Print): void {
  const { job, blank, part, passes } = print.plan
  const { style } = print.options
  const mounting = passes.chosen === 'one' ? 'one mounting a piece' : 'several mountings a piece'
  const mass = (grams: number | undefined) => (grams === undefined ? '' : `, ${massText(grams)}`)
  const several = blank.stock.perBlank > 1 ? `${countText(blank.stock.perBlank, 'piece')} from each, ` : ''
  paragraph(
    print,
    `Blank ${lengthText(blank.side, style)} square × ${lengthText(blank.length, style)}${mass(blank.mass)}; ` +
      `${several}mounted by ${job.mount}, ${mounting}. ` +
      `Finished piece ${lengthText(part.length, style)} long${mass(part.mass)}. ${restWords(print.plan, style)}`.trimEnd(),
  )
}

function restWords({ part, blank }: Plan, style: LengthStyle): string {
  const { whip } = part
  if (!whip || whip.rest === 'none') return ''
  const at = restPlace({ part, blank })
  return `A steady rest is ${whip.rest}${at === undefined ? '' : `, best at ${lengthText(at, style)} from the foot`}.`
}

const columns: Column[] = [
  { head: 'No.', share: 18 },
  { head: 'Operation', share: 189, face: 'bold' },
  { head: 'From the foot', share: 92 },
  { head: 'Tool', share: 104 },
  { head: 'Speed', share: 52, align: 'right', face: 'bold' },
  { head: 'Ceiling', share: 64, align: 'right' },
  { head: 'Caliper', share: 66, align: 'right', face: 'bold' },
  { head: 'Each', share: 48, align: 'right' },
  { head: 'See', share: 44 },
]

function operationTable(print: Print): void {
  const { operations } = print.plan
  const { style } = print.options
  const reasons = [...new Set(operations.flatMap(({ ceilingBy }) => ceilingBy ?? []))]
  const leads = leadsOf(operations)
  const rows = operations.map((operation, i) => operationRow(operation, i + 1, style, reasons, leads[i]))
  table(print, columns, rows, { pad: 1, gap: 7, again: columns.length - 1 })
  paragraph(print, 'Minutes are for one blank. ⚠ with a number: what is written there to mind holds again.')
  if (reasons.length > 0) {
    const list = reasons.map((reason, i) => `${letter(i)}: ${reason}`).join('; ')
    paragraph(
      print,
      `Never run above the ceiling. It comes from ${list}. The lathe maker’s limits come first.`,
    )
  }
}

/** A heading where the work goes to the lathe or leaves it, and where the rest is moved. */
function leadsOf(operations: Operation[]): (string | undefined)[] {
  const mountings = Math.max(...operations.map(({ pass }) => pass))
  let [before, rest] = ['', undefined as number | undefined]
  return operations.map(({ pass, restPosition }) => {
    rest = pass === 0 ? undefined : (restPosition ?? rest)
    const mounting = mountings > 1 ? `, mounting ${pass}` : ''
    const lead =
      pass === 0
        ? 'Away from the lathe'
        : `On the lathe${mounting}${rest === undefined ? '' : `, tool rest in position ${rest}`}`
    if (lead === before) return undefined
    before = lead
    return lead
  })
}

const letter = (i: number): string => (i < 26 ? String.fromCharCode(97 + i) : `z${i}`)

function operationRow(
  operation: Operation,
  number: number,
  style: LengthStyle,
  reasons: string[],
  lead?: string,
): Row {
  const { name, where, tool, rpm, rpmCeiling, ceilingBy, caliper, caution } = operation
  const reason = ceilingBy === undefined ? '' : ` ${letter(reasons.indexOf(ceilingBy))}`
  return {
    cells: [
      String(number),
      name,
      where ? placeText(where, style) : '',
      tool,
      rpm !== undefined ? `${Math.floor(rpm)} rpm` : rpmCeiling !== undefined ? 'none' : '',
      rpmCeiling === undefined ? '' : `${Math.floor(rpmCeiling)} rpm${reason}`,
      caliper === undefined ? '' : `⌀ ${lengthText(caliper, style)}`,
      operation.minutesEach > 0 ? minutesText(operation.minutesEach) : '',
      '',
    ],
    cautions: cautionSentences(caution),
    lead,
  }
}

const placeText = (where: [number, number], style: LengthStyle): string =>
  nm(where[0]) === nm(where[1]) ? `at ${lengthText(where[0], style)}` : rangeText(where, style)

function timeLines(print: Print): void {
  const { time, operations } = print.plan
  const once = operations.reduce((sum, { minutesOnce }) => sum + minutesOnce, 0)
  const stages = Object.entries(time.byStage).filter(([, minutes]) => minutes > 0)
  heading(print, 'Time')
  paragraph(
    print,
    `The batch ${minutesText(time.minutes)}, ${minutesText(time.perPiece)} a piece, spares among them, ${minutesText(once)} of it set-up done once; ` +
      `the first ${minutesText(time.first)}, the last ${minutesText(time.last)}. One batch in ten is done in ${minutesText(time.p10)}, ` +
      `nine in ten in ${minutesText(time.p90)}. By stage: ${stages.map(([stage, minutes]) => `${stage} ${minutesText(minutes)}`).join(', ')}. ` +
      `From start to packed ${countText(time.elapsed.days, 'day')}: ${time.elapsed.why}.`,
  )
}

function edges(print: Print): void {
  const { grinding } = print.plan
  if (grinding.length === 0) return
  heading(print, 'Edges')
  table(
    print,
    [
      { head: 'Tool', share: 30, face: 'bold' },
      { head: 'Touch up after', share: 20, align: 'right' },
      { head: 'Touch-ups', share: 13, align: 'right' },
      { head: 'Regrinds', share: 13, align: 'right' },
      { head: 'Cutting', share: 16, align: 'right' },
      { head: 'Sharpening', share: 16, align: 'right' },
    ],
    grinding.map((one) => ({
      cells: [
        one.tool,
        one.piecesBetween >= 1 ? countText(Math.floor(one.piecesBetween), 'piece') : minutesText(one.life),
        String(one.touchUps),
        String(one.regrinds),
        minutesText(one.minutesCutting),
        minutesText(one.minutes),
      ],
    })),
    { pad: 1.2 },
  )
}

function sandingAndFinish(print: Print): void {
  const { sanding, finish } = print.plan
  heading(print, 'Sanding and finish')
  paragraph(
    print,
    `Grits ${sanding.grits.join(', ')}${sanding.rpm === undefined ? '' : ` at ${Math.floor(sanding.rpm)} rpm`}, ` +
      `${minutesText(sanding.minutesEach)} each. ${sanding.why}`,
  )
  if (finish.kind === 'none') paragraph(print, `No finish. ${finish.why}`)
  else {
    paragraph(
      print,
      `Finish: ${finish.kind}, ${countText(finish.coats, 'coat')} ${finish.onLathe ? 'on' : 'off'} the lathe, ` +
        `${finish.dryHours} h to dry. ${finish.why}`,
    )
  }
  if (finish.caution) caution(print, finish.caution)
}

/** Spacing, count and bending where the parts stand in a guard or on a stair, what is to be minded right below. */
function stairParts(print: Print): void {
  const { stair } = print.plan
  if (!stair) return
  heading(print, stairHeading(stair))
  for (const [name, figure] of stairFigures(stair, print.options.style))
    if (figure) paragraph(print, `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${figure}.`, { after: 1 })
  print.y += 3
  for (const text of stair.cautions) caution(print, text)
}

/** Printed on the cut list, the caliper card or for the shop’s eyes alone. */
const ELSEWHERE = new Set<Plan['cautions'][number]['about']>(['lumber', 'checks', 'price'])

/** The plan's cautions that stand beside no figure above. */
function cautions(print: Print): void {
  const { plan } = print
  const said = [
    ...plan.operations.map(({ caution }) => caution),
    plan.finish.caution,
    ...(plan.stair?.cautions ?? []),
  ].join(' ')
  const rest = plan.cautions.filter(({ about, text }) => !said.includes(text) && !ELSEWHERE.has(about))
  if (rest.length === 0) return
  heading(print, 'To mind')
  for (const { about, text } of rest)
    caution(print, `${about.charAt(0).toUpperCase()}${about.slice(1)}: ${text}`)
}
