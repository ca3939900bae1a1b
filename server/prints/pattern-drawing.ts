import type { Joint } from '../../shared/job.ts'
import { jointAngle, jointReach } from '../../shared/profile/joint-reach.ts'
import { type OutlinePoint, outlineOf, outlineRadius } from '../../shared/profile/outline.ts'
import { type Profile, type Span, spansOf } from '../../shared/profile/profile.ts'
import { sectionAt, spanSection } from '../../shared/profile/radius.ts'
import { halfFlat } from '../../shared/profile/section.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { type Position, positionsOf, thicknessesText } from './positions.ts'
import { BENCH_PT, fitted, ink, line, pt } from './print.ts'
import { spreadPlaces, weightiest } from './spread.ts'

/** A pattern at its own size, in mm: x from the foot plus `END`, y downwards. */
export interface Drawing {
  /** What it shows, for the sheet's label. */
  shows: string
  width: number
  height: number
  /** Room for the written station figures at the top. */
  band: number
  /** Where the axis of the full profile lies, and the straight edge of the half profile. */
  full?: number
  half?: number
}

/** What is drawn, once for all sheets. Lengths mm. */
export interface PatternSource {
  profile: Profile
  joints: Joint[]
  style: LengthStyle
  outline: OutlinePoint[]
  spans: Span[]
  positions: Position[]
  length: number
  radius: number
}

/** Room beyond both ends, mm. */
export const END = 6
/** Least and most room for the written station figures, and room for the lines that lead to them, mm. */
const BAND = 60
const BAND_MOST = 90
const LEAD = 6
const GAP = 6
/** Distance of one written figure from the next, mm. */
const PITCH = 4.4
const OUTLINE_MM = 0.25
/** The drawn or cut line is nowhere farther from the true one, mm. */
export const CHORD_MM = 0.005

export function patternSource(profile: Profile, joints: Joint[], style: LengthStyle): PatternSource {
  const outline = outlineOf(profile, CHORD_MM)
  return {
    profile,
    joints,
    style,
    outline,
    spans: spansOf(profile),
    positions: positionsOf(profile),
    length: outline.at(-1)!.x,
    radius: outlineRadius(outline),
  }
}

/** Full and half profile on one drawing where the paper is high enough, else one after the other. */
export function drawingsOf({ length, radius }: PatternSource, windowHeight: number): Drawing[] {
  const width = length + 2 * END
  const place = (below: number) => {
    const band = Math.min(Math.max(BAND, windowHeight - LEAD - below), BAND_MOST)
    return { width, band, height: band + LEAD + below, top: band + LEAD }
  }
  const both = place(3 * radius + GAP + 2)
  if (nm(both.height) <= nm(windowHeight)) {
    return [
      { ...both, shows: 'full and half profile', full: both.top + radius, half: both.top + 3 * radius + GAP },
    ]
  }
  const [full, half] = [place(2 * radius + 2), place(radius + 2)]
  return [
    { ...full, shows: 'full profile', full: full.top + radius },
    { ...half, shows: 'half profile', half: half.top + radius },
  ]
}

/** Draws what lies between `from` and `to` (mm along the drawing); the page's origin is the drawing's. */
export function drawPattern(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  drawing: Drawing,
  from: number,
  to: number,
): void {
  doc.lineJoin('round').lineCap('butt')
  stationLines(doc, source, drawing, from, to)
  if (drawing.full !== undefined) {
    axis(doc, source, drawing.full)
    squares(doc, source, drawing.full, from, to)
    joints(doc, source, drawing.full)
    outlinePath(doc, source, drawing.full, from, to, -1)
    outlinePath(doc, source, drawing.full, from, to, 1)
    endWords(doc, source, drawing.full)
  }
  if (drawing.half !== undefined) {
    outlinePath(doc, source, drawing.half, from, to, -1)
    doc
      .lineWidth(pt(OUTLINE_MM))
      .moveTo(pt(END), pt(drawing.half))
      .lineTo(pt(END + source.length), pt(drawing.half))
    doc.stroke('#000')
    endWords(doc, source, drawing.half - 3)
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

function axis(doc: PDFKit.PDFDocument, { length }: PatternSource, y: number): void {
  doc.lineWidth(pt(0.15)).dash(pt(6), { space: pt(1.5) })
  doc
    .moveTo(pt(END - 4), pt(y))
    .lineTo(pt(END + length + 4), pt(y))
    .stroke('#444')
    .undash()
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

/** Runs `draw` with the page turned so that text reads upwards from x, y (points). */
function upright(doc: PDFKit.PDFDocument, x: number, y: number, draw: () => void): void {
  doc.save().rotate(-90, { origin: [x, y] })
  draw()
  doc.restore()
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

/** Face nearest to where a joint looks, and what stands beside it on the drawing. */
function facing(joint: Joint): { face: 'A' | 'B' | 'C' | 'D'; label: string } {
  const quarters = Math.round((((jointAngle(joint) % 360) + 360) % 360) / 90) % 4
  const face = (['A', 'B', 'C', 'D'] as const)[quarters]!
  return { face, label: joint.angle === undefined ? face : `${joint.angle}°` }
}

/** Joints as seen on face A: those of A and C in view, those of B and D in depth from the edge. */
function joints(doc: PDFKit.PDFDocument, { joints, profile, spans }: PatternSource, y: number): void {
  for (const joint of joints) {
    const { kind, at, size, depth } = joint
    if (kind === 'tenon') continue
    const { face, label } = facing(joint)
    const { from, to } = jointReach(joint, spans)
    const [across, along] = [size[0]!, to - from]
    const { half, radius } = sectionAt(profile, at)
    const edge = Math.min(half, radius)
    const [top, high] =
      face === 'B' ? [y - edge, depth] : face === 'D' ? [y + edge - depth, depth] : [y - across / 2, across]
    doc.lineWidth(pt(0.2)).dash(pt(1.5), { space: pt(1) })
    if (kind === 'hole' && (face === 'A' || face === 'C')) doc.circle(pt(END + at), pt(y), pt(across / 2))
    else doc.rect(pt(END + from), pt(top), pt(along), pt(high))
    doc.stroke('#000').undash()
    if (along < 6 || high < 5) continue
    ink(doc, 'bold', BENCH_PT)
    line(doc, label, pt(END + from) + 4, pt(face === 'D' ? top + high : top) + (face === 'D' ? -14 : 2))
  }
}

/**
 * Writes the figures of the stations between `from` and `to` above the profile, each led to its line.
 * @returns how many stations there was no room for
 */
export function stationFigures(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  { band }: Drawing,
  from: number,
  to: number,
): number {
  const here = source.positions.filter(({ at }) => nm(at + END) >= nm(from) && nm(at + END) < nm(to))
  const [low, high] = [from + 1.5 * PITCH, to - PITCH]
  const shown = weightiest(here, Math.max(Math.floor((high - low) / PITCH) + 1, 1))
  const places = spreadPlaces(
    shown.map(({ at }) => at + END),
    PITCH,
    low,
    high,
  )
  shown.forEach((position, i) => {
    const [x, place] = [position.at + END, places[i]!]
    doc
      .lineWidth(pt(0.12))
      .moveTo(pt(place), pt(band))
      .lineTo(pt(x), pt(band + LEAD - 2))
      .stroke('#444')
    figure(doc, source.style, position, pt(band) - 4, pt(place) - 10, pt(band) - 2)
  })
  return here.length - shown.length
}

function figure(
  doc: PDFKit.PDFDocument,
  style: LengthStyle,
  position: Position,
  room: number,
  x: number,
  y: number,
): void {
  upright(doc, x, y, () => {
    const [running, thick] = [`${lengthText(position.at, style)}   `, thicknessesText(position, style)]
    ink(doc, 'plain', BENCH_PT)
    const start = doc.widthOfString(running)
    line(doc, running, x, y)
    ink(doc, 'bold', BENCH_PT)
    const middle = doc.widthOfString(`${thick}   `)
    line(doc, thick, x + start, y)
    const left = room - start - middle
    if (!position.name || left < 24) return
    ink(doc, 'plain', BENCH_PT)
    line(doc, fitted(doc, position.name, left), x + start + middle, y)
  })
}
