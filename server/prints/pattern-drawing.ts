import type { Span } from '../../shared/profile/profile.ts'
import { spanSection } from '../../shared/profile/radius.ts'
import { halfFlat } from '../../shared/profile/section.ts'
import { lengthText, nm } from '../../shared/units/length.ts'
import { hatch } from './hatch.ts'
import { drawJoints } from './pattern-joints.ts'
import { type Drawing, END, LEAD } from './pattern-layout.ts'
import type { PatternSource } from './pattern-source.ts'
import { thicknessesText } from './positions.ts'
import { BENCH_PT, ink, line, pt } from './print.ts'
import { placedFigures, upright, writeUpright } from './upright.ts'

const OUTLINE_MM = 0.25

/** Draws what lies between `from` and `to` (mm along the drawing); the page's origin is the drawing's. */
export function drawPattern(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  drawing: Drawing,
  from: number,
  to: number,
): void {
  doc.lineJoin('round').lineCap('butt')
  if (drawing.stick) drawStick(doc, drawing)
  drawing.starts.forEach((start, i) => {
    doc.save().translate(pt(start), 0)
    drawPart(doc, source, drawing, from - start, to - start)
    if (drawing.stick && drawing.full !== undefined) partNumber(doc, source, drawing.full, i + 1)
    doc.restore()
  })
}

/** One part, its foot at `END`. */
function drawPart(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  drawing: Drawing,
  from: number,
  to: number,
): void {
  const { full, half, joints, eye } = drawing
  stationLines(doc, source, drawing, from, to)
  if (full !== undefined) {
    axis(doc, source, full)
    squares(doc, source, full, from, to)
    drawJoints(doc, source, joints, { y: full, eye })
    outlinePath(doc, source, full, from, to, -1)
    outlinePath(doc, source, full, from, to, 1)
    if (!drawing.stick) endWords(doc, source, full)
  }
  if (half !== undefined) {
    outlinePath(doc, source, half, from, to, -1)
    doc
      .lineWidth(pt(OUTLINE_MM))
      .moveTo(pt(END), pt(half))
      .lineTo(pt(END + source.length), pt(half))
    doc.stroke('#000')
    if (source.profile.split) glueWords(doc, source, half)
    endWords(doc, source, half - 3)
  }
}

/** The part of the outline that reaches into `from` … `to`, closed at foot and top; `side` −1 above the axis. */
function outlinePath(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  y: number,
  from: number,
  to: number,
  side: -1 | 1,
): void {
  const { outline } = source
  const first = Math.max(outline.findIndex((p) => p.x + END >= from) - 1, 0)
  const beyond = outline.findIndex((p) => p.x + END > to)
  const last = beyond < 0 ? outline.length - 1 : beyond
  if (first === 0) doc.moveTo(pt(END), pt(y))
  for (let i = first; i <= last; i++) {
    const { x, r } = outline[i]!
    if (i === first && first > 0) doc.moveTo(pt(x + END), pt(y + side * r))
    else doc.lineTo(pt(x + END), pt(y + side * r))
  }
  if (last === outline.length - 1) doc.lineTo(pt(source.length + END), pt(y))
  doc.lineWidth(pt(OUTLINE_MM)).stroke('#000')
}

/** The axis; of a glued pair it is the glue line, seen on edge. */
function axis(doc: PDFKit.PDFDocument, { length, profile }: PatternSource, y: number): void {
  const [wide, colour] = profile.split ? [0.35, '#000'] : [0.15, '#444']
  doc.lineWidth(pt(wide)).dash(pt(6), { space: pt(1.5) })
  doc
    .moveTo(pt(END - 4), pt(y))
    .lineTo(pt(END + length + 4), pt(y))
    .stroke(colour)
    .undash()
  if (profile.split) glueWords(doc, { length }, y)
}

/** Says of a line that it is the glue line, often enough that most sheets have it. */
function glueWords(doc: PDFKit.PDFDocument, { length }: Pick<PatternSource, 'length'>, y: number): void {
  ink(doc, 'bold', BENCH_PT)
  const [step, word] = [120, 22]
  for (let x = Math.min(length, step) / 4; x + word < length; x += step)
    line(doc, 'glue line', pt(END + x), pt(y) - 13)
}

function endWords(doc: PDFKit.PDFDocument, { length }: PatternSource, y: number): void {
  for (const [word, x] of [
    ['foot', END - 5.2],
    ['top', END + length + 1.4],
  ] as const) {
    ink(doc, 'plain', BENCH_PT)
    upright(doc, pt(x), pt(y) - 2, () => line(doc, word, pt(x) + 4, pt(y) - 2))
  }
}

function stationLines(
  doc: PDFKit.PDFDocument,
  { positions }: PatternSource,
  drawing: Drawing,
  from: number,
  to: number,
): void {
  const bottom = drawing.half ?? drawing.height - 1
  for (const { at } of positions) {
    const x = at + END
    if (x < from || x > to) continue
    doc
      .lineWidth(pt(0.12))
      .moveTo(pt(x), pt(drawing.band + LEAD - 2))
      .lineTo(pt(x), pt(bottom))
      .stroke('#444')
  }
}

/** The blank as it is sawn, and hatched what is parted off between the parts. */
function drawStick(doc: PDFKit.PDFDocument, { stick, full }: Drawing): void {
  if (!stick || full === undefined) return
  const [top, high] = [full - stick.side / 2, stick.side]
  doc.lineWidth(pt(0.25)).dash(pt(4), { space: pt(2) })
  doc.rect(pt(END), pt(top), pt(stick.length), pt(high)).stroke('#000').undash()
  for (const [from, to] of stick.gaps)
    hatch(doc, { x: END + from, y: top, width: to - from, height: high }, 3)
}

function partNumber(doc: PDFKit.PDFDocument, { length }: PatternSource, y: number, number: number): void {
  const words = String(number)
  ink(doc, 'bold', 20)
  const wide = doc.widthOfString(words)
  const x = pt(END + length / 2) - wide / 2
  doc.rect(x - 3, pt(y) - 13, wide + 6, 26).fill('#fff')
  ink(doc, 'bold', 20)
  line(doc, words, x, pt(y) - 12)
}

/** Faces left square: their diagonals, where a rounded shoulder meets the face, and the side in figures. */
function squares(doc: PDFKit.PDFDocument, source: PatternSource, y: number, from: number, to: number): void {
  for (const span of source.spans) {
    if (span.shape !== 'square' || span.to + END < from || span.from + END > to) continue
    const side = span.d0
    doc.lineWidth(pt(0.12)).dash(pt(3), { space: pt(1.5) })
    for (const slope of [-1, 1]) {
      doc
        .moveTo(pt(span.from + END), pt(y - (slope * side) / 2))
        .lineTo(pt(span.to + END), pt(y + (slope * side) / 2))
      doc.stroke('#666')
    }
    doc.undash()
    shoulderCurve(doc, span, y)
    sideWords(doc, source, span, y, Math.max(from, span.from + END), Math.min(to, span.to + END))
  }
}

/** The line where a rounded shoulder runs out on the face, seen square on: as high as the flat that is left. */
function shoulderCurve(doc: PDFKit.PDFDocument, span: Span, y: number): void {
  const steps = 400
  for (const [reach, start, step] of [
    [span.rounding?.[0] ?? 0, span.from, 1],
    [span.rounding?.[1] ?? 0, span.to, -1],
  ] as const) {
    if (reach === 0) continue
    for (const up of [-1, 1]) {
      doc.moveTo(pt(start + END), pt(y))
      for (let i = 1; i <= steps; i++) {
        const x = start + step * reach * (i / steps)
        doc.lineTo(pt(x + END), pt(y + up * halfFlat(spanSection(span, x))))
      }
      doc.lineWidth(pt(0.18)).stroke('#000')
    }
  }
}

function sideWords(
  doc: PDFKit.PDFDocument,
  { style }: PatternSource,
  span: Span,
  y: number,
  from: number,
  to: number,
): void {
  const side = span.d0
  const words = `□ ${lengthText(side, style)} square`
  ink(doc, 'bold', BENCH_PT)
  const wide = doc.widthOfString(words) + 8
  if (wide > pt(to - from) || side < 6) return
  // Below the axis, where a joint in the middle of the face leaves room.
  const [x, middle] = [pt((from + to) / 2) - wide / 2, pt(side < 24 ? y : y + side / 3.5)]
  doc.rect(x, middle - 7, wide, 14).fill('#fff')
  ink(doc, 'bold', BENCH_PT)
  line(doc, words, x + 4, middle - 6)
}

/**
 * Writes the figures of the stations between `from` and `to` above the profile, each led to its line.
 * @returns how many stations there was no room for
 */
export function stationFigures(
  doc: PDFKit.PDFDocument,
  { style }: PatternSource,
  { band, positions }: Drawing,
  from: number,
  to: number,
): number {
  const here = positions.filter(({ at }) => nm(at + END) >= nm(from) && nm(at + END) < nm(to))
  const room = pt(band) - 4
  const { type, placed, unwritten } = placedFigures(
    doc,
    here.map((position) => ({
      x: position.at + END,
      weight: position.weight,
      lead: lengthText(position.at, style),
      figure: thicknessesText(position, style),
      name: position.name,
    })),
    [from, to],
    room,
  )
  for (const { figure, place } of placed) {
    doc
      .lineWidth(pt(0.12))
      .moveTo(pt(place), pt(band))
      .lineTo(pt(figure.x), pt(band + LEAD - 2))
      .stroke('#444')
    writeUpright(doc, figure, type, { x: pt(place), y: pt(band) - 2, room })
  }
  return unwritten
}
