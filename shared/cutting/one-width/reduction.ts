import { type Demand, type StripCut, shortestLeft, takeOff } from './demand.ts'

/**
 * Strips that some best plan surely cuts so, taken off what is wanted: two lengths that together fill a strip,
 * a longest length that nothing fits beside, and a longest length beside which only one more fits, with the
 * longest that does (Martello & Toth 1990, dominance of fillings; from memory).
 */
export function sureCuts({ room, lengths, counts }: Demand): { cuts: StripCut[]; left: Int32Array } {
  const left = counts.slice()
  const cuts = exactPairs({ room, lengths, counts }, left)
  for (let place = 0; place < left.length; place++) {
    while (left[place]! > 0) {
      const cut = sureCut(room, lengths, left, place)
      if (!cut) return { cuts, left }
      takeOff(cut, left)
      cuts.push(cut)
    }
  }
  return { cuts, left }
}

/** Every two lengths that make up the room: wherever a plan cuts them, they could change places with what lies beside. */
function exactPairs({ room, lengths }: Demand, left: Int32Array): StripCut[] {
  const cuts: StripCut[] = []
  for (let [i, j] = [0, left.length - 1]; i <= j; ) {
    const sum = lengths[i]! + lengths[j]!
    if (sum > room) i++
    else if (sum < room) j--
    else {
      const copies = i === j ? Math.floor(left[i]! / 2) : Math.min(left[i]!, left[j]!)
      if (copies > 0) {
        cuts.push(i === j ? { places: [i], counts: [2], copies } : { places: [i, j], counts: [1, 1], copies })
        left[i] = left[i]! - copies
        left[j] = left[j]! - copies
      }
      i++
      j--
    }
  }
  return cuts
}

/** The cut of the longest length left, where it is sure; as often as it is. */
function sureCut(room: number, lengths: Float64Array, left: Int32Array, place: number): StripCut | undefined {
  const rest = room - lengths[place]!
  left[place] = left[place]! - 1
  const last = shortestLeft(left)
  const second = last >= 0 && left[last]! > 1 ? last : shortestLeft(left, last)
  const beside = left.findIndex((n, i) => n > 0 && lengths[i]! <= rest)
  left[place] = left[place]! + 1
  if (beside < 0) return { places: [place], counts: [1], copies: left[place]! }
  if (second >= 0 && lengths[last]! + lengths[second]! <= rest) return undefined
  return beside === place
    ? { places: [place], counts: [2], copies: Math.floor(left[place]! / 2) }
    : { places: [place, beside], counts: [1, 1], copies: Math.min(left[place]!, left[beside]!) }
}
