import type { Joint } from '../../shared/job.ts'
import { placeAt } from '../../shared/profile/faces.ts'
import { jointAngle, jointReach } from '../../shared/profile/joint-reach.ts'
import { sectionAt } from '../../shared/profile/radius.ts'
import { nm } from '../../shared/units/length.ts'
import { cross } from './cross.ts'
import { lookMark } from './figures.ts'
import { END } from './pattern-layout.ts'
import type { PatternSource } from './pattern-source.ts'
import { BENCH_PT, ink, line, pt } from './print.ts'

/** A joint as a shape about the axis, mm: x along the part, y downwards. */
interface Mark {
  kind: 'box' | 'oval'
  from: number
  to: number
  top: number
  bottom: number
  /** It lies on the far side, or is seen in depth. */
  hidden: boolean
  /** Its mouth is seen, from before or behind. */
  mouth: boolean
}

/**
 * A joint as it is seen with one face towards the eye (degrees from A): its mouth where it faces the eye or looks
 * away, its depth from the edge where it is seen from the side; what comes next in the order A, B, C, D lies below.
 */
export function jointMark(joint: Joint, { profile, spans }: PatternSource, eye: number): Mark {
  const { kind, at, size, depth } = joint
  const { from, to } = jointReach(joint, spans)
  const across = size[0]!
  const { half, radius } = sectionAt(profile, at)
  const edge = Math.min(half, radius)
  if (kind === 'tenon')
    return { kind: 'box', from, to, top: -across / 2, bottom: across / 2, hidden: true, mouth: false }
  const turn = (((jointAngle(joint) - eye) % 360) + 360) % 360
  if (turn === 90)
    return { kind: 'box', from, to, top: edge - depth, bottom: edge, hidden: true, mouth: false }
  if (turn === 270)
    return { kind: 'box', from, to, top: -edge, bottom: depth - edge, hidden: true, mouth: false }
  const [[middle], [, high]] = [placeAt(edge, turn), placeAt(across / 2, turn)]
  const shape = kind === 'hole' ? 'oval' : 'box'
  return {
    kind: shape,
    from,
    to,
    top: middle - Math.abs(high),
    bottom: middle + Math.abs(high),
    hidden: turn > 90 && turn < 270,
    mouth: true,
  }
}

/** A tenon that is turned is drawn as the profile it is. */
const isTurned = (joint: Joint, { spans }: PatternSource): boolean => {
  const { from, to } = jointReach(joint, spans)
  return spans.some((span) => span.station.tenon && nm(span.to) > nm(from) && nm(span.from) < nm(to))
}

/** The joints of one hand about the axis at `y` (mm), each with its face beside it. */
export function drawJoints(
  doc: PDFKit.PDFDocument,
  source: PatternSource,
  joints: Joint[],
  { y, eye }: { y: number; eye: number },
): void {
  for (const joint of joints) {
    if (joint.kind === 'tenon' && isTurned(joint, source)) continue
    const mark = jointMark(joint, source, eye)
    const [wide, high] = [mark.to - mark.from, mark.bottom - mark.top]
    const [x, top] = [pt(END + mark.from), pt(y + mark.top)]
    doc.lineWidth(pt(mark.hidden ? 0.2 : 0.3))
    if (mark.hidden) doc.dash(pt(1.5), { space: pt(1) })
    if (mark.kind === 'oval') doc.ellipse(x + pt(wide / 2), top + pt(high / 2), pt(wide / 2), pt(high / 2))
    else doc.rect(x, top, pt(wide), pt(high))
    doc.stroke('#000').undash()
    if (mark.mouth) cross(doc, x + pt(wide / 2), top + pt(high / 2), 1.5)
    faceLetter(doc, joint.kind === 'tenon' ? 'tenon' : lookMark(joint), {
      round: mark.kind === 'oval',
      x,
      top,
      wide: pt(wide),
      high: pt(high),
      low: !mark.mouth && mark.top > 0,
    })
  }
}

/** Inside a mortise where it is large enough, at its mouth; else beside the joint. */
function faceLetter(
  doc: PDFKit.PDFDocument,
  word: string,
  {
    x,
    top,
    wide,
    high,
    low,
    round,
  }: { x: number; top: number; wide: number; high: number; low: boolean; round: boolean },
): void {
  ink(doc, 'bold', BENCH_PT + 2)
  const inside = !round && wide >= doc.widthOfString(word) + 8 && high >= 15
  line(
    doc,
    word,
    inside ? x + 4 : x + wide + 3,
    inside ? (low ? top + high - 15 : top + 1) : top + high / 2 - 8,
  )
}
