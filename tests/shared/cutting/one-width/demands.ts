import fc from 'fast-check'
import type { Demand, StripCut } from '../../../../shared/cutting/one-width/demand.ts'

/** Strips of a room to be cut into lengths, each as often as it is listed. */
export function demandOf(room: number, all: number[]): Demand {
  const lengths = [...new Set(all)].sort((a, b) => b - a)
  return {
    room,
    lengths: Float64Array.from(lengths),
    counts: Int32Array.from(lengths, (length) => all.filter((other) => other === length).length),
  }
}

/** The lengths of a demand one by one, long ones first. */
export const allOf = ({ lengths, counts }: Demand): number[] =>
  [...lengths].flatMap((length, i) => Array<number>(counts[i]!).fill(length))

/** The fewest strips, by putting every length in every strip it fits. */
export function fewestByTrying({ room }: Demand, all: number[]): number {
  let best = all.length
  const rest: number[] = []
  const put = (n: number): void => {
    if (rest.length >= best) return
    if (n === all.length) {
      best = rest.length
      return
    }
    const tried = new Set<number>()
    for (let s = 0; s < rest.length; s++) {
      if (rest[s]! < all[n]! || tried.has(rest[s]!)) continue
      tried.add(rest[s]!)
      rest[s] = rest[s]! - all[n]!
      put(n + 1)
      rest[s] = rest[s]! + all[n]!
    }
    rest.push(room - all[n]!)
    put(n + 1)
    rest.pop()
  }
  put(0)
  return best
}

/** What is wrong with cuts: strips too full, lengths cut too often or not at all. */
export function faultsOf({ room, lengths, counts }: Demand, cuts: StripCut[]): string[] {
  const left = counts.slice()
  const faults: string[] = []
  for (const { places, counts: of, copies } of cuts) {
    let sum = 0
    places.forEach((place, i) => {
      sum += of[i]! * lengths[place]!
      left[place] = left[place]! - copies * of[i]!
    })
    if (sum > room) faults.push(`a strip of ${room} holds ${sum}`)
    if (!(copies >= 1)) faults.push(`a strip is cut ${copies} times`)
  }
  left.forEach((n, place) => {
    if (n !== 0) faults.push(`${n} of ${lengths[place]} are left`)
  })
  return faults
}

/** Small demands: up to nine lengths in strips of twelve to sixty. */
export const small = fc
  .integer({ min: 12, max: 60 })
  .chain((room) =>
    fc
      .array(fc.integer({ min: 2, max: room }), { minLength: 1, maxLength: 9 })
      .map((all) => demandOf(room, all)),
  )
