import { nm } from '../units/length.ts'
import { type Profile, type Span, spansOf } from './profile.ts'
import { spanAt, spanRadius, spanTurns } from './radius.ts'
import { evenPlaces, topPlaces } from './top-between.ts'

/** A place where two profiles are compared: mm from the foot of the first, and the second’s diameter less the first’s. */
export interface DifferenceSample {
  at: number
  byDiameter: number
}

/** The place where two profiles differ most. Lengths mm. */
export interface GreatestDifference extends DifferenceSample {
  /** The diameter of each there; its side where it is left square. */
  a: number
  b: number
  /** Stations that open the span of each there. */
  stationA: number
  stationB: number
}

/** How one profile differs from another. Lengths mm. */
export interface ProfileDifference {
  /** Absent where they have no length in common. */
  greatest?: GreatestDifference
  /** Length of the second less that of the first. */
  length: number
  /** Both sides of every limit of a span, every greatest difference inside one, and places between, foot to top. */
  samples: DifferenceSample[]
  /** Where one is left square and the other turned, however alike they are across. */
  unlike: { from: number; to: number }[]
}

/** Places inside a stretch at which a turn of the difference is looked for. */
const LOOKS = 24

/** A stretch inside one span of each profile. */
interface Pair {
  from: number
  to: number
  a: Span
  b: Span
  /** Of the second profile against the first. */
  shift: number
}

const within = (pair: Pair, x: number): [a: number, b: number] => [
  2 * spanRadius(pair.a, x),
  2 * spanRadius(pair.b, x - pair.shift),
]

const byDiameter = (pair: Pair, x: number): number => {
  const [a, b] = within(pair, x)
  return b - a
}

/** Places of a stretch worth a sample: its limits, crests and roots of both, and every top of the difference. */
function placesIn(pair: Pair): number[] {
  const { from, to, a, b, shift } = pair
  const turns = [...spanTurns(a), ...spanTurns(b).map((x) => x + shift)].filter((x) => x > from && x < to)
  const looks = [...evenPlaces(from, to, LOOKS), ...turns].sort((x, y) => x - y)
  return topPlaces((x) => Math.abs(byDiameter(pair, x)), looks)
}

/** The stretches that both profiles have, cut at the limits of the spans of either. */
function pairsOf(a: Span[], b: Span[], shift: number): Pair[] {
  const [from, to] = [Math.max(a[0]!.from, b[0]!.from + shift), Math.min(a.at(-1)!.to, b.at(-1)!.to + shift)]
  const inside = [...a.map((span) => span.from), ...b.map((span) => span.from + shift)].filter(
    (x) => nm(x) > nm(from) && nm(x) < nm(to),
  )
  const limits = [from, ...inside, to].sort((x, y) => x - y)
  return limits.slice(1).flatMap((end, i) => {
    const start = limits[i]!
    if (nm(start) >= nm(end)) return []
    const middle = (start + end) / 2
    return [{ from: start, to: end, a: spanAt(a, middle), b: spanAt(b, middle - shift), shift }]
  })
}

/**
 * How a second profile differs from a first, both laid foot to foot or top to top: the largest difference of the
 * diameters, searched span by span, and of the lengths. Positions are from the foot of the first; at a step both
 * sides count. Lengths mm.
 *
 * @example profileDifference({ stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 50, diameter: 20, then: 'straight' }], split: false }, { stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 50, diameter: 23, then: 'straight' }], split: false }).greatest.byDiameter // 3
 */
export function profileDifference(
  first: Profile,
  second: Profile,
  laid: 'foot' | 'top' = 'foot',
): ProfileDifference {
  const [a, b] = [spansOf(first), spansOf(second)]
  const length = b.at(-1)!.to - b[0]!.from - (a.at(-1)!.to - a[0]!.from)
  const shift = laid === 'foot' ? a[0]!.from - b[0]!.from : a.at(-1)!.to - b.at(-1)!.to
  const pairs = pairsOf(a, b, shift)
  const samples: DifferenceSample[] = []
  let greatest: GreatestDifference | undefined
  for (const pair of pairs) {
    for (const at of placesIn(pair)) {
      const by = byDiameter(pair, at)
      samples.push({ at, byDiameter: by })
      if (greatest && Math.abs(by) <= Math.abs(greatest.byDiameter)) continue
      const [ofA, ofB] = within(pair, at)
      greatest = { at, byDiameter: by, a: ofA, b: ofB, stationA: pair.a.index, stationB: pair.b.index }
    }
  }
  const unlike = pairs
    .filter((pair) => (pair.a.shape === 'square') !== (pair.b.shape === 'square'))
    .map(({ from, to }) => ({ from, to }))
  return { ...(greatest && { greatest }), length, samples, unlike }
}
