import { BENCH_PT, type Face, ink, newPage, type Print } from './print.ts'

/** A column being filled: its width and the size of its type, points. */
export interface Column {
  print: Print
  width: number
  size: number
}

/** What a block has to know of those before it. */
export interface Before {
  /** Cautions written out on this page, with the number of the row they stand under. */
  said: ReadonlyMap<string, number>
  /** Whether it is the first in its column. */
  first: boolean
}

/** A block made ready for its column: `draw` puts it with its top left corner at x, y. */
export interface Laid {
  height: number
  draw: (x: number, y: number) => void
  says?: readonly (readonly [string, number])[]
}

/** Something that is never broken over two columns. */
export type Block = (column: Column, before: Before) => Laid

const COLUMNS = 2
/** Points between the columns. */
const GUTTER = 14
/** What lines stand closer than the face asks for, in parts of its size. */
const CLOSER = -0.1
/** Sizes of type are tried in quarter points. */
const STEP = 0.25
/** Type that is still read on a sheet in the hand, points; below it nothing is printed. Common practice, no source. */
const LEAST_PT = 7

/**
 * Sets blocks in two columns, on one page where that can be: in the largest type from the bench’s down to the least
 * that keeps one of the `ways` to one page, the earlier way first. Where none does, the first way takes as many pages
 * as it needs in the bench’s type.
 */
export function setInColumns(print: Print, ways: Block[][]): void {
  for (const blocks of ways) {
    const size = largestOnOnePage(print, blocks)
    if (size === undefined) continue
    flow(print, blocks, size, true)
    return
  }
  flow(print, ways[0]!, BENCH_PT, true)
}

function largestOnOnePage(print: Print, blocks: Block[]): number | undefined {
  const onOne = (steps: number) => flow(print, blocks, steps * STEP, false) === 1
  let [small, large] = [LEAST_PT / STEP, BENCH_PT / STEP]
  if (onOne(large)) return BENCH_PT
  if (!onOne(small)) return undefined
  while (large - small > 1) {
    const middle = Math.floor((small + large) / 2)
    if (onOne(middle)) small = middle
    else large = middle
  }
  return small * STEP
}

/** Pages that the blocks take at this size of type, drawn or only measured. */
function flow(print: Print, blocks: Block[], size: number, drawn: boolean): number {
  const { left, right, top, bottom } = print.box
  const width = (right - left - GUTTER * (COLUMNS - 1)) / COLUMNS
  const column: Column = { print, width, size }
  let [pages, place, y] = [1, 0, top]
  let said = new Map<string, number>()
  for (const block of blocks) {
    let laid = block(column, { said, first: y === top })
    if (y + laid.height > bottom && y > top) {
      place += 1
      y = top
      if (place === COLUMNS) {
        place = 0
        pages += 1
        said = new Map()
        if (drawn) newPage(print)
      }
      laid = block(column, { said, first: true })
    }
    if (drawn) laid.draw(left + place * (width + GUTTER), y)
    for (const [caution, row] of laid.says ?? []) said.set(caution, row)
    y += laid.height
  }
  return pages
}

interface Type {
  face?: Face
  /** In parts of the column’s type. */
  times?: number
  align?: 'left' | 'right'
  colour?: string
}

/** Lines of type in so much width, to be measured and then drawn. */
export function lines(
  { print, size }: Pick<Column, 'print' | 'size'>,
  text: string,
  width: number,
  { face = 'plain', times = 1, align = 'left', colour }: Type = {},
): Laid {
  const { doc } = print
  ink(doc, face, size * times)
  const lineGap = CLOSER * size * times
  const height = text ? doc.heightOfString(text, { width, lineGap }) : 0
  const draw = (x: number, y: number) => {
    if (!text) return
    ink(doc, face, size * times, colour)
    doc.text(text, x, y, { width, align, lineGap })
  }
  return { height, draw }
}

/** Blocks one under the other that stay together, each with what it says. */
export const together =
  (...blocks: Block[]): Block =>
  (column, before) => {
    const laid = blocks.map((block, i) => block(column, { ...before, first: before.first && i === 0 }))
    return {
      height: laid.reduce((sum, { height }) => sum + height, 0),
      says: laid.flatMap(({ says }) => says ?? []),
      draw: (x, y) => {
        let at = y
        for (const one of laid) {
          one.draw(x, at)
          at += one.height
        }
      },
    }
  }

/** Running text. */
export const text =
  (words: string, type: Type = {}): Block =>
  (column) => {
    const { height, draw } = lines(column, words, column.width, type)
    return { height: height + 1.5, draw }
  }

/** A heading, kept with the first of what it heads. */
export const headed = (words: string, [first, ...others]: Block[]): Block[] => [
  together((column, { first: atTop }) => {
    const above = atTop ? 0 : 0.5 * column.size
    const { height, draw } = lines(column, words, column.width, { face: 'bold', times: 1.15 })
    return { height: above + height + 1, draw: (x, y) => draw(x, y + above) }
  }, first!),
  ...others,
]

/** Something to mind, in a ruled frame that cannot be overlooked. */
export const framed =
  (words: string): Block =>
  (column) => {
    const { width, size, print } = column
    const indent = 1.6 * size
    const { height, draw } = lines(column, words, width - indent - 4, { face: 'bold' })
    const sign = lines(column, '⚠', indent, { face: 'bold' })
    return {
      height: height + 6,
      draw: (x, y) => {
        print.doc
          .lineWidth(0.8)
          .rect(x + 0.5, y + 0.5, width - 1, height + 3)
          .stroke('#000')
        sign.draw(x + 4, y + 2)
        draw(x + indent + 2, y + 2)
      },
    }
  }
