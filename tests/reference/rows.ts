import { readFileSync } from 'node:fs'
import type { Tolerance } from '../near.ts'

/** One published value or worked example; `source` says from whom, `confidence` how it was had. */
export interface Row {
  id: string
  source: string
  what: string
  inputs: any
  expected: any
  tolerance: Tolerance
  units: string
  confidence: string
  data_file?: string
  note?: string
}

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))

export const checks = read('./checks.json') as Row[]
export const woodChecks = (read('./wood-checks.json') as { checks: Row[] }).checks

/** The row of `checks.json` by id. Name the id as a literal: the coverage test looks for it. */
export function row(id: string): Row {
  const found = checks.find((r) => r.id === id)
  if (!found) throw new Error(`no reference row ${id}`)
  return found
}

/** The rows of `wood-checks.json` whose id starts so. Name the prefix as a literal. */
export function woodRows(prefix: string): Row[] {
  const found = woodChecks.filter((r) => r.id.startsWith(prefix))
  if (found.length === 0) throw new Error(`no wood row ${prefix}…`)
  return found
}

/** A whole data set of `data/`. */
export const data = (file: string): any => read(`./data/${file}`)
