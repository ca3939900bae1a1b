import type { Demand } from './demand.ts'

/** Largest factor tried in the rounded functions. */
const FACTOR_MAX = 20
/** Lengths tried as the shortest that counts. */
const LEASTS_MAX = 500

/**
 * Strips that are needed at least, without solving anything: the room of all lengths under dual-feasible
 * functions. Each maps lengths so that whatever fits in a strip still fits in one afterwards; what all lengths
 * then take up, rounded up to whole strips, is a bound. Three families: long lengths count whole and short ones
 * nothing (Martello & Toth 1990, bound L2), lengths rounded down to parts of a strip (Fekete & Schepers 2001,
 * u(k)), and the same seen from the middle (Carlier, Clautiaux & Moukrim 2007, f1). From memory.
 */
export function plainBound({ room, lengths, counts }: Demand): number {
  let bound = 0
  const offer = (mapped: (length: number) => number, whole: number) => {
    let sum = 0
    for (let i = 0; i < lengths.length; i++) sum += counts[i]! * mapped(lengths[i]!)
    bound = Math.max(bound, Math.ceil(sum / whole))
  }
  offer((x) => x, room)
  for (let i = 0; i < lengths.length; i += Math.ceil(lengths.length / LEASTS_MAX)) {
    const least = lengths[i]!
    if (2 * least > room) continue
    offer((x) => (x > room - least ? room : x < least ? 0 : x), room)
    offer(aroundMiddle(room, least), 2 * Math.floor(room / least))
  }
  offer((x) => (2 * x > room ? 1 : 0), 1)
  for (let k = 2; k <= FACTOR_MAX; k++)
    offer((x) => (((k + 1) * x) % room === 0 ? k * x : (k + 1) * x - (((k + 1) * x) % room)), k * room)
  return bound
}

/** Lengths in whole numbers of the least, doubled; over the middle by what they leave of a strip. */
function aroundMiddle(room: number, least: number): (length: number) => number {
  const whole = Math.floor(room / least)
  return (x) =>
    2 * x > room
      ? 2 * (whole - Math.floor((room - x) / least))
      : 2 * x === room
        ? whole
        : 2 * Math.floor(x / least)
}
