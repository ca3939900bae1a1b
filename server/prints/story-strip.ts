import { stickPlaces } from '../../shared/blank/stick-places.ts'
import type { Joint } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { jointReach } from '../../shared/profile/joint-reach.ts'
import { type Span, spansOf } from '../../shared/profile/profile.ts'
import { nm } from '../../shared/units/length.ts'
import { lookMark } from './figures.ts'
import { positionsOf } from './positions.ts'
import { restPlace } from './rest-place.ts'

/** Height of the face with figures from the foot, down to the fold, and of both, mm: names need more room. */
export const FACE_MM = 50
export const STRIP_MM = 120

/** A line across the strip. Lengths mm. */
export interface Mark {
  /** Along the strip. */
  x: number
  fromFoot: number
  fromTop: number
  name: string
  weight: number
  /** A place that is checked on the finished piece. */
  check: boolean
}

/** A stretch of the strip and what is there: a shape of the profile, or wood that is cut away. */
export interface Stretch {
  from: number
  to: number
  word: string
  waste: boolean
}

/** The whole strip, mm from its foot end; it is as long as the blank. */
export interface Strip {
  length: number
  marks: Mark[]
  stretches: Stretch[]
}

interface Place {
  at: number
  name: string
  weight: number
}

/** Where joints begin and end, and the middle of a hole; those of one kind at one place by their faces. */
function jointPlaces(joints: Joint[], spans: Span[]): Place[] {
  const places = new Map<string, { at: number; kind: string; looks: string[] }>()
  for (const joint of joints) {
    if (joint.kind === 'tenon') continue
    const { from, to } = jointReach(joint, spans)
    for (const at of joint.kind === 'hole' ? [joint.at] : [from, to]) {
      const key = `${joint.kind} ${nm(at)}`
      const there = places.get(key) ?? { at, kind: joint.kind, looks: [] }
      if (!there.looks.includes(lookMark(joint))) there.looks.push(lookMark(joint))
      places.set(key, there)
    }
  }
  return [...places.values()].map(({ at, kind, looks }) => ({
    at,
    name: `${kind} ${looks.join(', ')}`,
    weight: 3,
  }))
}

/** All that is struck on a part, from the foot: what lies at one place is one line. */
function placesOf(plan: Plan, spans: Span[]): Place[] {
  const { job } = plan
  const rest = restPlace(plan)
  const places = new Map<number, Place>()
  for (const place of [
    ...positionsOf(job.profile),
    ...jointPlaces(job.joints, spans),
    ...(rest === undefined ? [] : [{ at: rest, name: 'steady rest', weight: 2 }]),
  ]) {
    const there = places.get(nm(place.at))
    if (!there) places.set(nm(place.at), { at: place.at, name: place.name, weight: place.weight })
    else if (!there.name.split(', ').includes(place.name)) {
      there.name = [there.name, place.name].filter(Boolean).join(', ')
      there.weight += place.weight
    }
  }
  return [...places.values()].sort((a, b) => a.at - b.at)
}

/** The strip of a plan: every part of the blank, the waste at its ends and what is parted off between. */
export function stripOf(plan: Plan): Strip {
  const spans = spansOf(plan.job.profile)
  const [foot, top] = [spans[0]!.from, spans.at(-1)!.to]
  const length = top - foot
  const { lengthParts } = plan.blank
  const { starts, gaps } = stickPlaces(plan.blank, length)
  const end = starts.at(-1)! + length
  const checks = new Set(plan.checkStations.map(({ at }) => nm(at)))
  const places = placesOf(plan, spans)
  const marks = starts.flatMap((start) =>
    places.map(({ at, name, weight }) => ({
      x: start + at,
      fromFoot: at,
      fromTop: length - at,
      name,
      weight,
      check: checks.has(nm(at)),
    })),
  )
  const waste = (from: number, to: number, word: string): Stretch[] =>
    nm(to) > nm(from) ? [{ from, to, word, waste: true }] : []
  return {
    length: end + lengthParts.top,
    marks,
    stretches: [
      ...waste(0, starts[0]!, 'trim'),
      ...starts.flatMap((start) =>
        spans.map(({ from, to, shape }) => ({
          from: start + from,
          to: start + to,
          word: shape,
          waste: false,
        })),
      ),
      ...gaps.flatMap(([from, to]) => waste(from, to, 'part off')),
      ...waste(end, end + lengthParts.top, 'trim'),
    ],
  }
}
