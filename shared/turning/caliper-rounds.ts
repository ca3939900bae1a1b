import type { SizedPlace } from './calipers.ts'
import type { CaliperCut, SizingWay } from './kept-settings.ts'
import type { SizingOrder } from './sizing-order.ts'

/** Pieces sized one like another: the `first` of them in the batch, from 1, and then `every` so many; alone without. */
export interface CaliperRound {
  first: number
  every?: number
  cuts: RoundCut[]
}

/** What is sized next: diameter in mm, check or station keys, which caliper (from 1), and whether it is set for it. */
export interface RoundCut {
  diameter: number
  stations: string[]
  caliper: number
  reset: boolean
}

/** More ways than this to go along a piece are not kept in mind. Common practice, no source. */
const MOST_ROUNDS = 4

/** The shortest beginning after which pieces repeat, where beginning and repeat are short enough. */
function patternOf(pieces: string[]): { alone: number; every: number } | undefined {
  for (let rounds = 1; rounds <= Math.min(MOST_ROUNDS, pieces.length); rounds++)
    for (let every = rounds; every >= 1; every--) {
      const alone = rounds - every
      if (pieces.every((piece, i) => i < rounds || piece === pieces[i - every])) return { alone, every }
    }
  return undefined
}

const roundCuts = ({ diameters, cuts }: SizingOrder, places: SizedPlace[], made: CaliperCut[]): RoundCut[] =>
  made.map(({ cut, caliper, reset }) => ({
    diameter: diameters[cuts[cut]!.setting]!,
    stations: cuts[cut]!.places.map((place) => places[place]!.station),
    caliper: caliper + 1,
    reset,
  }))

/** Of ways with fewest resets first, the first that is easily kept to, as its rounds. */
export function roundsOf(
  order: SizingOrder,
  places: SizedPlace[],
  ways: SizingWay[],
  pieces: number,
): { rounds: CaliperRound[]; resets: number } {
  for (const way of ways) {
    const made = way.cuts(pieces)
    const said = new Map([...new Set(made)].map((cuts) => [cuts, JSON.stringify(cuts)]))
    const pattern = patternOf(made.map((cuts) => said.get(cuts)!))
    if (!pattern) continue
    const { alone, every } = pattern
    const rounds = made.slice(0, alone + every).map((cuts, i) => ({
      first: i + 1,
      ...(i >= alone && i + every < pieces && { every }),
      cuts: roundCuts(order, places, cuts),
    }))
    return { rounds, resets: way.resets(pieces) }
  }
  return { rounds: [], resets: 0 }
}
