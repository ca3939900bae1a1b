import { type LengthStyle, lengthFigure, lengthText, nm } from '../units/length.ts'
import { cautionSentences } from './cautions.ts'
import type { Operation } from './operation.ts'

/** A row of a work order: one operation, or features cut alike one after the other. */
export interface OrderRow {
  /** Number of its first operation, from 1. */
  first: number
  operations: [Operation, ...Operation[]]
  /** Where the work is done, when that changes with this row. */
  heading?: string
  /** What the lathe is set to for it; absent where it does not turn. */
  setting?: string
  /** Whether that was not so for the row before at the lathe. */
  setAnew: boolean
}

/** Whether the lathe turns for an operation, or would if a speed were safe. */
export const isTurning = ({ rpm, rpmCeiling }: Pick<Operation, 'rpm' | 'rpmCeiling'>): boolean =>
  (rpm ?? rpmCeiling) !== undefined

/**
 * Where the tool rest stands, from the tailstock: one position, or all a cut is carried over in the order they are
 * taken; empty where an operation says nothing of it.
 *
 * @example restText({ restPosition: 2 }) // '2'
 * @example restText({ restPosition: 3, restThrough: 1 }) // '3 to 1'
 */
export function restText({
  restPosition,
  restThrough,
}: Pick<Operation, 'restPosition' | 'restThrough'>): string {
  if (restPosition === undefined) return ''
  return restThrough === undefined || restThrough === restPosition
    ? String(restPosition)
    : `${restPosition} to ${restThrough}`
}

/** What the ceilings of a plan come from, in the order they are met. */
export const ceilingReasons = (operations: readonly Operation[]): string[] => [
  ...new Set(operations.flatMap(({ ceilingBy }) => ceilingBy ?? [])),
]

/** The letter a reason is listed under: a, b, … */
export const reasonLetter = (i: number): string => (i < 26 ? String.fromCharCode(97 + i) : `z${i}`)

/**
 * The order of work in rows, with what sets the lathe told only where it changes. `gathered` puts features into one
 * row that are cut one after the other with nothing to set and nothing new to mind between them.
 */
export function orderRows(operations: readonly Operation[], { gathered = false } = {}): OrderRow[] {
  const mountings = Math.max(...operations.map(({ pass }) => pass))
  const reasons = ceilingReasons(operations)
  let [place, last] = ['', '']
  return runsOf(operations, gathered).map((run) => {
    const [operation] = run.operations
    const stands =
      operation.pass === 0
        ? 'Away from the lathe'
        : `On the lathe${mountings > 1 ? `, mounting ${operation.pass}` : ''}`
    const heading = stands === place ? {} : { heading: stands }
    place = stands
    const setting = settingText(operation, reasons)
    const setAnew = setting !== '' && (setting !== last || 'heading' in heading)
    if (setting) last = setting
    return { ...run, ...heading, ...(setting && { setting }), setAnew }
  })
}

function runsOf(
  operations: readonly Operation[],
  gathered: boolean,
): Pick<OrderRow, 'first' | 'operations'>[] {
  const runs: Pick<OrderRow, 'first' | 'operations'>[] = []
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

const CUT = 'Cut the '

/** Features cut one after the other with nothing to set between them. */
const cutAlike = (a: Operation, b: Operation): boolean =>
  [a, b].every(({ spans, caliper, name }) => spans && caliper === undefined && name.startsWith(CUT)) &&
  (['tool', 'rpm', 'rpmCeiling', 'restPosition', 'restThrough', 'pass'] as const).every(
    (field) => a[field] === b[field],
  )

/** Tool, speed with its ceiling, and the rest; nothing where the lathe does not turn. */
function settingText(operation: Operation, reasons: readonly string[]): string {
  const { tool, rpm, rpmCeiling, ceilingBy } = operation
  const rest = restText(operation)
  if (!isTurning(operation)) return ''
  const why = ceilingBy === undefined ? '' : ` ${reasonLetter(reasons.indexOf(ceilingBy))}`
  return [
    tool,
    rpm === undefined ? 'no safe speed' : `${Math.floor(rpm)} rpm`,
    rpmCeiling === undefined ? '' : `never above ${Math.floor(rpmCeiling)} rpm${why}`,
    rest && `rest ${rest}`,
  ]
    .filter(Boolean)
    .join(' · ')
}

/** `7`, or `7–9` for operations that share a row. */
export const rowNumber = ({ first, operations }: OrderRow): string =>
  operations.length === 1 ? String(first) : `${first}–${first + operations.length - 1}`

/** What is done in a row and where, unless the words say that; away from the lathe also with what. */
export function rowText({ operations }: OrderRow, style: LengthStyle): string {
  const [one] = operations
  if (operations.length > 1) return CUT + operations.map((each) => featureText(each, style)).join('; ')
  const { where, tool, caliper } = one
  // The caliper stands in its own place beside the words.
  const name = caliper === undefined ? one.name : one.name.replace(` to ${lengthText(caliper, style)}`, '')
  const told = where?.every((end) => name.includes(lengthText(end, style)))
  const place = where && !told ? placeText(where, style) : ''
  return [name, place, isTurning(one) ? '' : tool].filter(Boolean).join(' · ')
}

/** Minutes of the row for one blank. */
export const rowMinutes = ({ operations }: OrderRow): number =>
  operations.reduce((sum, { minutesEach }) => sum + minutesEach, 0)

/** `at 5 in`, or `5 – 6-1/2 in` with one unit for both ends. */
export function placeText([from, to]: readonly [number, number], style: LengthStyle): string {
  return nm(from) === nm(to)
    ? `at ${lengthText(from, style)}`
    : `${lengthFigure(from, style)} – ${lengthText(to, style)}`
}

/** `ring (bead) 3/4 – 1-1/4 in`: what is cut, with its place once. */
function featureText({ name, where }: Operation, style: LengthStyle): string {
  const feature = name.slice(CUT.length)
  if (!where) return feature
  return `${feature.replace(` at ${lengthText(where[0], style)}`, '')} ${placeText(where, style)}`
}

/** What a row gives to mind: in full where it is new, else the numbers of the rows it stands at. */
export function rowCautions(
  { operations }: OrderRow,
  said: ReadonlyMap<string, number>,
): { fresh: string[]; before: number[] } {
  const sentences = [...new Set(operations.flatMap(({ caution }) => cautionSentences(caution)))]
  return {
    fresh: sentences.filter((sentence) => !said.has(sentence)),
    before: [...new Set(sentences.flatMap((sentence) => said.get(sentence) ?? []))],
  }
}
