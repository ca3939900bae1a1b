const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Where a function with one top between two places is greatest, to about 3e-8 of the way: golden-section search
 * (Kiefer 1953).
 *
 * @example Math.round(topBetween((x) => -((x - 3) ** 2), 0, 10) * 1000) // 3000
 */
export function topBetween(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to]
  let [low, high] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)]
  let [atLow, atHigh] = [f(low), f(high)]
  for (let round = 0; round < 36; round++) {
    if (atLow < atHigh) {
      ;[a, low, atLow] = [low, high, atHigh]
      high = a + GOLDEN * (b - a)
      atHigh = f(high)
    } else {
      ;[b, high, atHigh] = [high, low, atLow]
      low = b - GOLDEN * (b - a)
      atLow = f(low)
    }
  }
  return (a + b) / 2
}

/** Equal to that share of the whole, values are taken for one level. */
const LEVEL = 1e-12

/**
 * Places of a stretch at which a smooth function may be greatest: the looks themselves, in order, and the top
 * beside every look that is higher than its neighbours.
 */
export function topPlaces(f: (x: number) => number, looks: number[]): number[] {
  const values = looks.map(f)
  const level = LEVEL * Math.max(...values.map(Math.abs))
  const tops = looks.flatMap((_, i) => {
    const here = values[i]!
    const [before, after] = [
      values[i - 1] ?? Number.NEGATIVE_INFINITY,
      values[i + 1] ?? Number.NEGATIVE_INFINITY,
    ]
    const beside = Math.min(values[i - 1] ?? values[i + 1]!, values[i + 1] ?? values[i - 1]!)
    const top = here >= before && here >= after && here - beside > level
    return top ? [topBetween(f, looks[i - 1] ?? looks[i]!, looks[i + 1] ?? looks[i]!)] : []
  })
  return [...looks, ...tops].sort((a, b) => a - b)
}

/** That many places evenly spaced from one to another, both among them. */
export const evenPlaces = (from: number, to: number, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => (i === steps ? to : from + ((to - from) * i) / steps))
