import { type Basis, improved, mended } from './basis.ts'
import { fillingsIn } from './fillings.ts'
import { bestFilling } from './pricing.ts'
import { isOver, type Search, wishedStrips } from './search.ts'

/** Worth of lengths is rounded down to parts of a strip so fine. */
const PARTS = 2 ** 26
/** A filling has to be worth so much more than a strip to be of use. */
const USEFUL = PARTS * (1 + 1e-6)

/** Whole numbers: a ÷ b rounded up, exactly. */
const quotientUp = (a: number, b: number): number => (a - (a % b)) / b + (a % b > 0 ? 1 : 0)

/** What all that is left is worth: strips, were fillings cut by parts. */
export const worthInAll = ({ worth }: Basis, left: Int32Array): number =>
  left.reduce((sum, n, place) => sum + n * worth[place]!, 0)

/**
 * Looks for fillings that lower the number of strips, until there is none or no more is needed: `enough` strips
 * or less. Answers a bound on whole strips for what is left: all that lengths are worth (whole numbers), by what
 * the best filling is worth, rounded up (Farley 1990; from memory); no rounding enters it.
 */
export function relaxed(
  search: Search,
  basis: Basis,
  left: Int32Array,
  { enough, useless }: { enough: number; useless: number },
): number {
  const { demand, fillings, patience } = search
  const parts = new Float64Array(demand.lengths.length)
  let bound = 0
  while (!isOver(search)) {
    const value = worthInAll(basis, left)
    if (value <= enough || bound >= useless || Math.ceil(value - 1e-6) <= bound) break
    let sum = 0
    left.forEach((n, place) => {
      parts[place] = Math.max(0, Math.floor(basis.worth[place]! * PARTS))
      sum += n * parts[place]!
    })
    const from = fillingsIn(fillings)
    const best = bestFilling(demand, left, parts, USEFUL, fillings, patience)
    if (best.worth > 0) bound = Math.max(bound, quotientUp(sum, best.worth))
    if (best.added === 0 || bound >= useless) break
    improved(basis, fillings, from, patience)
  }
  return bound
}

/** Makes a basis sound and as good as need be; whether its strips may still come to a better plan. */
export function isSettled(
  search: Search,
  basis: Basis,
  left: Int32Array,
  strips: number,
  ease: number,
): boolean {
  const { fillings, patience } = search
  if (!mended(basis, fillings, patience) || !improved(basis, fillings, 0, patience)) return false
  const wished = wishedStrips(search) - strips
  const bound = relaxed(search, basis, left, { enough: Math.min(wished, ease - strips), useless: wished + 1 })
  return bound <= wished && Math.ceil(worthInAll(basis, left) - 1e-6) <= wished
}
