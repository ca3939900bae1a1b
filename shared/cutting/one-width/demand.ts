/**
 * Strips that are all alike, to be crosscut into lengths: how many strips at least? A kerf is counted with every
 * length and once with the room, and all is in whole numbers of the largest common measure.
 */
export interface Demand {
  /** What one strip holds. */
  room: number
  /** Long ones first, none longer than the room. */
  lengths: Float64Array
  /** How many of each are wanted. */
  counts: Int32Array
}

/** How one strip is cut: places of lengths in the demand, long ones first, how many of each; and how many strips so. */
export interface StripCut {
  places: number[]
  counts: number[]
  copies: number
}

/** Strips in a list of cuts. */
export const stripsIn = (cuts: readonly StripCut[]): number => cuts.reduce((sum, cut) => sum + cut.copies, 0)

/** The place of the shortest length left, of those before a place; -1 where there is none. */
export function shortestLeft(left: Int32Array, before = left.length): number {
  let place = before - 1
  while (place >= 0 && left[place] === 0) place--
  return place
}

/** How often a cut could be had from what is left. */
export function timesOf(cut: StripCut, left: Int32Array): number {
  let times = Number.POSITIVE_INFINITY
  cut.places.forEach((place, i) => {
    times = Math.min(times, Math.floor(left[place]! / cut.counts[i]!))
  })
  return times
}

/** Takes the lengths of a cut off what is left. */
export function takeOff(cut: StripCut, left: Int32Array): void {
  cut.places.forEach((place, i) => {
    left[place] = left[place]! - cut.copies * cut.counts[i]!
  })
}
