import { nm } from '../units/length.ts'
import type { Profile, Span } from './profile.ts'
import { spansOf } from './profile.ts'

/** A joint of the job as far as it may be a tenon of the profile. Lengths mm. */
export interface EndJoint {
  kind: 'mortise' | 'hole' | 'tenon'
  /** Its end, its shoulder or its middle. */
  at: number
  /** Its diameter or its sides. */
  size: number[]
  /** Its length. */
  depth: number
}

/** Which end of the part a tenon is at, and how far in from there it reaches, mm. */
export interface TenonEnd {
  end: 'foot' | 'top'
  reach: number
}

/** The end a joint forms a tenon of: given by its end, its middle or its shoulder. Absent away from both ends. */
export function tenonEndOf(spans: Span[], { at, depth }: EndJoint): TenonEnd | undefined {
  const [fromFoot, fromTop] = [at - spans[0]!.from, spans.at(-1)!.to - at]
  const end = fromFoot <= fromTop ? 'foot' : 'top'
  const distance = Math.max(0, Math.min(fromFoot, fromTop))
  if (nm(distance) > nm(depth)) return undefined
  if (nm(distance) === 0) return { end, reach: depth }
  return { end, reach: nm(distance) <= nm(depth / 2) ? distance + depth / 2 : distance }
}

/** Lengths and diameters that are the same to within so much, mm. */
interface TenonTolerance {
  diameter: number
  position: number
}

/** Straight turned spans from the end inward that the joint takes in whole and whose diameter is its own. */
function tenonSpans(spans: Span[], joint: EndJoint, tolerance: TenonTolerance): Span[] {
  const place = joint.kind === 'tenon' ? tenonEndOf(spans, joint) : undefined
  if (!place) return []
  const inward = place.end === 'foot' ? spans : [...spans].reverse()
  const [foot, top] = [spans[0]!.from, spans.at(-1)!.to]
  const deepest = (span: Span): number => (place.end === 'foot' ? span.to - foot : top - span.from)
  const isIts = (span: Span): boolean =>
    span.shape === 'straight' &&
    nm(deepest(span)) <= nm(place.reach + tolerance.position) &&
    joint.size.some(
      (size) =>
        nm(size) >= nm(Math.min(span.d0, span.d1) - tolerance.diameter) &&
        nm(size) <= nm(Math.max(span.d0, span.d1) + tolerance.diameter),
    )
  const body = inward.findIndex((span) => !isIts(span))
  return body < 0 ? [] : inward.slice(0, body)
}

/**
 * The profile with the turned ends that tenon joints name marked as tenons, where their stations do not say
 * otherwise: straights that lie in the joint’s length, to within the position tolerance, and have its diameter,
 * to within the diameter tolerance. A tenon on a part left square is no span of the profile and is sawn.
 */
export function withTenons(profile: Profile, joints: EndJoint[], tolerance: TenonTolerance): Profile {
  if (!joints.some((joint) => joint.kind === 'tenon')) return profile
  const spans = spansOf(profile)
  const tenons = new Set(
    joints.flatMap((joint) => tenonSpans(spans, joint, tolerance).map((span) => span.index)),
  )
  if (tenons.size === 0) return profile
  const stations = profile.stations.map((station, i) =>
    tenons.has(i) ? { ...station, tenon: station.tenon ?? true } : station,
  )
  return { ...profile, stations }
}
