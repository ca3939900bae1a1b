import type { Joint } from '../../shared/job.ts'
import { nm } from '../../shared/units/length.ts'
import { type PatternSource, type Stick, stickPositions } from './pattern-source.ts'
import type { Position } from './positions.ts'

/** A pattern at its own size, in mm: x from the foot (of a stick: from its end) plus `END`, y downwards. */
export interface Drawing {
  /** What it shows, for the sheet's label. */
  shows: string
  width: number
  height: number
  /** Room for the written station figures at the top. */
  band: number
  /** Where the axis of the full profile lies, and the straight edge of the half profile. */
  full?: number
  half?: number
  /** Where each part's foot lies, mm from the drawing's zero. */
  starts: number[]
  /** Whose figures are written. */
  positions: Position[]
  joints: Joint[]
  /** The face that looks at the reader, degrees from A. */
  eye: number
  stick?: Stick
}

/** Room beyond both ends, mm. */
export const END = 6
/** Room for the lines that lead to the written station figures, mm. */
export const LEAD = 6
/** Least and most room for the figures, mm. */
const BAND = 60
const BAND_MOST = 90
const GAP = 6

/** Seen on face A; a glued pair on face B, where its glue line is seen on edge. */
const eyeOf = ({ profile }: PatternSource): number => (profile.split ? 90 : 0)

/** Full and half profile on one drawing where the paper is high enough, else one after the other. */
function ownDrawings(source: PatternSource, windowHeight: number): Drawing[] {
  const { length, radius, hands, positions } = source
  const hand = hands[0].words
  const shared = {
    width: length + 2 * END,
    starts: [0],
    positions,
    joints: hands[0].joints,
    eye: eyeOf(source),
  }
  const place = (below: number) => placed(below, windowHeight)
  const both = place(3 * radius + GAP + 2)
  const named = (what: string) => (hand ? `${what}, ${hand}` : what)
  if (nm(both.height) <= nm(windowHeight)) {
    const full = both.top + radius
    return [
      { ...shared, ...both, shows: named('full and half profile'), full, half: full + 2 * radius + GAP },
    ]
  }
  const [full, half] = [place(2 * radius + 2), place(radius + 2)]
  return [
    { ...shared, ...full, shows: named('full profile'), full: full.top + radius },
    { ...shared, ...half, shows: 'half profile', half: half.top + radius },
  ]
}

function placed(below: number, windowHeight: number): { band: number; height: number; top: number } {
  const band = Math.min(Math.max(BAND, windowHeight - LEAD - below), BAND_MOST)
  return { band, height: band + LEAD + below, top: band + LEAD }
}

/** The pattern of a part, of its other hand, and of the stick several parts come from. */
export function drawingsOf(source: PatternSource, windowHeight: number): Drawing[] {
  const own = ownDrawings(source, windowHeight)
  const { radius, hands, stick } = source
  const full = placed(2 * radius + 2, windowHeight)
  const others = hands.slice(1).map(({ words, joints }) => ({
    ...own[0]!,
    ...full,
    shows: `full profile, ${words}`,
    full: full.top + radius,
    half: undefined,
    joints,
  }))
  return [...own, ...others, ...(stick ? [stickDrawing(source, stick, windowHeight)] : [])]
}

function stickDrawing(source: PatternSource, stick: Stick, windowHeight: number): Drawing {
  const reach = Math.max(source.radius, stick.side / 2)
  const room = placed(2 * reach + 2, windowHeight)
  return {
    ...room,
    shows: `the stick with ${stick.starts.length} parts`,
    width: stick.length + 2 * END,
    full: room.top + reach,
    starts: stick.starts,
    positions: stickPositions(source, stick),
    joints: source.hands[0].joints,
    eye: eyeOf(source),
    stick,
  }
}
