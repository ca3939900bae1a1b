import type { Plan } from '../../shared/plan.ts'
import { countText } from './figures.ts'
import { joinLine, joinWords } from './joins.ts'
import { isRoll } from './paper.ts'
import { drawPattern, stationFigures } from './pattern-drawing.ts'
import { type Drawing, drawingsOf } from './pattern-layout.ts'
import { sectionViews } from './pattern-sections.ts'
import { type PatternSource, patternSource } from './pattern-source.ts'
import { patternTables } from './pattern-tables.ts'
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
  wordsRight,
} from './print.ts'
import { scaleCheck } from './scale-check.ts'
import { sheetFor, windowOf } from './sheet.ts'
import { OVERLAP_MM, type Tile, type Tiling, tilesOf } from './tiles.ts'

/**
 * The profile at its true size over as many sheets as it takes, then its stations as a
 * table and its joints from the top.
 */
export function patternPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const source = patternSource(plan, options.style)
  const drawings = drawingsOf(source, windowOf(options.paper, 'highest').height)
  const print = openPrint('Pattern 1:1', plan, options, {
    layout: 'landscape',
    foot: scaleCheck,
    sheet: sheetFor(options.paper, drawings[0]!),
  })
  drawings.forEach((drawing, i) => {
    drawSheets(print, source, drawing, i === 0)
  })
  wordsBelow(print, drawings.at(-1)!)
  patternTables(print, source)
  sectionViews(print, source)
  return finishPrint(print)
}

function drawSheets(print: Print, source: PatternSource, drawing: Drawing, opened: boolean): void {
  const sheet = sheetFor(print.options.paper, drawing)
  if (!opened) newPage(print, sheet)
  const window = windowOf(print.options.paper, sheet)
  const tiling = tilesOf(drawing.width, drawing.height, window)
  for (const tile of tiling.tiles) {
    if (tile !== tiling.tiles[0]) newPage(print, sheet)
    drawSheet(print, source, drawing, tiling, tile, window)
  }
}

/** Words go on below a drawing where a roll leaves room, else on a sheet of their own. */
function wordsBelow(print: Print, drawing: Drawing): void {
  const below = print.box.top + pt(drawing.height) + 14
  if (!isRoll(print.options.paper) || below + pt(60) > print.box.bottom) {
    newPage(print)
    return
  }
  print.box = { ...print.box, top: below, right: wordsRight(print, print.box) }
  print.y = below
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
    joinLine(print, [x, box.top], [x, box.bottom], [0.08, 0.95])
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
    joinLine(print, [box.left, y], [box.right, y], [0.2, 0.8])
    joinWords(
      print,
      `join ${tile.label} to ${label}`,
      middle(box.left, box.right, 0.5),
      step < 0 ? box.top + 1 : y + 1,
      false,
    )
  }
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
