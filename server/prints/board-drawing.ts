import type { Defect } from '../../shared/cutting/board.ts'
import { blanksOf, piecesText, type SheetBoard } from '../../shared/cutting/sheet.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { BENCH_PT, fitted, ink, line, pt } from './print.ts'
import { spreadPlaces } from './spread.ts'

/** A board's drawing: millimetres of board over one millimetre of paper, and where it stands in points. */
export interface BoardPlace {
  scale: number
  x: number
  y: number
}

/** Scales a draughtsman would choose. */
const SCALES = [1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 40, 50, 60, 75, 100, 150, 200, 500, 1000]

/** The largest of the usual scales at which so many mm fit on so many points. */
export function scaleFor(lengthMm: number, points: number): number {
  return SCALES.find((scale) => pt(lengthMm / scale) <= points) ?? Math.ceil(pt(lengthMm) / points)
}

/** Draws a board: blanks white with their pieces, offcuts dashed, waste and kerf grey, defects crossed out. Returns its height. */
export function drawBoard(
  doc: PDFKit.PDFDocument,
  board: SheetBoard,
  { scale, x, y }: BoardPlace,
  { defects, style }: { defects: Defect[]; style: LengthStyle },
): number {
  const p = (mm: number) => pt(mm / scale)
  const rect = (from: number, to: number, [y0, y1]: [number, number]): [number, number, number, number] => [
    x + p(from),
    y + p(y0),
    p(to - from),
    p(y1 - y0),
  ]
  doc.rect(...rect(0, board.length, [0, board.width])).fill('#cfcfcf')
  for (const offcut of board.offcuts) {
    const place = rect(offcut.from, offcut.to, offcut.across)
    doc.rect(...place).fill('#f4f4f4')
    doc
      .lineWidth(0.4)
      .dash(2, { space: 2 })
      .rect(...place)
      .stroke('#000')
      .undash()
    words(doc, place, [`offcut ${lengthText(offcut.to - offcut.from, style)}`], 'plain')
  }
  for (const blank of blanksOf(board)) {
    const place = rect(blank.from, blank.to, blank.across)
    doc
      .lineWidth(0.3)
      .rect(...place)
      .fillAndStroke('#fff', '#000')
    words(doc, place, [`${blank.label} · ${lengthText(blank.to - blank.from, style)}`, blank.label], 'bold')
  }
  for (const defect of defects) {
    const across = defect.across ?? [0, board.width]
    crossOut(doc, rect(Math.max(defect.from, 0), Math.min(defect.to, board.length), [across[0], across[1]]))
  }
  doc
    .lineWidth(1)
    .rect(...rect(0, board.length, [0, board.width]))
    .stroke('#000')
  return p(board.width)
}

/** Room kept below a board for the numbers of its sections, points. */
export const NUMBERS_PT = 26

/** Room kept beside a board for the numbers of its strips, and for what they hold where they are too narrow to say. */
export const besidePt = (boards: SheetBoard[], scale: number): number =>
  boards.some((board) => tooNarrow(board, scale)) ? 84 : NUMBERS_PT

/** Whether a strip of the board is drawn too narrow for type. */
const tooNarrow = ({ strips = [] }: SheetBoard, scale: number): boolean =>
  strips.some(({ side }) => pt(side / scale) < LEAST_HEIGHT)

/** Numbers the strips at the right of a drawn board, or the sections below it, each led to its own. */
export function numberCuts(doc: PDFKit.PDFDocument, board: SheetBoard, { scale, x, y }: BoardPlace): void {
  const p = (mm: number) => pt(mm / scale)
  const [right, bottom] = [x + p(board.length), y + p(board.width)]
  const number = (words: string, left: number, top: number, from: [number, number], to: [number, number]) => {
    doc
      .lineWidth(0.4)
      .moveTo(...from)
      .lineTo(...to)
      .stroke('#000')
    ink(doc, 'plain', BENCH_PT)
    line(doc, words, left, top)
  }
  const strips = board.strips ?? []
  const middles = strips.map(({ across }) => y + p((across[0] + across[1]) / 2))
  const over = numbersOver(board, scale)
  spreadPlaces(middles, NUMBER_PITCH, y - over, bottom + over).forEach((place, i) => {
    ink(doc, 'plain', BENCH_PT)
    const full = `${i + 1}: ${piecesText(strips[i]!.blanks)}`
    const words = tooNarrow(board, scale) ? fitted(doc, full, besidePt([board], scale) - 14) : String(i + 1)
    number(words, right + 12, place - 6, [right, middles[i]!], [right + 10, place])
  })
  const centres = (board.sections ?? []).map(({ from, to }) => x + p((from + to) / 2))
  spreadPlaces(centres, 1.5 * NUMBER_PITCH, x, right).forEach((place, i) => {
    number(String(i + 1), place - 3, bottom + 8, [centres[i]!, bottom], [place, bottom + 8])
  })
}

const NUMBER_PITCH = 11

/** How far the numbers of many narrow strips reach beyond a board above and below, points. */
export const numbersOver = (board: SheetBoard, scale: number): number =>
  Math.max(0, ((board.strips?.length ?? 0) - 1) * NUMBER_PITCH - pt(board.width / scale)) / 2

/** The first of the wordings that fits into the rectangle, in its middle. */
function words(
  doc: PDFKit.PDFDocument,
  [x, y, w, h]: [number, number, number, number],
  wordings: string[],
  face: 'plain' | 'bold',
): void {
  ink(doc, face, BENCH_PT)
  const wording = wordings.find((one) => doc.widthOfString(one) <= w - 2)
  if (wording === undefined || h < LEAST_HEIGHT) return
  // Middle of the capitals on the middle of the rectangle: 0.729 em high, their foot 0.928 em below the line’s top.
  line(doc, wording, x + (w - doc.widthOfString(wording)) / 2, y + h / 2 - BENCH_PT * (0.928 - 0.729 / 2))
}

/** Least height of a rectangle in which type of bench size stands clear of the lines, points. */
const LEAST_HEIGHT = 8.5

function crossOut(doc: PDFKit.PDFDocument, [x, y, w, h]: [number, number, number, number]): void {
  doc.save().rect(x, y, w, h).clip().lineWidth(0.5)
  for (let across = -h; across < w; across += 4) doc.moveTo(x + across, y + h).lineTo(x + across + h, y)
  doc.stroke('#000').restore()
  doc.lineWidth(0.8).rect(x, y, w, h).stroke('#000')
}
