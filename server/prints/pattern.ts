import type { Plan } from '../../shared/plan.ts'
import { samePlace } from '../../shared/profile/profile.ts'
import { lengthFigure, lengthText } from '../../shared/units/length.ts'
import { countText, sizeText, unitOf } from './figures.ts'
import { heading } from './flow.ts'
import {
  type Drawing,
  drawingsOf,
  drawPattern,
  type PatternSource,
  patternSource,
  stationFigures,
} from './pattern-drawing.ts'
import {
  BENCH_PT,
  FOOT_PT,
  finishPrint,
  ink,
  line,
  newPage,
  openPrint,
  type Print,
  type PrintOptions,
  pt,
} from './print.ts'
import { scaleCheck } from './scale-check.ts'
import { type Row, table } from './table.ts'
import { OVERLAP_MM, type Tile, type Tiling, tilesOf } from './tiles.ts'

/** The profile at its true size over as many sheets as it takes, then its stations as a table. */
export function patternPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Pattern 1:1', plan, options, { layout: 'landscape', foot: scaleCheck })
  const source = patternSource(plan.job.profile, plan.job.joints, options.style)
  const { box } = print
  const window = { width: (box.right - box.left) / pt(1), height: (box.bottom - box.top) / pt(1) }
  let started = false
  for (const drawing of drawingsOf(source, window.height)) {
    const tiling = tilesOf(drawing.width, drawing.height, window)
    for (const tile of tiling.tiles) {
      if (started) newPage(print)
      started = true
      drawSheet(print, source, drawing, tiling, tile, window)
    }
  }
  newPage(print)
  stationTable(print, source, plan)
  return finishPrint(print)
}

function drawSheet(
  print: Print,
  source: PatternSource,
  drawing: Drawing,
  tiling: Tiling,
  tile: Tile,
  window: { width: number; height: number },
): void {
  const { doc, box } = print
  // A drawing that needs one sheet only stands in the middle of it.
  const spare = tiling.columns === 1 ? Math.max(0, (window.width - drawing.width) / 2) : 0
  const [from, to] = [tile.x - spare, tile.x - spare + window.width]
  const joined = OVERLAP_MM / 2
  const own: [number, number] = [
    tile.column > 0 ? from + joined : from,
    tile.column < tiling.columns - 1 ? to - joined : Number.POSITIVE_INFINITY,
  ]
  doc.save()
  doc.rect(box.left, box.top, box.right - box.left, box.bottom - box.top).clip()
  doc.translate(box.left - pt(from), box.top - pt(tile.y))
  drawPattern(doc, source, drawing, from, to)
  const unwritten = tile.row === 0 ? stationFigures(doc, source, drawing, own[0], Math.min(own[1], to)) : 0
  doc.restore()
  joinLines(print, tiling, tile)
  sheetLabel(print, drawing, tiling, tile, unwritten)
}

/** Where this sheet meets its neighbours: dashed lines with crosses, the middle of the overlap on both sheets. */
function joinLines(print: Print, tiling: Tiling, tile: Tile): void {
  const { box } = print
  const half = pt(OVERLAP_MM / 2)
  const neighbour = (row: number, column: number) =>
    tiling.tiles.find((other) => other.row === row && other.column === column)?.label
  const middle = (a: number, b: number, t: number) => a + (b - a) * t
  for (const [step, x] of [
    [-1, box.left + half],
    [1, box.right - half],
  ] as const) {
    const label = neighbour(tile.row, tile.column + step)
    if (!label) continue
    dashed(print, x, box.top, x, box.bottom)
    for (const t of [0.08, 0.95]) cross(print, x, middle(box.top, box.bottom, t))
    joinWords(
      print,
      `join ${tile.label} to ${label}`,
      step < 0 ? box.left + 1 : x + 1,
      middle(box.top, box.bottom, 0.36),
      true,
    )
  }
  for (const [step, y] of [
    [-1, box.top + half],
    [1, box.bottom - half],
  ] as const) {
    const label = neighbour(tile.row + step, tile.column)
    if (!label) continue
    dashed(print, box.left, y, box.right, y)
    for (const t of [0.2, 0.8]) cross(print, middle(box.left, box.right, t), y)
    joinWords(
      print,
      `join ${tile.label} to ${label}`,
      middle(box.left, box.right, 0.5),
      step < 0 ? box.top + 1 : y + 1,
      false,
    )
  }
}

function dashed({ doc }: Print, x0: number, y0: number, x1: number, y1: number): void {
  doc
    .lineWidth(pt(0.15))
    .dash(pt(2), { space: pt(2) })
    .moveTo(x0, y0)
    .lineTo(x1, y1)
    .stroke('#000')
    .undash()
}

function cross({ doc }: Print, x: number, y: number): void {
  const arm = pt(4)
  doc
    .lineWidth(pt(0.15))
    .moveTo(x - arm, y)
    .lineTo(x + arm, y)
    .moveTo(x, y - arm)
    .lineTo(x, y + arm)
    .stroke('#000')
  doc.circle(x, y, pt(2)).stroke('#000')
}

function joinWords({ doc }: Print, words: string, x: number, y: number, upwards: boolean): void {
  doc.save()
  if (upwards) doc.rotate(-90, { origin: [x, y] })
  ink(doc, 'plain', BENCH_PT)
  line(doc, words, x, y)
  doc.restore()
}

function sheetLabel(print: Print, drawing: Drawing, { tiles }: Tiling, tile: Tile, unwritten: number): void {
  const { doc, box } = print
  const words =
    tiles.length === 1
      ? 'Sheet A1, the only one'
      : `Sheet ${tile.label} of ${tiles[0]!.label} to ${tiles.at(-1)!.label}`
  const under = unwritten > 0 ? `${countText(unwritten, 'station')} in the table only` : drawing.shows
  ink(doc, 'bold', 12)
  line(doc, words, box.right - doc.widthOfString(words), box.bottom)
  ink(doc, 'plain', BENCH_PT)
  line(doc, under, box.right - doc.widthOfString(under), box.bottom + FOOT_PT - 11)
}

function stationTable(print: Print, source: PatternSource, plan: Plan): void {
  const { style } = source
  const unit = unitOf(style)
  heading(print, `Stations, running lengths from the foot; whole length ${lengthText(source.length, style)}`)
  const { stations } = plan.job.profile
  const rows = stations.map((station, i): Row => {
    const last = i === stations.length - 1
    const step = !last && samePlace(stations[i + 1]!.at, station.at)
    const checked = plan.checkStations.filter((check) => check.key === (station.key ?? `s${i}`))
    const cautions = checked.flatMap(({ caution }) => caution ?? [])
    return {
      cells: [
        String(i),
        `${lengthFigure(station.at, style)} ${unit}`,
        station.diameter === undefined ? '' : `⌀ ${lengthText(station.diameter, style)}`,
        station.then === 'square' && station.side !== undefined ? `□ ${lengthText(station.side, style)}` : '',
        last ? 'top' : step ? 'step' : spanWords(station.then, station.rise ?? station.depth, style),
        [station.name, station.fixed || station.tenon ? 'fixed size' : ''].filter(Boolean).join(', '),
      ],
      cautions,
    }
  })
  table(
    print,
    [
      { head: 'No.', share: 5 },
      { head: 'From the foot', share: 14, align: 'right' },
      { head: 'Diameter', share: 14, align: 'right', face: 'bold' },
      { head: 'Side', share: 14, align: 'right', face: 'bold' },
      { head: 'Then', share: 20 },
      { head: 'Name', share: 33 },
    ],
    rows,
  )
  jointTable(print, plan, style)
}

function spanWords(shape: string, sagitta: number | undefined, style: PatternSource['style']): string {
  if (sagitta === undefined || (shape !== 'bead' && shape !== 'cove')) return shape
  return `${shape}, ${shape === 'bead' ? 'rise' : 'depth'} ${lengthText(sagitta, style)}`
}

function jointTable(print: Print, { job }: Plan, style: PatternSource['style']): void {
  if (job.joints.length === 0) return
  heading(print, 'Joints')
  table(
    print,
    [
      { head: 'Joint', share: 14 },
      { head: 'Middle from the foot', share: 20, align: 'right' },
      { head: 'Face', share: 12 },
      { head: 'Size (across × along)', share: 24, align: 'right', face: 'bold' },
      { head: 'Depth', share: 14, align: 'right' },
      { head: 'Cut', share: 16 },
    ],
    job.joints.map((joint) => ({
      cells: [
        joint.kind,
        lengthText(joint.at, style),
        joint.angle === undefined ? (joint.face ?? 'A') : `${joint.angle}° from face A`,
        `${joint.kind === 'hole' && joint.size.length === 1 ? '⌀ ' : ''}${sizeText(joint.size, style)}`,
        lengthText(joint.depth, style),
        joint.stage === 'square' ? 'before turning' : 'after turning',
      ],
    })),
  )
}
