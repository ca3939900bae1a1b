import type { Entered } from './job-file.ts'

/** The steps of `profile.stations[3].diameter`: names and list positions. */
export const pathSteps = (path: string): (string | number)[] =>
  [...path.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map((step) => (step[1] === undefined ? step[0] : Number(step[1])))

type Branch = Record<string | number, unknown>

/** What stands at the path, `undefined` where nothing does. */
export const entryAt = (file: unknown, path: string): unknown =>
  pathSteps(path).reduce<unknown>((value, step) => (value as Branch | null | undefined)?.[step], file)

/**
 * The file with another entry at the path; the branches beside it are shared. `undefined` or empty text takes the
 * field away, so that an emptied field is a missing one and gets its default.
 */
export function withEntry<T>(file: T, path: string, value: unknown): T {
  return withSteps(file, pathSteps(path), value === '' ? undefined : value) as T
}

function withSteps(branch: unknown, steps: (string | number)[], value: unknown): unknown {
  const [step, ...rest] = steps
  if (step === undefined) return value
  const isList = Array.isArray(branch) || (branch === undefined && typeof step === 'number')
  const grown = (
    isList ? [...((branch as unknown[] | undefined) ?? [])] : { ...(branch as Branch) }
  ) as Branch
  const next = withSteps(grown[step], rest, value)
  if (next === undefined && !isList) delete grown[step]
  else grown[step] = next
  return grown
}

/** A length or number of a file as text for its field: a bare number in a file is mm, whatever the job's units. */
export const lengthEntryText = (value: unknown): string =>
  value === undefined || value === null ? '' : typeof value === 'number' ? `${value} mm` : String(value)

/** A count or percentage as typed: a number where it is one, else the text, which the reader will refuse by name. */
export function enteredNumber(text: string): number | string | undefined {
  const trimmed = text.trim().replace(',', '.')
  if (trimmed === '') return undefined
  const number = Number(trimmed)
  return Number.isFinite(number) ? number : text
}

/** One change made in a form: the path of the field and its new value. */
export interface EntryDetail {
  path: string
  value: unknown
}

/** Tells the page that a field was changed. */
export const tellEntry = (from: HTMLElement, path: string, value: unknown): void => {
  const detail: EntryDetail = { path, value }
  from.dispatchEvent(new CustomEvent('entry', { detail, bubbles: true, composed: true }))
}

/** Entries of lists as they are sent: text stays text, so lengths are kept as entered. */
export const entries = (value: Entered | Entered[] | undefined): Entered[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value]
