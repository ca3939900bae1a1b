import { shownPlainly } from '../output.ts'

/** Characters in a line: what fits on a printed page and in the narrowest window. */
export const WIDTH = 80

/**
 * Text broken into lines of at most `width` characters, between words where that can be done. Line ends within it
 * were entered in a name, and are shown as such.
 */
export function wrapped(text: string, width = WIDTH): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of shownPlainly(text)
    .split(/\s+/)
    .filter(Boolean)
    .flatMap((w) => w.match(new RegExp(`.{1,${width}}`, 'gu')) ?? [])) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return line === '' ? lines : [...lines, line]
}

/** A paragraph; lines after the first stand in by `indent`. */
export function paragraph(
  text: string,
  { lead = '', indent = lead.length }: { lead?: string; indent?: number } = {},
): string[] {
  const gap = ' '.repeat(indent)
  return wrapped(text, WIDTH - indent).map((line, i) => `${i === 0 ? lead.padEnd(indent) : gap}${line}`)
}

export const heading = (text: string): string[] => ['', text.toUpperCase(), '-'.repeat(text.length)]

/** Names and what belongs to them, one under the other. */
export function pairs(rows: [string, string | undefined][]): string[] {
  const shown = rows.filter((row): row is [string, string] => row[1] !== undefined && row[1] !== '')
  const indent = Math.max(0, ...shown.map(([name]) => name.length)) + 3
  return shown.flatMap(([name, text]) => paragraph(text, { lead: `  ${name}`, indent: indent + 1 }))
}

export interface Column {
  head: string
  width: number
  align?: 'right'
}

export interface Row {
  cells: string[]
  /** Stands below the row, over the whole width. */
  caution?: string
}

function rowLines(cells: string[], columns: Column[]): string[] {
  const broken = columns.map(({ width }, i) => wrapped(cells[i] ?? '', width))
  const height = Math.max(1, ...broken.map((lines) => lines.length))
  return Array.from({ length: height }, (_, y) =>
    columns
      .map(({ width, align }, i) => {
        const text = broken[i]?.[y] ?? ''
        return align === 'right' ? text.padStart(width) : text.padEnd(width)
      })
      .join(' ')
      .trimEnd(),
  )
}

/** A table whose cells are broken to their columns; heads carry the units of their figures. */
export function table(columns: Column[], rows: Row[]): string[] {
  const heads = rowLines(
    columns.map(({ head }) => head),
    columns,
  )
  const rule = columns.map(({ width }) => '-'.repeat(width)).join(' ')
  const body = rows.flatMap(({ cells, caution }) => [
    ...rowLines(cells, columns),
    ...(caution ? paragraph(caution, { lead: '    ! ' }) : []),
  ])
  return [...heads, rule, ...body]
}
