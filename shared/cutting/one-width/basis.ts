import type { Patience } from '../line.ts'
import { type Fillings, fillingsIn, worthOf } from './fillings.ts'

/** Smaller figures are nothing: rounding. */
const NOTHING = 1e-9
const SMALL_PIVOT = 1e-7
/** What a strip of a filling that is kept out costs more, strips. */
const DEAR = 4

/**
 * A corner of the relaxed problem, in which fillings may be cut by parts: least number of strips for at least
 * what is wanted of each length. One row for each length that is wanted.
 */
export interface Basis {
  /** Place of the length of each row, and the row of each place or -1. */
  places: Int32Array
  rowOf: Int32Array
  /** What is wanted, by row. */
  wanted: Float64Array
  /** What is in the basis: the number of a filling; -1 - place for what is cut of a length beyond what is wanted. */
  columns: Int32Array
  /** How much of each. */
  amount: Float64Array
  /** The inverse of the basis, row by row. */
  inverse: Float64Array
  /** What one of each length is worth, by place: strips. */
  worth: Float64Array
  /** Fillings that are kept out. */
  out: ReadonlySet<number>
}

/** The column of a filling, or of a length cut beyond what is wanted, in terms of the basis. */
function inBasis({ places, rowOf, inverse }: Basis, fillings: Fillings, column: number): Float64Array {
  const m = places.length
  const out = new Float64Array(m)
  if (column < 0) {
    const row = rowOf[-1 - column]!
    for (let r = 0, at = row; r < m; r++, at += m) out[r] = -inverse[at]!
    return out
  }
  for (let e = fillings.starts[column]!, end = fillings.starts[column + 1]!; e < end; e++) {
    const row = rowOf[fillings.places[e]!]!
    if (row < 0) continue
    const count = fillings.counts[e]!
    for (let r = 0, at = row; r < m; r++, at += m) out[r] = out[r]! + count * inverse[at]!
  }
  return out
}

/** What putting one more of a column in changes the number of strips by. */
const gainOf = ({ worth, out }: Basis, fillings: Fillings, column: number): number =>
  column < 0
    ? worth[-1 - column]!
    : 1 - worthOf(fillings, column, worth) + (out.size > 0 && out.has(column) ? DEAR : 0)

/** Puts a column in the basis in the place of that of a row. */
function exchange(
  basis: Basis,
  row: number,
  column: number,
  alpha: Float64Array,
  gain: number,
  patience: Patience,
) {
  const { places, columns, amount, inverse, worth } = basis
  const m = places.length
  patience.steps += m * m
  const own = row * m
  const pivot = alpha[row]!
  const filled: number[] = []
  for (let i = 0; i < m; i++) {
    const value = inverse[own + i]!
    if (value === 0) continue
    const next = value / pivot
    inverse[own + i] = next
    filled.push(i)
    worth[places[i]!] = worth[places[i]!]! + gain * next
  }
  amount[row] = amount[row]! / pivot
  const dense = filled.length * 2 > m
  for (let r = 0; r < m; r++) {
    const factor = alpha[r]!
    if (r === row || factor === 0) continue
    amount[r] = amount[r]! - factor * amount[row]!
    const at = r * m
    if (dense) {
      for (let i = 0; i < m; i++) inverse[at + i] = inverse[at + i]! - factor * inverse[own + i]!
    } else {
      for (const i of filled) inverse[at + i] = inverse[at + i]! - factor * inverse[own + i]!
    }
  }
  columns[row] = column
}

/** The row that runs out first when a column is put in; -1 when none does. */
function leavingRow({ amount }: Basis, alpha: Float64Array): number {
  let row = -1
  let [least, pivot] = [Number.POSITIVE_INFINITY, 0]
  for (let r = 0; r < alpha.length; r++) {
    if (alpha[r]! <= SMALL_PIVOT) continue
    const ratio = Math.max(0, amount[r]!) / alpha[r]!
    if (ratio < least - NOTHING || (ratio <= least + NOTHING && alpha[r]! > pivot)) {
      if (ratio < least) least = ratio
      pivot = alpha[r]!
      row = r
    }
  }
  return row
}

/** Keeps a filling in the basis out from now on: it is dear, so that the next exchanges drop it where they can. */
export function keepOut(basis: Basis, row: number): void {
  const { places, columns, inverse, worth, out } = basis
  basis.out = new Set([...out, columns[row]!])
  places.forEach((place, i) => {
    worth[place] = worth[place]! + DEAR * inverse[row * places.length + i]!
  })
}

/**
 * Puts in whatever lowers the number of strips, the steepest first, until nothing does. Whether it came to that.
 */
export function improved(basis: Basis, fillings: Fillings, patience: Patience): boolean {
  const most = 20 * basis.places.length + 200
  for (let n = 0; n < most && !patience.isSpent(); n++) {
    let [column, gain] = [0, -NOTHING]
    let found = false
    for (let j = 0; j < fillingsIn(fillings); j++) {
      const own = gainOf(basis, fillings, j)
      if (own < gain) [column, gain, found] = [j, own, true]
    }
    for (const place of basis.places) {
      if (basis.worth[place]! < gain) [column, gain, found] = [-1 - place, basis.worth[place]!, true]
    }
    if (!found) return true
    const alpha = inBasis(basis, fillings, column)
    const row = leavingRow(basis, alpha)
    if (row < 0) return false
    exchange(basis, row, column, alpha, gain, patience)
  }
  return false
}

/**
 * Makes the amounts sound again (none below nothing) after the wishes have changed, by exchanges that cost the
 * fewest strips. Whether it came to that.
 */
export function mended(basis: Basis, fillings: Fillings, patience: Patience): boolean {
  const { places, amount, inverse, worth } = basis
  const m = places.length
  const most = 10 * m + 100
  const rho = new Float64Array(worth.length)
  for (let n = 0; n < most && !patience.isSpent(); n++) {
    let row = -1
    let least = -NOTHING
    for (let r = 0; r < m; r++) if (amount[r]! < least) [row, least] = [r, amount[r]!]
    if (row < 0) return true
    rho.fill(0)
    for (let i = 0; i < m; i++) rho[places[i]!] = inverse[row * m + i]!
    let [column, ratio, pivot] = [0, Number.POSITIVE_INFINITY, 0]
    let found = false
    const offer = (j: number, alpha: number, gain: number) => {
      if (alpha >= -SMALL_PIVOT) return
      const own = Math.max(0, gain) / -alpha
      if (own < ratio - NOTHING || (own <= ratio + NOTHING && -alpha > pivot))
        [column, ratio, pivot, found] = [j, Math.min(own, ratio), -alpha, true]
    }
    for (const place of places) offer(-1 - place, -rho[place]!, worth[place]!)
    for (let j = 0; j < fillingsIn(fillings); j++) {
      const alpha = worthOf(fillings, j, rho)
      if (alpha < -SMALL_PIVOT) offer(j, alpha, gainOf(basis, fillings, j))
    }
    if (!found) return false
    const alpha = inBasis(basis, fillings, column)
    if (alpha[row]! >= -SMALL_PIVOT / 2) return false
    exchange(basis, row, column, alpha, gainOf(basis, fillings, column), patience)
  }
  return false
}

/** A basis for the same rows and other wishes; amounts reckoned anew. */
export function wishing(basis: Basis, wanted: Float64Array): Basis {
  const { places, inverse } = basis
  const m = places.length
  const amount = new Float64Array(m)
  for (let r = 0; r < m; r++) {
    let sum = 0
    for (let i = 0, at = r * m; i < m; i++, at++) sum += inverse[at]! * wanted[i]!
    amount[r] = sum
  }
  return {
    ...basis,
    wanted,
    amount,
    columns: basis.columns.slice(),
    inverse: inverse.slice(),
    worth: basis.worth.slice(),
  }
}

/** The basis without the rows of lengths that are wanted no longer: what is cut of them beyond that is in it. */
export function narrowed(basis: Basis): Basis {
  const { places, rowOf, wanted, columns, amount, inverse, worth } = basis
  const m = places.length
  const gone = (place: number) => wanted[rowOf[place]!]! <= 0
  const keptRows: number[] = []
  for (let r = 0; r < m; r++) if (columns[r]! >= 0 || !gone(-1 - columns[r]!)) keptRows.push(r)
  const keptPlaces = [...places].filter((place) => !gone(place))
  const k = keptPlaces.length
  if (k === m || keptRows.length !== k) return basis
  const old = keptPlaces.map((place) => rowOf[place]!)
  const next: Basis = {
    places: Int32Array.from(keptPlaces),
    rowOf: new Int32Array(rowOf.length).fill(-1),
    wanted: Float64Array.from(old, (i) => wanted[i]!),
    columns: Int32Array.from(keptRows, (r) => columns[r]!),
    amount: Float64Array.from(keptRows, (r) => amount[r]!),
    inverse: new Float64Array(k * k),
    worth: new Float64Array(worth.length),
    out: basis.out,
  }
  keptPlaces.forEach((place, i) => {
    next.rowOf[place] = i
    next.worth[place] = worth[place]!
  })
  for (let r = 0; r < k; r++)
    for (let i = 0; i < k; i++) next.inverse[r * k + i] = inverse[keptRows[r]! * m + old[i]!]!
  return next
}
