import { jointAngle, jointReach } from '../profile/joint-reach.ts'
import { leastRadius, radiusAt } from '../profile/radius.ts'
import { inches, nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import type { RouteJoint } from './input.ts'

/** How deep a spur or cone goes into an end, and how far out from the axis. Common practice, no source. */
const CENTRE = { depth: inches(3 / 8), radius: inches(1 / 2) }
/** Wood that should be left on the far side, and the share of a neck a joint may take. Common practice, no source. */
const WALL = inches(1 / 4)
const NECK_SHARE = 0.5

/** A joint in the part: its length along the axis, and its rectangle across it, from `tip` to the face. Lengths mm. */
interface Pocket {
  from: number
  to: number
  /** Degrees from face A. */
  angle: number
  across: number
  /** Distance of its bottom from the axis, below 0 beyond it. */
  tip: number
  face: number
  /** Least radius of the part over its length. */
  radius: number
}

function pocketOf(context: RouteContext, joint: RouteJoint): Pocket {
  const { spans, blank } = context
  const { from, to } = jointReach(joint, spans)
  const [first, last] = [spans[0]!.from, spans.at(-1)!.to]
  const least = leastRadius(spans, Math.max(first, from), Math.min(last, to))
  const radius = Number.isFinite(least) ? least : radiusAt(spans, joint.at)
  const face = joint.stage === 'square' ? blank.side / 2 : radius
  return { from, to, angle: jointAngle(joint), across: joint.size[0]!, tip: face - joint.depth, face, radius }
}

/** Corners of a pocket across the axis. */
function cornersOf({ angle, across, tip, face }: Pocket): [number, number][] {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
  return [tip, face].flatMap((out) =>
    [-across / 2, across / 2].map((side): [number, number] => [
      out * cos - side * sin,
      out * sin + side * cos,
    ]),
  )
}

/** Whether two pockets share wood: they overlap along the axis, and no line parts their rectangles across it. */
function pocketsMeet(a: Pocket, b: Pocket): boolean {
  if (nm(a.to) <= nm(b.from) || nm(b.to) <= nm(a.from)) return false
  const [ofA, ofB] = [cornersOf(a), cornersOf(b)]
  return [a.angle, a.angle + 90, b.angle, b.angle + 90].every((angle) => {
    const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
    const along = (corners: [number, number][]): number[] => corners.map(([x, y]) => nm(x * cos + y * sin))
    const [onA, onB] = [along(ofA), along(ofB)]
    return Math.max(...onA) > Math.min(...onB) && Math.max(...onB) > Math.min(...onA)
  })
}

/** Whether it opens the wood that a centre bites into. */
function meetsCentre({ blank, spans }: RouteContext, { from, to, tip }: Pocket): boolean {
  const { foot, top } = blank.lengthParts
  const [footCentre, topCentre] = [
    spans[0]!.from - foot + CENTRE.depth,
    spans.at(-1)!.to + top - CENTRE.depth,
  ]
  return nm(tip) < nm(CENTRE.radius) && (nm(from) < nm(footCentre) || nm(to) > nm(topCentre))
}

function neckCaution(context: RouteContext, { tip, across, radius }: Pocket): string | undefined {
  const wall = tip + radius
  if (nm(wall) <= 0) return 'It comes out on the far side.'
  if (nm(wall) < nm(WALL)) return `It leaves ${context.text(wall)} on the far side at its thinnest.`
  if (across > NECK_SHARE * 2 * radius)
    return `It takes ${context.text(across)} of a neck of ${context.text(2 * radius)}: weak there.`
  return undefined
}

/**
 * What is to be minded about each joint, by its number in the job: it meets a centre, a neck, or another joint.
 * Tenons stand on their own.
 */
export function jointCautions(context: RouteContext): string[][] {
  const pockets = context.joints.map((joint) =>
    joint.kind === 'tenon' ? undefined : pocketOf(context, joint),
  )
  return pockets.map((pocket, i) => {
    if (!pocket) return []
    const joint = context.joints[i]!
    const met = pockets.findIndex((other, k) => k !== i && other !== undefined && pocketsMeet(pocket, other))
    const cautions = [
      joint.stage === 'square' && meetsCentre(context, pocket)
        ? 'It opens the wood that a centre bites into: leave a horn or plug it.'
        : undefined,
      neckCaution(context, pocket),
      met >= 0
        ? `It meets the ${context.joints[met]!.kind} at ${context.text(context.joints[met]!.at)}.`
        : undefined,
    ]
    return cautions.filter((text) => text !== undefined)
  })
}
