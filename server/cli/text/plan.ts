import { elapsedText } from '../../../shared/estimate/elapsed-text.ts'
import type { Plan } from '../../../shared/plan.ts'
import type { Operation } from '../../../shared/route/operation.ts'
import { type LengthStyle, lengthFigure, lengthText, nm } from '../../../shared/units/length.ts'
import { countText, massText, minutesText, unitOf, woodText } from '../../prints/figures.ts'
import { cutLines } from './cut.ts'
import { fineText } from './fine.ts'
import { heading, pairs, paragraph, table, wrapped } from './page.ts'
import { stairLines } from './stair.ts'

export interface PlanText {
  style: LengthStyle
  /** The wood's own name. */
  wood?: string
}

type Lines = (plan: Plan, text: PlanText) => string[]

const percent = (fraction: number): string => `${(fraction * 100).toFixed(0)} %`

const title: Lines = ({ job }, { wood }) => [
  ...wrapped(job.name.toUpperCase()),
  ...paragraph(
    [
      `${countText(job.quantity, job.profile.split ? 'half' : 'piece', job.profile.split ? 'halves' : 'pieces')}${job.match && job.quantity > 1 ? ', a matching set' : ''}`,
      `${woodText(job.species, wood)} at ${job.moisture} % moisture`,
      job.customer && `for ${job.customer}`,
      job.due && `due ${job.due}`,
    ]
      .filter(Boolean)
      .join(' · '),
  ),
]

function volumeText(mm3: number, style: LengthStyle): string {
  return style === 'mm' ? `${(mm3 / 1000).toFixed(1)} cm³` : `${(mm3 / 25.4 ** 3).toFixed(2)} cu in`
}

const part: Lines = ({ part, job }, { style }) => {
  const length = (mm: number) => lengthText(mm, style)
  const { whip, movement } = part
  return [
    ...heading('Part'),
    ...pairs([
      ['length', length(part.length)],
      ['diameters', `${length(part.minDiameter)} to ${length(part.maxDiameter)}`],
      ['left square', part.maxSide === undefined ? undefined : `${length(part.maxSide)} across the flats`],
      ['volume', volumeText(part.volume, style)],
      [
        'mass',
        part.mass === undefined
          ? undefined
          : `${massText(part.mass)}${job.profile.split ? ' the glued pair' : ''}, centre ${length(part.centroid)} from the foot`,
      ],
      [
        'between centres',
        whip &&
          `sags ${fineText(whip.sag, style)} under 10 N at ${length(whip.at)}; first bending at ${Math.round(whip.criticalRpm)} rpm. Steady rest ${whip.rest === 'none' ? 'not needed' : whip.rest}: ${whip.why}`,
      ],
      ['steady rest', whip?.restAt === undefined ? undefined : `at ${length(whip.restAt)} from the foot`],
      [
        'lot',
        part.lot &&
          `${part.lot.name}: ${(part.lot.factor * 100).toFixed(1)} % of the table’s density, by ${countText(part.lot.weighings, 'weighing')}`,
      ],
      [
        'movement',
        movement &&
          `largest diameter ${fineText(movement.tangential, style)} tangential, ${fineText(movement.radial, style)} radial from ${job.moisture} to ${job.serviceMoisture} % moisture; ${fineText(movement.outOfRound, style)} out of round`,
      ],
    ]),
  ]
}

/** How much larger it is sawn because it dries; nothing where it does not. */
function dryingText({ shrinkage }: Plan['blank'], style: LengthStyle): string | undefined {
  if (!shrinkage || nm(shrinkage.across) <= 0) return undefined
  return `sawn ${fineText(shrinkage.across, style)} larger each way, from ${shrinkage.from} to ${shrinkage.to} % moisture`
}

/** Where glue lines lie, and how many feather edges they leave; nothing where there are none. */
function glueLinesText({ glueUp }: Plan['blank'], style: LengthStyle): string | undefined {
  if (!glueUp) return undefined
  const { lines, feathers } = glueUp
  const off = lines.map((line) => (line === 0 ? 'on the axis' : `${lengthText(line, style)} off the axis`))
  return `${off.join(', ')}; ${feathers.length === 0 ? 'no feather edges' : countText(feathers.length, 'feather edge')}`
}

const blank: Lines = ({ blank, job }, { style }) => {
  const length = (mm: number) => lengthText(mm, style)
  const fits = blank.lathes.map(({ name, fits, why }) =>
    fits ? `fits ${name}` : `does not fit ${name}: ${why.join(' ')}`,
  )
  return [
    ...heading('Blank'),
    ...pairs([
      [
        'on the lathe',
        `${length(blank.side)} square × ${length(blank.length)}${blank.mass === undefined ? '' : `, ${massText(blank.mass)}`}, diagonal ${length(blank.diagonal)}`,
      ],
      ['ripped to', `${length(blank.sawn)}${blank.layers > 1 ? `, glued of ${blank.layers} layers` : ''}`],
      ['drying', dryingText(blank, style)],
      ['glue lines', glueLinesText(blank, style)],
      [
        'stock',
        blank.nominal
          ? `${blank.nominal} (${length(blank.thickness)} rough)`
          : 'none thick enough that the shop can get',
      ],
      ['from one blank', blank.stock.perBlank > 1 ? countText(blank.stock.perBlank, 'piece') : undefined],
      [
        'blanks',
        `${blank.count}: ${blank.need} needed and ${countText(blank.spares, 'spare')}${blank.practice > 0 ? `; besides ${blank.practice} of cheap wood to practise on` : ''}`,
      ],
      ['mounted by', job.mount],
      ['lathes', fits.join('; ')],
    ]),
    ...blank.cautions.flatMap((text) => paragraph(text, { lead: '  ! ' })),
  ]
}

const lumber: Lines = ({ cut, boardFeet, yard }, { style }) => [
  ...heading('Lumber'),
  ...pairs([
    ['in blanks', `${boardFeet.blanks.toFixed(2)} board feet`],
    ['on hand', boardFeet.onHand === undefined ? undefined : `${boardFeet.onHand.toFixed(2)} board feet`],
    [
      'bought',
      `${boardFeet.bought.toFixed(2)} board feet, ${boardFeet.tallied.toFixed(2)} by tally; ${percent(cut.yield)} of it in blanks`,
    ],
    [
      'ask the yard',
      `${yard.boardFeet.ask.toFixed(0)} board feet of ${yard.gradeName}${yard.nominal ? ` ${yard.nominal}` : ''}, at least ${lengthText(yard.leastWidth, style)} wide: ${percent(yard.geometricYield)} by the cut, ${percent(yard.gradeYield)} by the grade, ${percent(yard.extra)} over`,
    ],
  ]),
  ...yard.notes.flatMap((note) => paragraph(note, { lead: '  - ' })),
  '',
  ...cutLines(cut, style),
]

const rpmText = ({ rpm, rpmCeiling }: Operation): string =>
  rpm !== undefined ? String(Math.floor(rpm)) : rpmCeiling !== undefined ? 'none' : ''

const minutes = (n: number): string => (n > 0 ? n.toFixed(1) : '')

const work: Lines = ({ operations, passes, calipers }, { style }) => {
  const unit = unitOf(style)
  const columns = [
    { head: '#', width: 3, align: 'right' as const },
    { head: 'operation', width: 27 },
    { head: 'tool', width: 17 },
    { head: 'rpm', width: 5, align: 'right' as const },
    { head: `caliper ${unit}`, width: 9, align: 'right' as const },
    { head: 'min once', width: 6, align: 'right' as const },
    { head: 'min each', width: 6, align: 'right' as const },
  ]
  const rows = operations.map((operation, i) => ({
    cells: [
      String(i + 1),
      operation.name,
      operation.tool,
      rpmText(operation),
      operation.caliper === undefined ? '' : lengthFigure(operation.caliper, style),
      minutes(operation.minutesOnce),
      minutes(operation.minutesEach),
    ],
    caution: operation.caution,
  }))
  const settings = calipers.order.map((mm) => lengthText(mm, style)).join(', ')
  return [
    ...heading('Order of work'),
    ...table(columns, rows),
    '',
    ...paragraph(`Minutes each are for one blank. Mountings: ${passes.chosen}; ${passes.why}`),
    ...(settings
      ? paragraph(`Calipers in order: ${settings}; ${countText(calipers.total, 'setting')} over the batch.`)
      : []),
    ...(calipers.gauges?.pays ? paragraph(`Preset gauges: ${calipers.gauges.why}`) : []),
  ]
}

const edges: Lines = ({ grinding, sanding, finish }) => [
  ...heading('Sharpening, sanding, finish'),
  ...table(
    [
      { head: 'tool', width: 32 },
      { head: 'pieces between', width: 9, align: 'right' },
      { head: 'touch-ups', width: 9, align: 'right' },
      { head: 'regrinds', width: 9, align: 'right' },
      { head: 'cutting min', width: 8, align: 'right' },
      { head: 'grinding min', width: 8, align: 'right' },
    ],
    grinding.map((edge) => ({
      cells: [
        edge.tool,
        edge.piecesBetween.toFixed(1),
        String(edge.touchUps),
        String(edge.regrinds),
        edge.minutesCutting.toFixed(0),
        edge.minutes.toFixed(0),
      ],
    })),
  ),
  '',
  ...paragraph(
    `Sand with ${sanding.grits.join(', ')} grit${sanding.rpm === undefined ? '' : ` at ${Math.floor(sanding.rpm)} rpm`}, ${minutesText(sanding.minutesEach)} each. ${sanding.why}`,
  ),
  ...paragraph(
    finish.kind === 'none'
      ? `No finish. ${finish.why}`
      : `Finish: ${finish.kind}, ${countText(finish.coats, 'coat')}${finish.onLathe ? ' on the lathe' : ''}, ${finish.dryHours} h to dry. ${finish.why}`,
  ),
  ...(finish.caution ? paragraph(finish.caution, { lead: '  ! ' }) : []),
]

const time: Lines = ({ time }) => [
  ...heading('Time'),
  ...pairs([
    [
      'the batch',
      `${minutesText(time.minutes)}; one batch in ten is done in ${minutesText(time.p10)}, half in ${minutesText(time.p50)}, nine in ten in ${minutesText(time.p90)}`,
    ],
    [
      'a piece',
      `${minutesText(time.perPiece)}, set-up and spares among it; the first ${minutesText(time.first)}, the last ${minutesText(time.last)}`,
    ],
    [
      'by stage',
      Object.entries(time.byStage)
        .filter(([, n]) => n > 0)
        .map(([stage, n]) => `${stage} ${minutesText(n)}`)
        .join(', '),
    ],
    ['to packed', `${elapsedText(time.elapsed)}: ${time.elapsed.why}`],
    ['rests on', time.trust?.why],
  ]),
]

const price: Lines = ({ quote }) =>
  quote === undefined
    ? []
    : [
        ...heading(`Price in ${quote.currency}`),
        ...table(
          [
            { head: '', width: 22 },
            { head: quote.currency, width: 12, align: 'right' },
            { head: '', width: 43 },
          ],
          [
            ...quote.lines.map(({ name, amount, why }) => ({ cells: [name, amount.toFixed(2), why] })),
            {
              cells: [
                'Total',
                quote.total.toFixed(2),
                `${quote.perPiece.toFixed(2)} ${quote.currency} a piece`,
              ],
            },
          ],
        ),
        ...quote.cautions.flatMap((text) => paragraph(text, { lead: '  ! ' })),
      ]

/** What is to be minded besides what stands beside its figure above. */
const toldAbove = ['blank', 'lumber', 'work', 'finish', 'price']

const cautions: Lines = ({ cautions, stair }) => {
  const told = stair ? [...toldAbove, 'stair'] : toldAbove
  const others = cautions.filter(({ about }) => !told.includes(about))
  if (others.length === 0) return []
  return [
    ...heading('Cautions'),
    ...others.flatMap(({ about, text }) => paragraph(`${about}: ${text}`, { lead: '  ! ' })),
  ]
}

const stair: Lines = (plan, { style }) => stairLines(plan, style)

/** A plan for a person to read and print, 80 characters wide; every figure with its unit. */
export function planText(plan: Plan, text: PlanText): string {
  const parts = [title, part, stair, blank, lumber, work, edges, time, price, cautions]
  return `${parts.flatMap((lines) => lines(plan, text)).join('\n')}\n`
}
