import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { hatch } from './hatch.ts'
import { BENCH_PT, fitted, ink, line, plainText, pt } from './print.ts'
import { FACE_MM, type Mark, STRIP_MM, type Strip } from './story-strip.ts'
import { placedFigures, writeUpright } from './upright.ts'

/** From the fold: how far lines run straight, and to where they lead to their figures, mm. */
const LINE_MM = 10
const LEAD_MM = 14
/** At the outer edge of each face, for what its figures are, mm. */
const CAPTION_MM = 5.5
const ROOM = {
  foot: pt(FACE_MM - LEAD_MM - CAPTION_MM) - 3,
  top: pt(STRIP_MM - FACE_MM - LEAD_MM - CAPTION_MM) - 3,
}

/** What part of the strip is drawn, mm along it; figures are written in `own`, so that none is on two pieces. */
interface Part {
  name: string
  sheet: [number, number]
  own: [number, number]
}

/**
 * Draws the strip with its corner at the origin: the face with running lengths from the foot above the fold,
 * that with those from the top below.
 * @returns how many lines there was no room to write the figures of
 */
export function drawStrip(doc: PDFKit.PDFDocument, strip: Strip, style: LengthStyle, part: Part): number {
  edges(doc, strip)
  stretches(doc, strip, part)
  captions(doc, part)
  for (const { x } of strip.marks) markLine(doc, x)
  const here = strip.marks.filter(({ x }) => nm(x) >= nm(part.own[0]) && nm(x) <= nm(part.own[1]))
  return Math.max(face(doc, here, style, part, 'foot'), face(doc, here, style, part, 'top'))
}

/** Where it is cut out, and where it is folded. */
function edges(doc: PDFKit.PDFDocument, { length }: Strip): void {
  doc.lineWidth(pt(0.25)).rect(0, 0, pt(length), pt(STRIP_MM)).stroke('#000')
  doc.lineWidth(pt(0.15)).dash(pt(5), { space: pt(1.5) })
  doc.moveTo(0, pt(FACE_MM)).lineTo(pt(length), pt(FACE_MM)).stroke('#000').undash()
}

function markLine(doc: PDFKit.PDFDocument, x: number): void {
  doc.lineWidth(pt(0.2))
  doc
    .moveTo(pt(x), pt(FACE_MM - LINE_MM))
    .lineTo(pt(x), pt(FACE_MM + LINE_MM))
    .stroke('#000')
}

/** The shapes between the lines where there is room for the word, and waste hatched. */
function stretches(doc: PDFKit.PDFDocument, strip: Strip, { sheet }: Part): void {
  for (const { from, to, word, waste } of strip.stretches) {
    if (to < sheet[0] || from > sheet[1]) continue
    if (waste) hatch(doc, { x: from, y: FACE_MM - LINE_MM, width: to - from, height: 2 * LINE_MM }, 4)
    const [low, high] = [Math.max(from, sheet[0]), Math.min(to, sheet[1])]
    ink(doc, 'bold', BENCH_PT)
    const wide = doc.widthOfString(word)
    if (wide + 10 > pt(high - low)) continue
    const x = pt((low + high) / 2) - wide / 2
    if (waste) doc.rect(x - 2, pt(FACE_MM + 2.5), wide + 4, 14).fill('#fff')
    ink(doc, 'bold', BENCH_PT)
    line(doc, word, x, pt(FACE_MM + 2.5))
  }
}

/** What the figures of a face are, in as many words as a length of the strip has room for. */
const CAPTIONS = {
  foot: ['From the foot →', 'Foot →', '→'],
  top: [
    '← From the top; fold on the dashed line over the edge of the stick',
    '← From the top; fold on the dashed line',
    '← From the top',
    '← Top',
    '←',
  ],
} as const

function captions(doc: PDFKit.PDFDocument, { own: [from, to], name }: Part): void {
  const [x, room] = [pt(from) + 6, pt(to - from) - 12]
  ink(doc, 'bold', BENCH_PT)
  const longest = (words: readonly string[]): string =>
    words.find((text) => doc.widthOfString(text) <= room) ?? words.at(-1)!
  const [above, below] = [longest(CAPTIONS.foot), longest(CAPTIONS.top)]
  line(doc, above, x, 3)
  line(doc, below, x, pt(STRIP_MM - CAPTION_MM) + 2)
  const wide = doc.widthOfString(above) + 10
  ink(doc, 'plain', BENCH_PT)
  if (room - wide >= 20) line(doc, fitted(doc, plainText(name), room - wide), x + wide, 3)
}

/** The figures of one face, led to their lines; the other face has names and checks as well. */
function face(
  doc: PDFKit.PDFDocument,
  marks: Mark[],
  style: LengthStyle,
  { own }: Part,
  from: 'foot' | 'top',
): number {
  const towards = from === 'foot' ? -1 : 1
  const { type, placed, unwritten } = placedFigures(
    doc,
    marks.map(({ x, weight, fromFoot, fromTop, name, check }) => ({
      x,
      weight,
      lead: from === 'top' && check ? '✓' : '',
      figure: lengthText(from === 'foot' ? fromFoot : fromTop, style),
      name: from === 'top' ? name : '',
    })),
    own,
    ROOM[from],
  )
  for (const { figure, place } of placed) {
    const end = pt(FACE_MM + towards * LEAD_MM)
    doc
      .lineWidth(pt(0.15))
      .moveTo(pt(figure.x), pt(FACE_MM + towards * LINE_MM))
      .lineTo(pt(place), end)
      .stroke('#444')
    writeUpright(doc, figure, type, {
      x: pt(place),
      y: end + towards * 2,
      room: ROOM[from],
      hangs: from === 'top',
    })
  }
  return unwritten
}
