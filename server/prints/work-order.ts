import { elapsedText } from '../../shared/estimate/elapsed-text.ts'
import type { Plan } from '../../shared/plan.ts'
import { ceilingReasons, reasonLetter } from '../../shared/route/order-rows.ts'
import { lengthText } from '../../shared/units/length.ts'
import { type Block, type Column, framed, headed, type Laid, lines, setInColumns, text } from './columns.ts'
import { countText, massText, minutesText } from './figures.ts'
import { finishPrint, openPrint, type PrintOptions } from './print.ts'
import { restPlace } from './rest-place.ts'
import { stairFigures, stairHeading } from './stair-figures.ts'
import { operationBlocks } from './work-order-rows.ts'

/** What is left out or drawn together where there is very much to do. */
interface Way {
  /** Features cut alike one after the other share a row. */
  gathered: boolean
  /** Without what only explains: minutes by stage, why these grits and this finish. */
  brief: boolean
}

const ways: Way[] = [
  { gathered: false, brief: false },
  { gathered: true, brief: false },
  { gathered: true, brief: true },
]

/**
 * The order of work with tools, speeds, calipers and minutes; then edges, sanding, finish and cautions. On one page
 * where type of 7 points and more allows it: two columns; what sets the lathe is said once for all operations at that
 * setting; a caution once a page, with its row’s number wherever it holds again; then the `ways` in turn.
 */
export function workOrderPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Work order', plan, options)
  const blocks = (way: Way) => [
    text(stockText(plan, options)),
    ...operationBlocks(plan.operations, options.style, way),
    ...notes(plan),
    ...time(plan, way),
    ...edges(plan),
    ...sandingAndFinish(plan, way),
    ...stairParts(plan, options),
    ...cautions(plan),
  ]
  setInColumns(print, ways.map(blocks))
  return finishPrint(print)
}

function stockText(plan: Plan, { style }: PrintOptions): string {
  const { job, blank, part, passes } = plan
  const mounting = passes.chosen === 'one' ? 'one mounting a piece' : 'several mountings a piece'
  const mass = (grams: number | undefined) => (grams === undefined ? '' : `, ${massText(grams)}`)
  const several = blank.stock.perBlank > 1 ? `${countText(blank.stock.perBlank, 'piece')} from each, ` : ''
  return (
    `Blank ${lengthText(blank.side, style)} square × ${lengthText(blank.length, style)}${mass(blank.mass)}; ` +
    `${several}mounted by ${job.mount}${plan.lathe ? ` on the ${plan.lathe.name}` : ''}, ${mounting}. ` +
    `Finished piece ${lengthText(part.length, style)} long${mass(part.mass)}. ${restWords(plan, style)}`.trimEnd()
  )
}

function restWords({ part, blank }: Plan, style: PrintOptions['style']): string {
  const { whip } = part
  if (!whip || whip.rest === 'none') return ''
  const at = restPlace({ part, blank })
  return `A steady rest is ${whip.rest}${at === undefined ? '' : `, best at ${lengthText(at, style)} from the foot`}.`
}

function notes(plan: Plan): Block[] {
  const reasons = ceilingReasons(plan.operations)
  const list = reasons.map((reason, i) => `${reasonLetter(i)}: ${reason}`).join('; ')
  const ceiling =
    reasons.length > 0
      ? ` Never run above the ceiling, which comes from ${list}. The lathe maker’s limits come first.`
      : ''
  return [
    text(
      `Lengths from the foot; ⌀ caliper setting; rest: position of the tool rest; minutes for one blank; ⚠ with a number: what is written there to mind holds again.${ceiling}`,
    ),
  ]
}

function time({ time: of, operations }: Plan, { brief }: Way): Block[] {
  const once = operations.reduce((sum, { minutesOnce }) => sum + minutesOnce, 0)
  const stages = Object.entries(of.byStage)
    .filter(([, minutes]) => minutes > 0)
    .map(([stage, minutes]) => `${stage} ${minutesText(minutes)}`)
  const byStage = brief ? '' : `By stage: ${stages.join(', ')}. `
  return headed('Time', [
    text(
      `The batch ${minutesText(of.minutes)}, ${minutesText(of.perPiece)} a piece, spares among them, ${minutesText(once)} of it set-up done once; ` +
        `the first ${minutesText(of.first)}, the last ${minutesText(of.last)}. One batch in ten is done in ${minutesText(of.p10)}, ` +
        `nine in ten in ${minutesText(of.p90)}. ${byStage}` +
        `From start to packed ${elapsedText(of.elapsed)}: ${of.elapsed.why}.`,
    ),
  ])
}

/** Tool, how long its edge lasts, what sharpening it takes: shares of the column. */
const EDGE_SHARES = [0.34, 0.16, 0.5]

const edgeRow =
  (cells: string[], head = false): Block =>
  (column: Column): Laid => {
    const laid = cells.map((cell, i) =>
      lines(column, cell, EDGE_SHARES[i]! * column.width - 4, {
        face: head ? 'bold' : 'plain',
        align: i === 0 ? 'left' : 'right',
      }),
    )
    const height = Math.max(...laid.map((cell) => cell.height))
    return {
      height: height + 0.5,
      draw: (x, y) => {
        let at = x
        laid.forEach((cell, i) => {
          cell.draw(at, y)
          at += EDGE_SHARES[i]! * column.width
        })
      },
    }
  }

function edges({ grinding }: Plan): Block[] {
  if (grinding.length === 0) return []
  return headed('Edges', [
    edgeRow(['Tool', 'Lasts', 'Sharpening'], true),
    ...grinding.map((one) =>
      edgeRow([
        one.tool,
        one.piecesBetween >= 1 ? countText(Math.floor(one.piecesBetween), 'piece') : minutesText(one.life),
        `${countText(one.touchUps, 'touch-up')}, ${countText(one.regrinds, 'regrind')}, ${minutesText(one.minutes)}`,
      ]),
    ),
  ])
}

function sandingAndFinish({ sanding, finish }: Plan, { brief }: Way): Block[] {
  const rpm = sanding.rpm === undefined ? '' : ` at ${Math.floor(sanding.rpm)} rpm`
  const grits =
    sanding.grits.length === 0
      ? 'No sanding.'
      : `Grits ${sanding.grits.join(', ')}${rpm}, ${minutesText(sanding.minutesEach)} each.`
  const coats =
    finish.kind === 'none'
      ? 'No finish.'
      : `Finish: ${finish.kind}, ${countText(finish.coats, 'coat')} ${finish.onLathe ? 'on' : 'off'} the lathe, ${finish.dryHours} h to dry.`
  return [
    ...headed('Sanding and finish', [
      text([grits, ...(brief ? [coats] : [sanding.why, coats, finish.why])].join(' ')),
    ]),
    ...(finish.caution ? [framed(finish.caution)] : []),
  ]
}

/** Spacing, count and bending where the parts stand in a guard or on a stair, what is to be minded right below. */
function stairParts({ stair }: Plan, { style }: PrintOptions): Block[] {
  if (!stair) return []
  const figures = stairFigures(stair, style).flatMap(([name, figure]) =>
    figure ? `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${figure}.` : [],
  )
  return [
    ...headed(stairHeading(stair), [text(figures.join(' '))]),
    ...(stair.cautions.length > 0 ? [framed(stair.cautions.join(' '))] : []),
  ]
}

/** Printed on the cut list, the caliper card or for the shop’s eyes alone. */
const ELSEWHERE = new Set<Plan['cautions'][number]['about']>(['lumber', 'checks', 'price'])

/** The plan's cautions that stand beside no figure above. */
function cautions(plan: Plan): Block[] {
  const said = [
    ...plan.operations.map(({ caution }) => caution),
    plan.finish.caution,
    ...(plan.stair?.cautions ?? []),
  ].join(' ')
  const rest = plan.cautions.filter(
    ({ about, text: words }) => !said.includes(words) && !ELSEWHERE.has(about),
  )
  if (rest.length === 0) return []
  return headed('To mind', [
    framed(
      rest
        .map(({ about, text: words }) => `${about.charAt(0).toUpperCase()}${about.slice(1)}: ${words}`)
        .join(' '),
    ),
  ])
}
