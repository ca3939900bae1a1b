import { BENCH_PT, type Face, ink, newPage, type Print } from './print.ts'

/** A column: `share` of the width that is left when all shares are added up. */
export interface Column {
  head: string
  share: number
  align?: 'left' | 'right'
  face?: Face
}

/** A row; `cautions` stand under its figures over the whole width and never leave them. */
export interface Row {
  cells: string[]
  cautions?: string[]
  face?: Face
}

interface TableStyle {
  size?: number
  /** Points above and below the text of a row, and between columns. */
  pad?: number
  gap?: number
}

interface Layout {
  print: Print
  columns: Column[]
  widths: number[]
  size: number
  pad: number
  gap: number
}

const NOTE_INDENT = 18

/** A table with its heading again on every page it reaches; a row is never broken. */
export function table(
  print: Print,
  columns: Column[],
  rows: Row[],
  { size = BENCH_PT, pad = 2, gap = 10 }: TableStyle = {},
): void {
  const layout: Layout = { print, columns, widths: columnWidths(print, columns, gap), size, pad, gap }
  const head: Row = { cells: columns.map((column) => column.head), face: 'bold' }
  const drawHead = () => {
    drawRow(layout, head)
    rule(print, 0.8)
  }
  const first = rows[0] ? rowHeight(layout, rows[0]) : 0
  if (print.y + rowHeight(layout, head) + first > print.box.bottom) newPage(print)
  drawHead()
  for (const row of rows) {
    if (print.y + rowHeight(layout, row) > print.box.bottom) {
      newPage(print)
      drawHead()
    }
    drawRow(layout, row)
    rule(print, 0.3)
  }
  print.y += 6
}

function columnWidths({ box }: Print, columns: Column[], gap: number): number[] {
  const shares = columns.reduce((sum, column) => sum + column.share, 0)
  const free = box.right - box.left - gap * (columns.length - 1)
  return columns.map((column) => (free * column.share) / shares)
}

const noteText = (row: Row): string => (row.cautions ?? []).join(' ')
const noteWidth = ({ box }: Print): number => box.right - box.left - NOTE_INDENT

function rowHeight(layout: Layout, row: Row): number {
  const { print, columns, widths, size, pad } = layout
  const tallest = row.cells.map((text, i) => {
    ink(print.doc, row.face ?? columns[i]!.face ?? 'plain', size)
    return text ? print.doc.heightOfString(text, { width: widths[i]! }) : 0
  })
  return Math.max(...tallest) + 2 * pad + noteHeight(layout, row)
}

function noteHeight({ print, size }: Layout, row: Row): number {
  if (!noteText(row)) return 0
  ink(print.doc, 'bold', size)
  return print.doc.heightOfString(noteText(row), { width: noteWidth(print) }) + 1
}

function drawRow(layout: Layout, row: Row): void {
  const { print, columns, widths, size, pad, gap } = layout
  const { doc, box } = print
  const height = rowHeight(layout, row)
  let x = box.left
  row.cells.forEach((text, i) => {
    ink(doc, row.face ?? columns[i]!.face ?? 'plain', size)
    const align = columns[i]!.align ?? 'left'
    if (text) doc.text(text, x, print.y + pad, { width: widths[i]!, align })
    x += widths[i]! + gap
  })
  if (noteText(row)) {
    const y = print.y + height - noteHeight(layout, row) - pad + 1
    ink(doc, 'bold', size)
    doc.text('⚠', box.left + 3, y, { lineBreak: false })
    doc.text(noteText(row), box.left + NOTE_INDENT, y, { width: noteWidth(print) })
  }
  print.y += height
}

function rule({ doc, box, y }: Print, width: number): void {
  doc.lineWidth(width).moveTo(box.left, y).lineTo(box.right, y).stroke('#000')
}
