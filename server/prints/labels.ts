import { type PiecePlace, piecePlaces, placeMark } from '../../shared/cutting/sheet.ts'
import { handOf, numberedPieces, type Piece } from '../../shared/piece.ts'
import { type Plan, partsOf, sheetOf } from '../../shared/plan.ts'
import { woodText } from './figures.ts'
import {
  BENCH_PT,
  finishPrint,
  fitted,
  ink,
  line,
  newPage,
  openPrint,
  type Print,
  type PrintOptions,
  plainText,
  pt,
} from './print.ts'

const COLUMNS = 3
const HEIGHT_MM = 38

/** One label for each piece of the batch, spares among them, to be cut apart. */
export function labelsPdf(plan: Plan, options: PrintOptions): Promise<Buffer> {
  const print = openPrint('Labels', plan, options)
  const pieces = options.pieces ?? numberedPieces(partsOf(plan), plan.job.quantity)
  const places = piecePlaces(sheetOf(plan))
  const { box } = print
  const [width, height] = [(box.right - box.left) / COLUMNS, pt(HEIGHT_MM)]
  const rows = Math.floor((box.bottom - box.top) / height)
  pieces.forEach((piece, i) => {
    const place = i % (COLUMNS * rows)
    if (place === 0 && i > 0) newPage(print)
    const [x, y] = [box.left + (place % COLUMNS) * width, box.top + Math.floor(place / COLUMNS) * height]
    drawLabel(print, piece, places.get(piece.number) ?? [], { x, y, width, height })
  })
  return finishPrint(print)
}

interface Rect {
  x: number
  y: number
  width: number
  height: number
}

function drawLabel(
  print: Print,
  { number, spare }: Pick<Piece, 'number' | 'spare'>,
  places: readonly PiecePlace[],
  { x, y, width, height }: Rect,
): void {
  const { doc, plan, options } = print
  const inner = width - 16
  doc.lineWidth(0.4).dash(3, { space: 3 }).rect(x, y, width, height).stroke('#000').undash()
  ink(doc, 'plain', BENCH_PT)
  line(doc, '▲ top', x + 8, y + 5)
  if (spare) line(doc, 'spare', x + width - 8 - doc.widthOfString('spare'), y + 5)
  ink(doc, 'bold', 40)
  line(doc, String(number), x + 8 + (inner - doc.widthOfString(String(number))) / 2, y + 12)
  upArrow(doc, x + 16, y + 22, 34)
  if (plan.job.mirrored) handLetter(print, number, x + width - 8, y + 18)
  ink(doc, 'bold', 11)
  line(doc, fitted(doc, plainText(plan.job.name), inner), x + 8, y + 57)
  ink(doc, 'plain', BENCH_PT)
  line(doc, fitted(doc, woodText(plan.job.species, options.wood), inner), x + 8, y + 70)
  line(doc, fitted(doc, placeMark(places), inner), x + 8, y + 82)
  line(doc, '▼ foot', x + 8, y + height - 14)
  const of = `of ${plan.job.quantity}`
  line(doc, of, x + width - 8 - doc.widthOfString(of), y + height - 14)
}

/** `L` or `R` in large type with the word below, its right edge at x. */
function handLetter({ doc }: Print, number: number, x: number, y: number): void {
  const hand = handOf(number)
  ink(doc, 'bold', 26)
  const letter = hand === 'left' ? 'L' : 'R'
  line(doc, letter, x - 6 - doc.widthOfString(letter), y - 2)
  ink(doc, 'plain', BENCH_PT)
  line(doc, hand, x - doc.widthOfString(hand), y + 27)
}

/** An arrow that points to the top of the piece. */
function upArrow(doc: PDFKit.PDFDocument, x: number, y: number, height: number): void {
  doc
    .lineWidth(2.5)
    .moveTo(x, y + height)
    .lineTo(x, y + 6)
    .stroke('#000')
  doc.polygon([x - 7, y + 11], [x, y - 1], [x + 7, y + 11]).fill('#000')
}
