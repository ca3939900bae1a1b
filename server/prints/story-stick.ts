import type { Plan } from '../../shared/plan.ts'
import { lengthText } from '../../shared/units/length.ts'
import { countText } from './figures.ts'
import { handsOf } from './hands.ts'
import { joinLine, joinWords } from './joins.ts'
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
import { sheetFor, windowOf } from './sheet.ts'
import { FACE_MM, STRIP_MM, type Strip, stripOf } from './story-strip.ts'
import { drawStrip } from './story-strip-drawing.ts'
import { OVERLAP_MM, stripWindow, type Tile, type Tiling, tilesOf } from './tiles.ts'

/** Below a length of the strip, for what it is and where it is joined, mm; and free between two of them. */
const WORDS_MM = 6
const GAP_MM = 4

/**
 * A strip of true length to be folded over the edge of a stick: lines on both faces, with running lengths from
 * the foot on the one, from the top and by name on the other.
 */
export function storyStickPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const strip = stripOf(plan)
  const drawing = { width: strip.length, height: STRIP_MM + WORDS_MM }
  const sheet = sheetFor(options.paper, drawing)
  const print = openPrint('Story stick 1:1', plan, options, { layout: 'landscape', foot: scaleCheck, sheet })
  const window = windowOf(options.paper, sheet)
  const longest = stripWindow(strip.length, window.width)
  const tiling = tilesOf(strip.length, STRIP_MM, { width: longest, height: STRIP_MM })
  const perSheet = Math.max(1, Math.floor((window.height + GAP_MM) / (drawing.height + GAP_MM)))
  for (let first = 0; first < tiling.tiles.length; first += perSheet) {
    if (first > 0) newPage(print, sheet)
    const lengths = tiling.tiles.slice(first, first + perSheet)
    lengths.forEach((tile, i) => {
      drawLength(print, strip, tiling, tile, {
        y: print.box.top + pt(2 + i * (drawing.height + GAP_MM)),
        wide: Math.min(longest, strip.length - tile.x),
      })
    })
    sheetWords(print, tiling, lengths)
  }
  return finishPrint(print)
}

/** One length of the strip with its top at `y` points, `wide` mm of it. */
function drawLength(
  print: Print,
  strip: Strip,
  tiling: Tiling,
  tile: Tile,
  { y, wide }: { y: number; wide: number },
): void {
  const { doc, box, options, plan } = print
  const [from, to] = [tile.x, tile.x + wide]
  const half = OVERLAP_MM / 2
  const [before, after] = [tiling.tiles[tile.column - 1], tiling.tiles[tile.column + 1]]
  doc.save()
  doc.rect(box.left - 0.4, y - 1, pt(wide) + 0.8, pt(STRIP_MM) + 2).clip()
  doc.translate(box.left - pt(from), y)
  const unwritten = drawStrip(doc, strip, options.style, {
    name: handsOf(plan.job).length > 1 ? `${plan.job.name}; faces are those of the left hand` : plan.job.name,
    sheet: [from, to],
    own: [before ? from + half : from, after ? to - half : to],
  })
  doc.restore()
  for (const [other, x, words] of [
    [before, box.left + pt(half), box.left + 1],
    [after, box.left + pt(wide - half), box.left + pt(wide - half) + 1],
  ] as const) {
    if (!other) continue
    joinLine(print, [x, y], [x, y + pt(STRIP_MM)], [0.06, 0.94])
    joinWords(print, `join ${tile.label} to ${other.label}`, words, y + pt(FACE_MM - 4), true)
  }
  lengthWords(print, tiling, tile, unwritten, y + pt(STRIP_MM + 1))
}

function lengthWords(print: Print, { tiles }: Tiling, tile: Tile, unwritten: number, y: number): void {
  const { doc, box } = print
  const of = tiles.length === 1 ? 'the only one' : `of ${tiles[0]!.label} to ${tiles.at(-1)!.label}`
  const missing = unwritten > 0 ? ` · ${countText(unwritten, 'line')} without figures: see the pattern` : ''
  ink(doc, 'bold', BENCH_PT)
  line(doc, `Strip ${tile.label}, ${of}${missing}`, box.left, y)
}

function sheetWords(print: Print, { tiles }: Tiling, lengths: Tile[]): void {
  const { doc, box, plan, options } = print
  const names = lengths.map(({ label }) => label).join(', ')
  const words =
    tiles.length === 1 ? 'Strip in one length' : `${lengths.length > 1 ? 'Strips' : 'Strip'} ${names}`
  ink(doc, 'bold', 12)
  line(doc, words, box.right - doc.widthOfString(words), box.bottom)
  const under = `blank ${lengthText(plan.blank.length, options.style)} long`
  ink(doc, 'plain', BENCH_PT)
  line(doc, under, box.right - doc.widthOfString(under), box.bottom + FOOT_PT - 11)
}
