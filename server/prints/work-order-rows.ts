import type { Operation } from '../../shared/route/operation.ts'
import {
  type OrderRow,
  orderRows,
  rowCautions,
  rowMinutes,
  rowNumber,
  rowText,
} from '../../shared/route/order-rows.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { type Block, type Column, type Laid, lines, together } from './columns.ts'
import { minutesText } from './figures.ts'

const nothing: Laid = { height: 0, draw: () => undefined }

/**
 * The operations in order: a bar where the work goes to the lathe or leaves it, a line where tool, speed or rest are
 * set anew and at the head of a column, a row for each operation or, `gathered`, for features cut alike.
 */
export const operationBlocks = (
  operations: readonly Operation[],
  style: LengthStyle,
  how: { gathered: boolean },
): Block[] =>
  orderRows(operations, how).map((row) => {
    const { heading, setting, setAnew } = row
    const line: Block = (column, before) =>
      setting && (setAnew || before.first) ? settingLine(setting)(column, before) : nothing
    return together(...(heading ? [bar(heading)] : []), line, operationRow(row, style))
  })

/** White on black over the whole column. */
const bar =
  (words: string): Block =>
  (column, { first }) => {
    const above = first ? 0 : 3
    const { height, draw } = lines(column, words, column.width - 6, { face: 'bold', colour: '#fff' })
    return {
      height: above + height + 2,
      draw: (x, y) => {
        column.print.doc.rect(x, y + above, column.width, height + 1).fill('#222')
        draw(x + 3, y + above + 0.5)
      },
    }
  }

const settingLine =
  (words: string): Block =>
  (column) => {
    const { height, draw } = lines(column, words, column.width - 6, { face: 'bold' })
    return {
      height: height + 1.5,
      draw: (x, y) => {
        column.print.doc.rect(x, y + 0.5, column.width, height + 0.5).fill('#e4e4e4')
        draw(x + 3, y + 0.5)
      },
    }
  }

/** Widths of the cells beside the words, in parts of the type. */
const EMS = { number: 2, numbers: 3.6, caliper: 6.2, each: 4.3 }
const GAP = 0.6

const operationRow =
  (row: OrderRow, style: LengthStyle): Block =>
  (column, { said }) => {
    const { fresh, before } = rowCautions(row, said)
    const [{ caliper }] = row.operations
    const minutes = rowMinutes(row)
    const words = rowText(row, style)
    const cells = cellsOf(column, {
      number: rowNumber(row),
      words: before.length > 0 ? `${words} ⚠\u00a0${before.join(',\u00a0')}` : words,
      caliper: caliper === undefined ? '' : `⌀ ${lengthText(caliper, style)}`,
      each: minutes > 0 ? minutesText(minutes) : '',
    })
    const note = fresh.length > 0 ? noteOf(column, fresh.join(' ')) : nothing
    return {
      height: cells.height + note.height + 1,
      says: fresh.map((sentence) => [sentence, row.first] as const),
      draw: (x, y) => {
        cells.draw(x, y + 0.5)
        note.draw(x, y + cells.height)
        rule(column, x, y + cells.height + note.height + 0.75)
      },
    }
  }

const rule = ({ print, width }: Column, x: number, y: number): void =>
  void print.doc
    .lineWidth(0.25)
    .moveTo(x, y)
    .lineTo(x + width, y)
    .stroke('#000')

/** Number, words, caliper and minutes; the words take the caliper’s room where there is none. */
function cellsOf(column: Column, cells: Record<'number' | 'words' | 'caliper' | 'each', string>): Laid {
  const { width, size } = column
  const number = size * (cells.number.includes('–') ? EMS.numbers : EMS.number)
  const caliper = cells.caliper ? size * (EMS.caliper + GAP) : 0
  const each = EMS.each * size
  const words = width - number - caliper - each - 2 * GAP * size
  const laid = [
    lines(column, cells.number, number),
    lines(column, cells.words, words),
    lines(column, cells.caliper, EMS.caliper * size, { face: 'bold', align: 'right' }),
    lines(column, cells.each, each, { align: 'right' }),
  ]
  const at = [0, number + GAP * size, width - each - caliper, width - each]
  return {
    height: Math.max(...laid.map(({ height }) => height)),
    draw: (x, y) => {
      for (const [i, cell] of laid.entries()) cell.draw(x + at[i]!, y)
    },
  }
}

/** Cautions right under their row, under its name. */
function noteOf(column: Column, words: string): Laid {
  const indent = (EMS.number + GAP) * column.size
  const { height, draw } = lines(column, `⚠ ${words}`, column.width - indent, { face: 'bold' })
  return { height: height + 0.5, draw: (x, y) => draw(x + indent, y + 0.5) }
}
