import { type LengthStyle, nm } from '../units/length.ts'
import { jointReach, type PlacedJoint } from './joint-reach.ts'
import { type Profile, type Span, spansOf } from './profile.ts'
import { diametersOf, leastRadius, spanAt } from './radius.ts'
import { sizeText } from './size-text.ts'
import { weakNecks } from './weak-necks.ts'
import { restFor, type Whip } from './whip.ts'

export type WarningKind = 'slender' | 'thick' | 'bead' | 'neck' | 'joint'

/** Something to mind while a profile is drawn, said where it is. */
export interface ProfileWarning {
  /** Index of the station it stands at, or whose span it is about. */
  index: number
  /** The place it names where that is no station, mm from the foot. */
  at?: number
  kind: WarningKind
  text: string
}

/** What the warnings go by, beside the profile. Lengths mm. */
export interface WarningOptions {
  joints?: readonly PlacedJoint[]
  /** How the part bends in its wood; without it slenderness goes by length and diameter alone. */
  whip?: Pick<Whip, 'rest' | 'why' | 'at'> & { restAt?: number | undefined }
  /** Largest thickness the shop can get. */
  thickest?: number
  style: LengthStyle
}

type Say = (mm: number) => string

function slenderness(spans: Span[], { whip }: WarningOptions, say: Say): ProfileWarning[] {
  const length = spans.at(-1)!.to
  const called = whip ?? {
    ...restFor(length, 0, 2 * leastRadius(spans, length / 3, (2 * length) / 3)),
    at: length / 2,
  }
  if (called.rest === 'none') return []
  const at = ('restAt' in called ? called.restAt : undefined) ?? called.at
  const text = `Slender: ${called.why}. A steady rest is ${called.rest}, at about ${say(at)} from the foot; light cuts.`
  return [{ index: spanAt(spans, at).index, at, kind: 'slender', text }]
}

/** A crest that stands above both ends of its bead. */
const crestOf = (span: Span): number | undefined => {
  const { greatest } = diametersOf(span)
  return span.shape === 'bead' && nm(greatest) > nm(Math.max(span.d0, span.d1)) ? greatest : undefined
}

function proudBeads(spans: Span[], { thickest }: WarningOptions, say: Say): ProfileWarning[] {
  const sides = spans.filter((span) => span.shape === 'square').map((span) => span.d0)
  const square = sides.length > 0 ? Math.max(...sides) : undefined
  return spans.flatMap((span): ProfileWarning[] => {
    const crest = crestOf(span)
    if (crest === undefined) return []
    const { index } = span
    if (square !== undefined && nm(crest) > nm(square)) {
      const text = `The bead is ${say(crest)} across, prouder than the square of ${say(square)} it is turned from.`
      return [{ index, kind: 'bead', text }]
    }
    if (thickest === undefined || nm(crest) <= nm(thickest)) return []
    const text = `The bead is ${say(crest)} across, prouder than the thickest stock of the shop, ${say(thickest)}: lower it or glue up layers.`
    return [{ index, kind: 'bead', text }]
  })
}

/** The thickest place but for beads, where no stock of the shop is thick enough. */
function thickness(spans: Span[], { thickest }: WarningOptions, say: Say): ProfileWarning[] {
  const size = (span: Span): number => Math.max(span.d0, span.d1)
  const span = spans.reduce((most, one) => (nm(size(one)) > nm(size(most)) ? one : most))
  if (thickest === undefined || nm(size(span)) <= nm(thickest)) return []
  const index = span.shape === 'square' || span.d0 >= span.d1 ? span.index : span.index + 1
  const text = `It is ${say(size(span))} thick here; the thickest stock of the shop is ${say(thickest)}: it has to be glued up of layers.`
  return [{ index, kind: 'thick', text }]
}

function necks(spans: Span[], say: Say): ProfileWarning[] {
  return weakNecks(spans).map(({ index, at, diameter, share }) => ({
    index,
    at,
    kind: 'neck',
    text: `Weak neck: ${say(diameter)} thick at ${say(at)}, it carries ${share < 0.01 ? 'less than 1' : Math.floor(share * 100)} % of what the rest of the part carries (strength goes with the cube of the diameter). Make it thicker, or leave it until last.`,
  }))
}

/** Mortises and holes that begin on a flat and run out of it. */
function joints(spans: Span[], { joints: placed = [] }: WarningOptions, say: Say): ProfileWarning[] {
  return placed.flatMap((joint): ProfileWarning[] => {
    if (joint.kind === 'tenon') return []
    const { from, to } = jointReach(joint, spans)
    const span = spanAt(spans, joint.at)
    const told = (text: string): ProfileWarning[] => [
      { index: span.index, at: joint.at, kind: 'joint', text },
    ]
    if (nm(from) < 0 || nm(to) > nm(spans.at(-1)!.to))
      return told(`The ${joint.kind} at ${say(joint.at)} runs out of the end of the part.`)
    const square = span.shape === 'square' ? span : undefined
    const beyond = square ? Math.max(square.from - from, to - square.to) : 0
    const next = (x: number): boolean => spanAt(spans, x, x < joint.at ? 'top' : 'foot').shape === 'square'
    if (nm(beyond) <= 0 || (next(from) && next(to))) return []
    return told(
      `The ${joint.kind} at ${say(joint.at)} runs ${say(beyond)} past the shoulder of its square into turned wood, which leaves little beside it.`,
    )
  })
}

/**
 * What to mind about a profile while it is drawn: too slender, a bead prouder than its stock, thicker than the shop’s
 * stock, a neck weaker than the rest, a joint that leaves its square; from the foot to the top. A joint that leaves too
 * little wood beside it in a neck is told by the plan. None for stations that are no part yet. Lengths mm.
 *
 * @example profileWarnings({ stations: [{ at: 0, diameter: 60, then: 'straight' }, { at: 200, diameter: 60, then: 'straight' }], split: false }, { thickest: 50.8, style: 'mm' }).map(({ index, kind }) => [index, kind]) // [[0, 'thick']]
 */
export function profileWarnings(profile: Profile, options: WarningOptions): ProfileWarning[] {
  const spans = spansOf(profile)
  const isSound = (span: Span): boolean => nm(diametersOf(span).least) > 0
  if (spans.length === 0 || !spans.every(isSound)) return []
  const say: Say = (mm) => sizeText(mm, options.style)
  return [
    ...slenderness(spans, options, say),
    ...thickness(spans, options, say),
    ...proudBeads(spans, options, say),
    ...necks(spans, say),
    ...joints(spans, options, say),
  ].sort((a, b) => a.index - b.index)
}
