import { BENCH_PT, type Face, ink, newPage, type Print } from './print.ts'

/** A column: `share` of the width that is left when all shares are added up. */
export interface Column {
  head: string
  share: number
  align?: 'left' | 'right'
  face?: Face
}

/** A row; `caution` stands under its figures over the whole width and never leaves them. */
export interface Row {
  cells: string[]
  caution?: string
  face?: Face
  /** A line of its own above the row, to head those that follow. */
  lead?: string
}

export interface TableStyle {
  size?: number
  /** Points above and below the text of a row. */
  pad?: number
}

const GAP = 10
const NOTE_INDENT = 18

/** A table with its heading again on every page it reaches; a row is never broken. */
export function table(
  print: Print,
  columns: Column[],
  rows: Row[],
  { size = BENCH_PT, pad = 2 }: TableStyle = {},
): void {
  const widths = columnWidths(print, columns)
  const head: Row = { cells: columns.map((column) => column.head), face: 'bold' }
  const headHeight = rowHeight(print, columns, widths, head, size, pad)
  const drawHead = () => {
    drawRow(print, columns, widths, head, size, pad)
    rule(print, 0.8)
  }
  const first = rows[0] ? rowHeight(print, columns, widths, rows[0], size, pad) : 0
  if (print.y + headHeight + first > print.box.bottom) newPage(print)
  drawHead()
  for (const row of rows) {
    if (print.y + rowHeight(print, columns, widths, row, size, pad) > print.box.bottom) {
      newPage(print)
      drawHead()
    }
    drawRow(print, columns, widths, row, size, pad)
    rule(print, 0.3)
  }
  print.y += 6
}

function columnWidths({ box }: Print, columns: Column[]): number[] {
  const shares = columns.reduce((sum, column) => sum + column.share, 0)
  const free = box.right - box.left - GAP * (columns.length - 1)
  return columns.map((column) => (free * column.share) / shares)
}

const noteWidth = ({ box }: Print): number => box.right - box.left - NOTE_INDENT

function rowHeight(
  print: Print,
  columns: Column[],
  widths: number[],
  row: Row,
  size: number,
  pad: number,
): number {
  const tallest = row.cells.map((text, i) => {
    ink(print.doc, row.face ?? columns[i]!.face ?? 'plain', size)
    return text ? print.doc.heightOfString(text, { width: widths[i]! }) : 0
  })
  return leadHeight(print, row, size) + Math.max(...tallest) + 2 * pad + noteHeight(print, row, size)
}

function leadHeight(print: Print, row: Row, size: number): number {
  if (!row.lead) return 0
  ink(print.doc, 'bold', size)
  return print.doc.currentLineHeight(true) + 3
}

function noteHeight(print: Print, row: Row, size: number): number {
  if (!row.caution) return 0
  ink(print.doc, 'bold', size)
  return print.doc.heightOfString(row.caution, { width: noteWidth(print) }) + 1
}

function drawRow(
  print: Print,
  columns: Column[],
  widths: number[],
  row: Row,
  size: number,
  pad: number,
): void {
  const { doc, box } = print
  const height = rowHeight(print, columns, widths, row, size, pad)
  const lead = leadHeight(print, row, size)
  if (row.lead) {
    doc.rect(box.left, print.y, box.right - box.left, lead).fill('#e4e4e4')
    ink(doc, 'bold', size)
    doc.text(row.lead, box.left + 3, print.y + 1.5, { lineBreak: false })
  }
  let x = box.left
  row.cells.forEach((text, i) => {
    ink(doc, row.face ?? columns[i]!.face ?? 'plain', size)
    if (text)
      doc.text(text, x, print.y + lead + pad, { width: widths[i]!, align: columns[i]!.align ?? 'left' })
    x += widths[i]! + GAP
  })
  if (row.caution) {
    const y = print.y + height - noteHeight(print, row, size) - pad + 1
    ink(doc, 'bold', size)
    doc.text('⚠', box.left + 3, y, { lineBreak: false })
    doc.text(row.caution, box.left + NOTE_INDENT, y, { width: noteWidth(print) })
  }
  print.y += height
}

function rule({ doc, box, y }: Print, width: number): void {
  doc.lineWidth(width).moveTo(box.left, y).lineTo(box.right, y).stroke('#000')
}
