import { arcRadius } from '../../shared/profile/arc-radius.ts'
import { needsDiameter } from '../../shared/profile/breaches/stations.ts'
import { type Profile, spansOf } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthFigure, nm } from '../../shared/units/length.ts'

/** A figure on the drawing and the place along the axis it belongs to, mm from the foot. */
export interface Mark {
  at: number
  text: string
  /** A check station: drawn with caliper points. */
  check?: boolean
}

/** What a mark needs to know of a check station. */
export interface CheckMark {
  key: string
  at: number
  target: number
  kind: 'diameter' | 'side'
}

/** Running lengths from the foot, one to a place, as they are struck from a story stick. */
export function runningMarks(profile: Profile, style: LengthStyle): Mark[] {
  const seen = new Set<number>()
  return profile.stations.flatMap(({ at }) => {
    if (seen.has(nm(at))) return []
    seen.add(nm(at))
    return [{ at, text: lengthFigure(at, style) }]
  })
}

/** Diameters at the stations (both of a step), sides of squares at their middle, check targets where they lie. */
export function diameterMarks(
  profile: Profile,
  style: LengthStyle,
  checks: readonly CheckMark[] = [],
): Mark[] {
  const marks: Mark[] = []
  profile.stations.forEach((station, i) => {
    const next = profile.stations[i + 1]
    // Between squares a diameter that was entered means nothing.
    if (station.diameter !== undefined && needsDiameter(profile.stations, i))
      marks.push({ at: station.at, text: `Ø ${lengthFigure(station.diameter, style)}` })
    if (station.then === 'square' && next && station.side !== undefined) {
      marks.push({ at: (station.at + next.at) / 2, text: `□ ${lengthFigure(station.side, style)}` })
    }
  })
  for (const check of checks) {
    const text = `${check.kind === 'side' ? '□' : 'Ø'} ${lengthFigure(check.target, style)}`
    const same = marks.find((mark) => nm(mark.at) === nm(check.at) && mark.text === text)
    if (same) same.check = true
    else marks.push({ at: check.at, text, check: true })
  }
  return withoutRepeats(marks.sort((a, b) => a.at - b.at))
}

/** Radii of beads and coves, and of ovolos and cavettos that are quarter rounds, at their middle. */
export const radiusMarks = (profile: Profile, style: LengthStyle): Mark[] =>
  spansOf(profile).flatMap((span) => {
    const radius = arcRadius(span)
    return radius === undefined
      ? []
      : [{ at: (span.from + span.to) / 2, text: `R ${lengthFigure(radius, style)}` }]
  })

/** Marks of two kinds in one row. */
export const togetherMarks = (a: readonly Mark[], b: readonly Mark[]): Mark[] =>
  [...a, ...b].sort((x, y) => x.at - y.at)

/** The marks that have room beside each other: where they are too many, those nearest to a neighbour go first. */
export function roomyMarks(marks: readonly Mark[], capacity: number, keep?: number): Mark[] {
  const kept = [...marks]
  const gapAt = (i: number) => Math.min(kept[i]!.at - kept[i - 1]!.at, kept[i + 1]!.at - kept[i]!.at)
  while (kept.length > Math.max(2, capacity)) {
    let [least, gap] = [1, Number.POSITIVE_INFINITY]
    for (let i = 1; i + 1 < kept.length; i++) {
      if (gapAt(i) < gap && kept[i]!.at !== keep) [least, gap] = [i, gapAt(i)]
    }
    kept.splice(least, 1)
  }
  return kept
}

/** A shared diameter is written once where two stations meet. */
const withoutRepeats = (marks: Mark[]): Mark[] =>
  marks.filter((mark, i) => {
    const before = marks[i - 1]
    return !(before && nm(before.at) === nm(mark.at) && before.text === mark.text)
  })
