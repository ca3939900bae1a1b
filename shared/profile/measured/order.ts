import { nm } from '../../units/length.ts'

interface Known {
  i: number
  at: number
}

/** The longest row that ends at a known position: how many it holds and the row it goes on from. */
interface Row {
  count: number
  /** Whether it ends with two at one position. */
  step: boolean
  last: Known
  before?: Row
}

/** The longest row ending at `last` as the first at its position, and as the second of a step. */
function rowsEndingAt(last: Known, rows: readonly Row[]): Row[] {
  let [first, second]: Row[] = [{ count: 1, step: false, last }]
  for (const before of rows) {
    const count = before.count + 1
    if (before.last.at < last.at && count > first!.count) first = { count, step: false, last, before }
    const closes = before.last.at === last.at && !before.step
    if (closes && count > (second?.count ?? 0)) second = { count, step: true, last, before }
  }
  return second ? [first!, second] : [first!]
}

/** Indices of the longest row that rises with at most two at one position; of several, the one that ends first. */
function longestRow(known: readonly Known[]): number[] {
  const rows: Row[] = []
  for (const last of known) rows.push(...rowsEndingAt(last, rows))
  let best = rows[0]
  for (const row of rows) if (row.count > best!.count) best = row
  const indices: number[] = []
  for (let row = best; row; row = row.before) indices.unshift(row.last.i)
  return indices
}

const rises = (known: readonly Known[]): boolean =>
  known.every(
    ({ at }, k) => k === 0 || known[k - 1]!.at < at || (known[k - 1]!.at === at && known[k - 2]?.at !== at),
  )

/**
 * Indices of the positions (mm, from the foot up) that do not lie between their neighbours: the fewest that have to go
 * so that the others rise from the foot with at most two at one position, as a step has. The foot itself stays.
 * Positions that are not known are passed over.
 *
 * @example outOfOrder([0, 500, 100, undefined, 200]) // [1]
 */
export function outOfOrder(positions: readonly (number | undefined)[]): number[] {
  const known = positions.flatMap((at, i) => (at === undefined ? [] : [{ i, at: nm(at) }]))
  if (rises(known)) return []
  const foot = known[0]!.i === 0 ? known[0]!.at : Number.NEGATIVE_INFINITY
  const kept = new Set(longestRow(known.filter(({ at }) => at >= foot)))
  return known.flatMap(({ i }) => (kept.has(i) ? [] : [i]))
}
