import type { Finish } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { outlineOf, outlineRadius } from '../../shared/profile/outline.ts'
import { samePlace } from '../../shared/profile/profile.ts'
import { lengthText } from '../../shared/units/length.ts'
import { minorOf, moneyText } from '../../shared/units/money.ts'
import { scaleFor } from './board-drawing.ts'
import { countText, quantityText, thicknessText, woodText } from './figures.ts'
import { caution, heading, paragraph } from './flow.ts'
import {
  BENCH_PT,
  ensure,
  finishPrint,
  ink,
  line,
  openPrint,
  type Print,
  type PrintOptions,
  plainText,
  pt,
} from './print.ts'
import { type Column, table } from './table.ts'

/** The price for the customer: what is made, drawn to scale, what is included, total and per piece. */
export function quotePdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Quote', plan, options)
  party(print)
  drawing(print)
  included(print)
  price(print)
  terms(print)
  return finishPrint(print)
}

function party(print: Print): void {
  const { job } = print.plan
  print.y += 6
  rows(print, [
    ['For', job.customer ? plainText(job.customer) : ''],
    ['Job', plainText(job.name)],
    ['Wanted by', job.due ?? ''],
    ['Date', ''],
  ])
}

const twoColumns: Column[] = [
  { head: '', share: 24 },
  { head: '', share: 76, face: 'bold' },
]

/** Lines of a name and what stands for it; a rule to write on where nothing is known. */
function rows(print: Print, lines: [string, string][]): void {
  const { doc, box } = print
  for (const [name, value] of lines) {
    const split = box.left + ((box.right - box.left) * twoColumns[0]!.share) / 100
    const width = box.right - split
    ink(doc, 'bold', 11)
    const height = Math.max(16, value ? doc.heightOfString(value, { width }) + 3 : 22)
    ensure(print, height)
    ink(doc, 'plain', 11)
    line(doc, name, box.left, print.y)
    ink(doc, 'bold', 11)
    if (value) doc.text(value, split, print.y, { width })
    else
      doc
        .lineWidth(0.5)
        .moveTo(split, print.y + 15)
        .lineTo(box.right, print.y + 15)
        .stroke('#000')
    print.y += height
  }
}

/** The part lying down, foot at the left, with its length and thickness. */
function drawing(print: Print): void {
  const { doc, plan, options, box } = print
  const outline = outlineOf(plan.job.profile, 0.02)
  const [length, radius] = [plan.part.length, outlineRadius(outline)]
  const across = scaleFor(length, box.right - box.left - 2)
  const scale = Math.max(across, scaleFor(2 * radius, pt(80)))
  const p = (mm: number) => pt(mm / scale)
  const height = p(2 * radius)
  heading(print, `Drawing, 1:${scale}`, height + 40)
  const [x0, axis] = [box.left + (box.right - box.left - p(length)) / 2, print.y + 4 + height / 2]
  for (const side of [-1, 1]) {
    doc.moveTo(x0, axis)
    for (const { x, r } of outline) doc.lineTo(x0 + p(x), axis + side * p(r))
    doc.lineTo(x0 + p(length), axis)
    doc.lineWidth(0.7).lineJoin('round').stroke('#000')
  }
  outline.forEach(({ x, r }, i) => {
    const step = i > 0 && samePlace(outline[i - 1]!.x, x) && !samePlace(outline[i - 1]!.r, r)
    if (step)
      doc
        .lineWidth(0.4)
        .moveTo(x0 + p(x), axis - p(Math.max(r, outline[i - 1]!.r)))
        .lineTo(x0 + p(x), axis + p(Math.max(r, outline[i - 1]!.r)))
        .stroke('#000')
  })
  const y = axis + height / 2 + 10
  doc
    .lineWidth(0.5)
    .moveTo(x0, y)
    .lineTo(x0 + p(length), y)
    .stroke('#000')
  for (const x of [x0, x0 + p(length)])
    doc
      .moveTo(x, y - 4)
      .lineTo(x, y + 4)
      .stroke('#000')
  const words = `${lengthText(length, options.style)} long, ${thicknessText(plan.part, options.style)} at the thickest`
  ink(doc, 'plain', BENCH_PT)
  line(doc, words, box.left + (box.right - box.left - doc.widthOfString(words)) / 2, y + 5)
  print.y = y + 24
}

const finishWords: Record<Finish, string> = {
  none: 'sanded, no finish',
  oil: 'oiled',
  wax: 'waxed',
  polish: 'polished',
  film: 'film finish (varnish or lacquer)',
}

function included(print: Print): void {
  const { job, part, sanding } = print.plan
  const { style, wood } = print.options
  const finest = sanding.grits.at(-1)
  heading(print, 'Included')
  rows(print, [
    ['Quantity', pieceWords(print.plan)],
    ['Wood', `${woodText(job.species, wood)}, turned at ${job.moisture} % moisture`],
    ['Size', `${thicknessText(part, style)} × ${lengthText(part.length, style)}`],
    [
      'Diameters',
      `± ${lengthText(job.tolerance.diameter, style)}; length ± ${lengthText(job.tolerance.length, style)}`,
    ],
    ...(job.joints.length > 0 ? [['Joints', jointWords(print.plan)] as [string, string]] : []),
    ['Surface', `${finishWords[job.finish]}${finest === undefined ? '' : `, sanded to grit ${finest}`}`],
  ])
  if (job.use !== 'furniture') {
    caution(
      print,
      'Stair parts and guards: the local building code and its inspector come first. No figure of this quote stands for their approval.',
    )
  }
}

function pieceWords({ job }: Plan): string {
  const pieces = `${quantityText(job)}${job.profile.split ? ' of split pairs' : ''}`
  return job.match && job.quantity > 1 ? `${pieces}, turned as a matching set` : pieces
}

function jointWords({ job }: Plan): string {
  const counts = new Map<string, number>()
  for (const { kind } of job.joints) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return `${[...counts].map(([kind, count]) => countText(count, kind)).join(', ')} in each piece`
}

function price(print: Print): void {
  const { quote, job } = print.plan
  heading(print, 'Price', 60)
  if (!quote) {
    rows(print, [
      ['Total', ''],
      ['Each piece', ''],
    ])
    return
  }
  const money = (amount: number) => moneyText(minorOf(amount, quote.currency), quote.currency)
  table(
    print,
    [
      { head: 'What', share: 50 },
      { head: 'Quantity', share: 16, align: 'right' },
      { head: 'Each', share: 17, align: 'right' },
      { head: 'Total', share: 17, align: 'right', face: 'bold' },
    ],
    [{ cells: [plainText(job.name), quantityText(job), money(quote.perPiece), money(quote.total)] }],
    { size: 12, pad: 4 },
  )
  paragraph(print, `Total ${money(quote.total)}`, { face: 'bold', size: 15 })
}

function terms(print: Print): void {
  heading(print, 'Terms', 120)
  rows(print, [
    ['Valid until', ''],
    ['Deposit', ''],
    ['Ready by', ''],
    ['Packing, delivery', ''],
    ['Notes', ''],
    ['', ''],
  ])
  print.y += 12
  rows(print, [
    ['For the shop', ''],
    ['Agreed', ''],
  ])
}
