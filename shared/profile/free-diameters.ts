import { nm } from '../units/length.ts'
import { type Profile, type Span, type Station, spansOf } from './profile.ts'
import { diametersOf } from './radius.ts'

/** Stations whose diameters change together: equal ones joined by cylinders, beads or coves. */
export interface FreeGroup {
  stations: number[]
  diameter: number
  /** Middle of the group, mm from the foot. */
  at: number
  /** Least and most factor on its diameters; 1 lies between them. */
  least: number
  most: number
}

/** Beyond these factors it is another part, not a heavier or lighter one. Common practice, no source. */
const LEAST = 0.6
const MOST = 1.6
/** Share of its own thickness that a cove may lose at its root. Common practice, no source. */
const ROOT_LOSS = 0.5

/** The turned spans that end or start at every station. */
function turnedBeside({ stations }: Profile, spans: Span[]): Span[][] {
  const beside: Span[][] = stations.map(() => [])
  for (const span of spans.filter(({ shape }) => shape !== 'square')) {
    beside[span.index]!.push(span)
    beside[span.index + 1]!.push(span)
  }
  return beside
}

/** Whether a station keeps its diameter by itself: it has to fit something, or nothing turned meets it. */
const holdsItself = ({ fixed, diameter }: Station, beside: Span[]): boolean =>
  fixed === true ||
  diameter === undefined ||
  beside.length === 0 ||
  beside.some(({ station }) => station.tenon || station.fixed)

/** Groups of stations joined by spans that a common change leaves what they are: straights, beads and coves with equal ends. */
function joined({ stations }: Profile, spans: Span[]): number[][] {
  const groupOf = stations.map((_, i) => i)
  for (const { shape, index, d0, d1 } of spans) {
    const joins = shape === 'straight' || shape === 'bead' || shape === 'cove'
    if (joins && nm(d0) === nm(d1)) groupOf[index + 1] = groupOf[index]!
  }
  const groups = new Map<number, number[]>()
  groupOf.forEach((group, i) => {
    groups.set(group, [...(groups.get(group) ?? []), i])
  })
  return [...groups.values()]
}

/**
 * How far a diameter may go: a bead stays inside the largest square, a cove keeps half of its root. A crest rises, and
 * a root sinks, by no more than the end of its span that changes most.
 */
function limitsAt(diameter: number, beside: Span[], largestSide: number): [least: number, most: number] {
  const of = (shape: Span['shape']): Span[] => beside.filter((span) => span.shape === shape)
  const roots = of('cove').map((span) => diametersOf(span).least)
  const crests = of('bead').map((span) => diametersOf(span).greatest)
  const least = Math.max(LEAST, ...roots.map((root) => (diameter - ROOT_LOSS * root) / diameter))
  const thickest = Math.max(diameter, ...crests)
  const most = Math.min(MOST, (diameter + largestSide - thickest) / diameter)
  return [Math.min(1, least), Math.max(1, most)]
}

/**
 * The diameters of a profile that may change, in groups that stay equal, from the foot up. Squares, tenons, fixed
 * stations and those in `keep` do not change, nor does what is level with one of them.
 */
export function freeGroups(profile: Profile, keep: number[]): FreeGroup[] {
  const { stations } = profile
  const spans = spansOf(profile)
  const beside = turnedBeside(profile, spans)
  const kept = new Set(keep)
  const sides = spans.filter(({ shape }) => shape === 'square').map(({ d0 }) => d0)
  const largestSide = sides.length > 0 ? Math.max(...sides) : Number.POSITIVE_INFINITY
  return joined(profile, spans).flatMap((group) => {
    if (group.some((i) => kept.has(i) || holdsItself(stations[i]!, beside[i]!))) return []
    const [first, last] = [stations[group[0]!]!, stations[group.at(-1)!]!]
    const limits = group.map((i) => limitsAt(first.diameter!, beside[i]!, largestSide))
    return [
      {
        stations: group,
        diameter: first.diameter!,
        at: (first.at + last.at) / 2,
        least: Math.max(...limits.map(([least]) => least)),
        most: Math.min(...limits.map(([, most]) => most)),
      },
    ]
  })
}
