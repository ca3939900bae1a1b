import { nm } from '../../units/length.ts'

/** The first entry of an ascending list that is more than the value. */
function firstAbove(ascending: readonly number[], value: number): number {
  let [low, high] = [0, ascending.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (ascending[middle]! > value) high = middle
    else low = middle + 1
  }
  return low
}

/**
 * Indices of the positions (mm, from the foot up) that do not lie between their neighbours: the fewest that have to go
 * so that the others rise from the foot with at most two at one position, as a step has. The foot itself stays.
 * Positions that are not known are passed over.
 *
 * @example outOfOrder([0, 500, 100, undefined, 200]) // [1]
 */
export function outOfOrder(positions: readonly (number | undefined)[]): number[] {
  const known = positions.flatMap((at, i) => (at === undefined ? [] : [{ i, at: nm(at) }]))
  const foot = known[0]?.i === 0 ? known[0].at : Number.NEGATIVE_INFINITY
  const kept = new Set(longestRise(known.filter(({ at }) => at >= foot)))
  return known.flatMap(({ i }) => (kept.has(i) ? [] : [i]))
}

/** Indices of a longest part that nowhere falls, less a third and further one at a position. */
function longestRise(known: readonly { i: number; at: number }[]): number[] {
  const ends: number[] = []
  const endAt: number[] = []
  const before: number[] = []
  known.forEach(({ at }, k) => {
    const place = firstAbove(endAt, at)
    before[k] = place === 0 ? -1 : ends[place - 1]!
    ends[place] = k
    endAt[place] = at
  })
  const rise: number[] = []
  for (let k = ends.at(-1) ?? -1; k >= 0; k = before[k]!) rise.unshift(k)
  const third = (n: number): boolean => n >= 2 && known[rise[n]!]!.at === known[rise[n - 2]!]!.at
  return rise.filter((_, n) => !third(n)).map((k) => known[k]!.i)
}
