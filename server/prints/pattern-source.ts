import { type StickPlaces, stickPlaces } from '../../shared/blank/stick-places.ts'
import type { Plan } from '../../shared/plan.ts'
import { type OutlinePoint, outlineOf, outlineRadius } from '../../shared/profile/outline.ts'
import { type Profile, type Span, spansOf } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { type HandJoints, handsOf } from './hands.ts'
import { type Position, positionsOf } from './positions.ts'

/** The blank several parts are turned from; lengths mm. */
export interface Stick extends StickPlaces {
  length: number
  side: number
}

/** What is drawn, once for all sheets. Lengths mm. */
export interface PatternSource {
  profile: Profile
  style: LengthStyle
  outline: OutlinePoint[]
  spans: Span[]
  positions: Position[]
  length: number
  radius: number
  hands: [HandJoints, ...HandJoints[]]
  /** Where several parts come from one blank. */
  stick?: Stick
}

/** The drawn or cut line is nowhere farther from the true one, mm. */
export const CHORD_MM = 0.005

/** Everything of a plan that its pattern shows. */
export function patternSource({ job, blank }: Plan, style: LengthStyle): PatternSource {
  const { profile } = job
  const outline = outlineOf(profile, CHORD_MM)
  const length = outline.at(-1)!.x
  return {
    profile,
    style,
    outline,
    spans: spansOf(profile),
    positions: positionsOf(profile),
    length,
    radius: outlineRadius(outline),
    hands: handsOf(job),
    ...(blank.stock.perBlank > 1 && {
      stick: { ...stickPlaces(blank, length), length: blank.length, side: blank.side },
    }),
  }
}

/** The ends of the parts of a stick, running from the foot end of the blank. */
export function stickPositions({ positions, length }: PatternSource, { starts }: Stick): Position[] {
  const [first, last] = [positions[0]!, positions.at(-1)!]
  return starts.flatMap((start, i) => [
    { ...first, at: start, name: `foot of ${i + 1}`, weight: 3 },
    { ...last, at: start + length, name: `top of ${i + 1}`, weight: 3 },
  ])
}
