/** Ways to fill a strip, by number: which lengths, and how many of each. */
export interface Fillings {
  /** Where each begins in `places` and `counts`; one more at the end. */
  starts: number[]
  places: number[]
  counts: number[]
  /** Number by what it holds. */
  known: Map<string, number>
}

export const noFillings = (): Fillings => ({ starts: [0], places: [], counts: [], known: new Map() })

export const fillingsIn = ({ starts }: Fillings): number => starts.length - 1

/** Adds one, if it is new; its number. */
export function addFilling(
  { starts, places, counts, known }: Fillings,
  own: readonly number[],
  of: readonly number[],
): number {
  const name = `${own.join()} ${of.join()}`
  const old = known.get(name)
  if (old !== undefined) return old
  known.set(name, starts.length - 1)
  for (let i = 0; i < own.length; i++) {
    places.push(own[i]!)
    counts.push(of[i]!)
  }
  starts.push(places.length)
  return starts.length - 2
}

/** What the lengths of one are worth together. */
export function worthOf({ starts, places, counts }: Fillings, filling: number, worth: Float64Array): number {
  let sum = 0
  for (let e = starts[filling]!, end = starts[filling + 1]!; e < end; e++)
    sum += worth[places[e]!]! * counts[e]!
  return sum
}
