import type { Joint } from '../../shared/job.ts'
import { arcRadius } from '../../shared/profile/arc-radius.ts'
import { type Span, type Station, samePlace } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { countText, lookText, rangeText, sizeText } from './figures.ts'
import { heading, paragraph } from './flow.ts'
import type { PatternSource } from './pattern-source.ts'
import type { Print } from './print.ts'
import { type Column, type Row, table } from './table.ts'

/** Where the part lies in its blank, all stations, and all joints, in figures. */
export function patternTables(print: Print, source: PatternSource): void {
  heading(
    print,
    `Stations, running lengths from the foot; whole length ${lengthText(source.length, source.style)}`,
  )
  paragraph(print, blankWords(print))
  table(
    print,
    [
      { head: 'No.', share: 5 },
      { head: 'From the foot', share: 14, align: 'right' },
      { head: 'Diameter', share: 14, align: 'right', face: 'bold' },
      { head: 'Side', share: 13, align: 'right', face: 'bold' },
      { head: 'Then', share: 34 },
      { head: 'Name', share: 20 },
    ],
    stationRows(print, source),
  )
  jointTable(print, source)
}

/** How the pattern is laid on the blank. */
function blankWords({ plan, options: { style } }: Print): string {
  const { lengthParts, length, stock, side } = plan.blank
  const { foot, top } = lengthParts
  const size = `Blank ${lengthText(side, style)} square × ${lengthText(length, style)}`
  const parts = stock.perBlank > 1 ? ` for ${countText(stock.perBlank, 'part')}` : ''
  const [atFoot, atTop] = [foot, top].map((waste) => lengthText(waste, style))
  return `${size}${parts}: the foot line lies ${atFoot} from its end, the top line ${atTop} from the other.`
}

function stationRows({ plan }: Print, { style, spans }: PatternSource): Row[] {
  const { stations } = plan.job.profile
  return stations.map((station, i) => {
    const next = stations[i + 1]
    const step = next !== undefined && samePlace(next.at, station.at)
    const checked = plan.checkStations.filter((check) => check.key === (station.key ?? `s${i}`))
    const span = spans.find(({ index }) => index === i)
    return {
      cells: [
        String(i),
        lengthText(station.at, style),
        station.diameter === undefined ? '' : `⌀ ${lengthText(station.diameter, style)}`,
        station.then === 'square' && station.side !== undefined ? `□ ${lengthText(station.side, style)}` : '',
        next === undefined ? 'top' : step ? 'step' : spanWords(station, span, style),
        [station.name, station.fixed || station.tenon ? 'fixed size' : ''].filter(Boolean).join(', '),
      ],
      cautions: checked.flatMap(({ caution }) => caution ?? []),
    }
  })
}

/** The shape with the radius of its circle, where it has one, and with how far a bead or cove stands off. */
function spanWords({ then }: Station, span: Span | undefined, style: LengthStyle): string {
  const radius = span && arcRadius(span)
  return [
    then,
    ...(radius === undefined ? [] : [`radius ${lengthText(radius, style)}`]),
    ...(span?.sagitta === undefined
      ? []
      : [`${then === 'bead' ? 'rise' : 'depth'} ${lengthText(span.sagitta, style)}`]),
  ].join(', ')
}

function jointTable(print: Print, { hands, style }: PatternSource): void {
  const [own, other] = hands
  if (own.joints.length === 0) return
  heading(print, 'Joints')
  const faceColumns: Column[] = other
    ? [
        { head: 'Face, left hand', share: 15, face: 'bold' },
        { head: 'Face, right hand', share: 15, face: 'bold' },
      ]
    : [{ head: 'Face', share: 16, face: 'bold' }]
  table(
    print,
    [
      { head: 'Joint', share: 12 },
      { head: 'From the foot', share: 24, align: 'right' },
      { head: 'Middle', share: 14, align: 'right' },
      ...faceColumns,
      { head: 'Size (across × along)', share: 24, align: 'right', face: 'bold' },
      { head: 'Depth', share: 12, align: 'right' },
      { head: 'Cut', share: 16 },
    ],
    own.joints.map((joint, i) => ({
      cells: [
        joint.kind,
        reachText(joint, style),
        lengthText(joint.at, style),
        lookText(joint),
        ...(other ? [lookText(other.joints[i]!)] : []),
        `${joint.kind === 'hole' && joint.size.length === 1 ? '⌀ ' : ''}${sizeText(joint.size, style)}`,
        lengthText(joint.depth, style),
        joint.stage === 'square' ? 'before turning' : 'after turning',
      ],
    })),
  )
}

/** From where to where a mortise is cut. */
function reachText({ kind, at, size }: Joint, style: LengthStyle): string {
  if (kind !== 'mortise') return ''
  const half = (size[1] ?? size[0]!) / 2
  return rangeText([at - half, at + half], style)
}
