import type { Plan } from '../../shared/plan.ts'
import { cautionSentences } from '../../shared/route/cautions.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { type Block, type Column, type Laid, lines, together } from './columns.ts'
import { minutesText, rangeText } from './figures.ts'

/** Operations that share a row, with the number of the first. */
interface Run {
  first: number
  operations: [Operation, ...Operation[]]
}

interface Order {
  style: LengthStyle
  /** What the ceilings come from, each with its letter. */
  reasons: string[]
}

/** Where the reasons of ceilings are listed by letter. */
export const ceilingReasons = ({ operations }: Pick<Plan, 'operations'>): string[] => [
  ...new Set(operations.flatMap(({ ceilingBy }) => ceilingBy ?? [])),
]

export const letter = (i: number): string => (i < 26 ? String.fromCharCode(97 + i) : `z${i}`)

/**
 * The operations in order: a bar where the work goes to the lathe or leaves it, a line where tool, speed or rest are
 * set anew, a row for each operation. `gathered` puts features cut one after the other at one setting into one row.
 */
export function operationBlocks(
  plan: Pick<Plan, 'operations'>,
  style: LengthStyle,
  { gathered }: { gathered: boolean },
): Block[] {
  const order: Order = { style, reasons: ceilingReasons(plan) }
  const mountings = Math.max(...plan.operations.map(({ pass }) => pass))
  let [place, setting] = ['', '']
  return runsOf(plan.operations, gathered).map((run) => {
    const [operation] = run.operations
    const leads: Block[] = []
    const standsAt =
      operation.pass === 0
        ? 'Away from the lathe'
        : `On the lathe${mountings > 1 ? `, mounting ${operation.pass}` : ''}`
    if (standsAt !== place) leads.push(bar(standsAt))
    place = standsAt
    const set = settingText(operation, order)
    if (set && (set !== setting || leads.length > 0)) leads.push(settingLine(set))
    else if (set) leads.push((column, before) => (before.first ? settingLine(set)(column, before) : nothing))
    if (set) setting = set
    return together(...leads, row(run, order))
  })
}

const nothing: Laid = { height: 0, draw: () => undefined }

function runsOf(operations: Operation[], gathered: boolean): Run[] {
  const runs: Run[] = []
  const known = new Set<string>()
  operations.forEach((operation, i) => {
    const last = runs.at(-1)
    const sentences = cautionSentences(operation.caution)
    const quiet = sentences.every((sentence) => known.has(sentence))
    if (gathered && quiet && last && cutAlike(last.operations[0], operation)) last.operations.push(operation)
    else runs.push({ first: i + 1, operations: [operation] })
    for (const sentence of sentences) known.add(sentence)
  })
  return runs
}

/** Features cut one after the other with nothing to set between them. */
const cutAlike = (a: Operation, b: Operation): boolean =>
  [a, b].every(({ spans, caliper, name }) => spans && caliper === undefined && name.startsWith('Cut the ')) &&
  (['tool', 'rpm', 'rpmCeiling', 'restPosition', 'pass'] as const).every((field) => a[field] === b[field])

/** Tool, speed with its ceiling and the rest; nothing where the lathe does not turn. */
function settingText(
  { tool, rpm, rpmCeiling, ceilingBy, restPosition }: Operation,
  { reasons }: Order,
): string {
  if (rpm === undefined && rpmCeiling === undefined) return ''
  const why = ceilingBy === undefined ? '' : ` ${letter(reasons.indexOf(ceilingBy))}`
  return [
    tool,
    rpm === undefined ? 'no safe speed' : `${Math.floor(rpm)} rpm`,
    rpmCeiling === undefined ? '' : `never above ${Math.floor(rpmCeiling)} rpm${why}`,
    restPosition === undefined ? '' : `rest ${restPosition}`,
  ]
    .filter(Boolean)
    .join(' · ')
}

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

const row =
  ({ first, operations }: Run, { style }: Order): Block =>
  (column, { said }) => {
    const [one] = operations
    const sentences = operations.flatMap(({ caution }) => cautionSentences(caution))
    const before = [...new Set(sentences.flatMap((sentence) => said.get(sentence) ?? []))]
    const fresh = [...new Set(sentences)].filter((sentence) => !said.has(sentence))
    const words =
      operations.length === 1
        ? operationText(one, style)
        : `Cut the ${operations.map((each) => featureText(each, style)).join('; ')}`
    const cells = cellsOf(column, {
      number: operations.length === 1 ? String(first) : `${first}–${first + operations.length - 1}`,
      words: before.length > 0 ? `${words} ⚠\u00a0${before.join(',\u00a0')}` : words,
      caliper: one.caliper === undefined ? '' : `⌀ ${lengthText(one.caliper, style)}`,
      each: eachText(operations),
    })
    const note = fresh.length > 0 ? noteOf(column, fresh.join(' ')) : nothing
    return {
      height: cells.height + note.height + 1,
      says: fresh.map((sentence) => [sentence, String(first)] as const),
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

const eachText = (operations: readonly Operation[]): string => {
  const minutes = operations.reduce((sum, { minutesEach }) => sum + minutesEach, 0)
  return minutes > 0 ? minutesText(minutes) : ''
}

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
    draw: (x, y) => laid.forEach((cell, i) => void cell.draw(x + at[i]!, y)),
  }
}

/** Cautions right under their row, under its name. */
function noteOf(column: Column, words: string): Laid {
  const indent = (EMS.number + GAP) * column.size
  const { height, draw } = lines(column, `⚠ ${words}`, column.width - indent, { face: 'bold' })
  return { height: height + 0.5, draw: (x, y) => draw(x + indent, y + 0.5) }
}

/** What is done, and where unless that says it; away from the lathe also with what. The caliper stands beside it. */
function operationText(operation: Operation, style: LengthStyle): string {
  const { where, tool, rpm, rpmCeiling, caliper } = operation
  const name =
    caliper === undefined ? operation.name : operation.name.replace(` to ${lengthText(caliper, style)}`, '')
  const told = where?.every((end) => name.includes(lengthText(end, style)))
  const place = where && !told ? placeText(where, style) : ''
  return [name, place, (rpm ?? rpmCeiling) === undefined ? tool : ''].filter(Boolean).join(' · ')
}

const placeText = (where: [number, number], style: LengthStyle): string =>
  nm(where[0]) === nm(where[1]) ? `at ${lengthText(where[0], style)}` : rangeText(where, style)

/** `ring (bead) 3/4 – 1-1/4 in`: what is cut, with its place once. */
function featureText({ name, where }: Operation, style: LengthStyle): string {
  const feature = name.replace(/^Cut the /, '')
  if (!where) return feature
  return `${feature.replace(` at ${lengthText(where[0], style)}`, '')} ${placeText(where, style)}`
}
