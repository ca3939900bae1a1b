import { fewestResets } from './fewest-resets.ts'
import { keptSettings, ownCalipers, type SizingWay } from './kept-settings.ts'
import { type SizingOrder, thereAndBack } from './sizing-order.ts'

/** The ways there are to size a batch, and the fewest resets among them. */
export interface SizingWays {
  fewest(pieces: number): { resets: number; proven: boolean }
  /** Ways with the fewest resets known, those that are easily kept to first, and then any others. */
  candidates(pieces: number): SizingWay[]
}

const NOTHING: SizingWay = { resets: () => 0, cuts: () => [] }

/**
 * How a batch may be sized. First what a turner would do: every piece alike, or there and back on alternate pieces. Where none of them has as few resets as there would be if nothing had to come
 * before anything, every order that is allowed is gone over.
 */
export function sizingWays(order: SizingOrder, calipers: number): SizingWays {
  const settings = order.diameters.length
  if (settings === 0) return { fewest: () => ({ resets: 0, proven: true }), candidates: () => [NOTHING] }
  const settingOf = (cut: number): number => order.cuts[cut]!.setting
  const { there, back } = thereAndBack(order)
  const plain = [
    keptSettings([there], settingOf, calipers),
    ownCalipers([there, back], settingOf, calipers),
    keptSettings([there, back], settingOf, calipers),
  ]
  const floor = (pieces: number): number => settings + (pieces - 1) * Math.max(0, settings - calipers)
  let searched: SizingWay | undefined | 'not yet' = 'not yet'
  const search = (): SizingWay | undefined => {
    if (searched === 'not yet') searched = fewestResets(order, calipers)
    return searched
  }
  const leastPlain = (pieces: number): number => Math.min(...plain.map((way) => way.resets(pieces)))
  return {
    fewest(pieces) {
      const resets = leastPlain(pieces)
      if (resets === floor(pieces)) return { resets, proven: true }
      const least = search()
      return least ? { resets: least.resets(pieces), proven: true } : { resets, proven: false }
    },
    candidates(pieces) {
      const ways = [...plain]
      if (leastPlain(pieces) > floor(pieces)) ways.push(...[search()].filter((way) => way !== undefined))
      return ways.sort((a, b) => a.resets(pieces) - b.resets(pieces))
    },
  }
}
