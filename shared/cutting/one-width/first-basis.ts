import type { Basis } from './basis.ts'
import type { Demand } from './demand.ts'
import { addFilling, type Fillings } from './fillings.ts'

/**
 * A basis to begin with: fillings long ones first, each cut (by parts) until one of its lengths runs out. So
 * every filling uses up one length and none of those before, and its inverse can be written down.
 */
export function firstBasis(
  { room, lengths, counts }: Demand,
  wanted: Float64Array,
  fillings: Fillings,
): Basis {
  const places = Int32Array.from([...counts].flatMap((n, place) => (n > 0 ? [place] : [])))
  const m = places.length
  const rowOf = new Int32Array(lengths.length).fill(-1)
  places.forEach((place, row) => {
    rowOf[place] = row
  })
  const left = wanted.slice()
  const columns = new Int32Array(m)
  const amount = new Float64Array(m)
  const gone: number[] = []
  const isGone = new Uint8Array(m)
  for (let n = 0; n < m; n++) {
    const own: number[] = []
    const of: number[] = []
    let rest = room
    let [times, last] = [Number.POSITIVE_INFINITY, -1]
    for (let row = 0; row < m; row++) {
      const place = places[row]!
      const count = isGone[row] === 1 ? 0 : Math.min(counts[place]!, Math.floor(rest / lengths[place]!))
      if (count <= 0) continue
      own.push(place)
      of.push(count)
      rest -= count * lengths[place]!
      if (left[row]! / count < times) [times, last] = [left[row]! / count, row]
    }
    columns[n] = addFilling(fillings, own, of)
    amount[n] = times
    own.forEach((place, i) => {
      left[rowOf[place]!] = Math.max(0, left[rowOf[place]!]! - times * of[i]!)
    })
    isGone[last] = 1
    gone.push(last)
  }
  const basis = {
    places,
    rowOf,
    wanted,
    columns,
    amount,
    inverse: new Float64Array(m * m),
    out: new Set<number>(),
  }
  invert(basis, fillings, gone)
  const worth = new Float64Array(lengths.length)
  for (let r = 0; r < m; r++)
    for (let i = 0; i < m; i++) worth[places[i]!] = worth[places[i]!]! + basis.inverse[r * m + i]!
  return { ...basis, worth }
}

/** Forward: the filling that uses a length up, less what earlier fillings cut of that length. */
function invert(
  { places, rowOf, columns, inverse }: Omit<Basis, 'worth'>,
  { starts, places: all, counts }: Fillings,
  gone: number[],
): void {
  const m = places.length
  const entries: { filling: number; count: number }[][] = Array.from({ length: m }, () => [])
  columns.forEach((column, n) => {
    for (let e = starts[column]!; e < starts[column + 1]!; e++)
      entries[rowOf[all[e]!]!]!.push({ filling: n, count: counts[e]! })
  })
  gone.forEach((row, n) => {
    inverse[n * m + row] = 1
    let own = 1
    for (const { filling, count } of entries[row]!) {
      if (filling === n) own = count
      else for (let i = 0; i < m; i++) inverse[n * m + i]! -= count * inverse[filling * m + i]!
    }
    for (let i = 0; i < m; i++) inverse[n * m + i]! /= own
  })
}
