import { type Basis, improved, mended } from './basis.ts'
import { bestFilling } from './pricing.ts'
import { isOver, type Search, wishedStrips } from './search.ts'

/** Worth of lengths is rounded down to parts of a strip so fine. */
const PARTS = 2 ** 30
/** Strips by parts no farther than this above a whole number may be that number. */
const NEAR = 2e-5
/** A filling has to be worth so much more than a strip to be of use. */
const USEFUL = PARTS * (1 + 1e-7)

/** Whole numbers: a ÷ b rounded up, exactly. */
const quotientUp = (a: number, b: number): number => (a - (a % b)) / b + (a % b > 0 ? 1 : 0)

/** How near to the calm worths fillings are priced, by how often nothing came of it. */
const CALM = [0.8, 0.4, 0]
const MISSES_MAX = CALM.length - 1

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
  const calm = calmed(search, basis, left)
  let bound = 0
  for (let missed = 0; !isOver(search); ) {
    const value = worthInAll(basis, left)
    if (value <= enough || bound >= useless || Math.ceil(value - NEAR) <= bound) break
    const worth = calm.between(missed)
    const sum = sumOf(left, worth)
    const worths = { worth, adding: wholeParts(basis.worth), least: USEFUL, inPairs: missed === MISSES_MAX }
    const best = bestFilling(demand, left, worths, fillings, patience)
    if (best.worth > 0) bound = Math.max(bound, quotientUp(sum, best.worth))
    if (best.worth > 0) calm.seen(worth, sum, best.worth)
    if (bound >= useless || (best.added === 0 && missed >= MISSES_MAX)) break
    missed = best.added === 0 ? missed + 1 : 0
    improved(basis, fillings, patience)
  }
  return bound
}

const sumOf = (left: Int32Array, worth: Float64Array): number =>
  left.reduce((sum, n, place) => sum + n * worth[place]!, 0)

const wholeParts = (worth: Float64Array): Float64Array => worth.map((w) => Math.max(0, Math.floor(w * PARTS)))

/**
 * What lengths are worth swings widely from step to step. So fillings are priced between that and the worths that
 * gave the best bound so far, nearer to the former each time nothing came of it (Wentges 1997; from memory).
 */
function calmed({ demand: { room, lengths } }: Search, basis: Basis, left: Int32Array) {
  let still = lengths.map((length, place) => (left[place]! > 0 ? length / room : 0))
  let most = 0
  return {
    between: (missed: number): Float64Array => {
      const near = CALM[missed] ?? 0
      return wholeParts(basis.worth.map((w, place) => near * still[place]! + (1 - near) * Math.max(0, w)))
    },
    seen: (worth: Float64Array, sum: number, best: number) => {
      if (sum / best <= most) return
      most = sum / best
      still = worth.map((w) => w / best)
    },
  }
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
  if (!mended(basis, fillings, patience) || !improved(basis, fillings, patience)) return false
  const wished = wishedStrips(search) - strips
  const bound = relaxed(search, basis, left, { enough: Math.min(wished, ease - strips), useless: wished + 1 })
  return bound <= wished && Math.ceil(worthInAll(basis, left) - NEAR) <= wished
}
