import { nm } from '../units/length.ts'
import { curveSlopes } from './shapes/curve.ts'

/** The shapes a span can have; each lives in its own file under `shapes/`. */
export const shapeNames = ['straight', 'bead', 'cove', 'ovolo', 'cavetto', 'ogee', 'curve', 'square'] as const
export type ShapeName = (typeof shapeNames)[number]

/** How a span left square meets the round: cut straight in, or rounded over. */
export type Shoulder = 'square' | 'rounded'

/** A position along the axis from the foot, the diameter there, and the shape up to the next one. Lengths mm. */
export interface Station {
  at: number
  diameter?: number
  then: ShapeName
  name?: string
  /** A unique key of its own for readings; else `s<index>`. */
  key?: string
  /** Sagitta of a bead above the line between its ends; half its width when absent. */
  rise?: number
  /** Sagitta of a cove below that line; half its width when absent. */
  depth?: number
  /** Width across the flats of a span left square. */
  side?: number
  /** Towards the foot and towards the top; cut straight in when absent. */
  shoulder?: Shoulder | [Shoulder, Shoulder]
  shoulderLength?: number
  check?: boolean
  /** Never brought down: it has to fit something (a tenon). */
  fixed?: boolean
  /** This span is a tenon. */
  tenon?: boolean
  plus?: number
  minus?: number
  /** At an end: left long and trimmed after glue-up. */
  trimLater?: boolean
}

export interface Profile {
  stations: Station[]
  /** Turned as a glued pair and split; quantity counts halves. */
  split: boolean
}

/** A span between two neighbouring stations that lie apart; lengths mm. */
export interface Span {
  /** Index of the station where it starts. */
  index: number
  shape: ShapeName
  from: number
  to: number
  /** Diameter at `from` and at `to`; for a span left square both are its side. */
  d0: number
  d1: number
  station: Station
  /** Sagitta of a bead's or a cove's arc. */
  sagitta?: number
  /** Slopes dr/dx of a curve at its two ends; they depend on the whole run of curves. */
  slopes?: [number, number]
  /** Lengths of a square's rounded shoulders towards the foot and the top; 0 where it is cut straight in. */
  rounding?: [number, number]
}

/** Whether two stations stand at one position (to the nanometre). */
export const samePlace = (a: number, b: number): boolean => nm(a) === nm(b)

/**
 * The spans of a profile from the foot to the top, with everything that follows from their neighbours filled in
 * (the slopes of a curve, shoulders that are plain because they end the part). A step makes no span. A profile
 * that `profileBreaches` finds wrong gives spans that may not mean much.
 */
export function spansOf(profile: Profile): Span[] {
  const { stations } = profile
  const spans: Span[] = []
  for (let i = 0; i + 1 < stations.length; i++) {
    const [a, b] = [stations[i]!, stations[i + 1]!]
    if (nm(b.at) > nm(a.at)) spans.push(span(i, a, b))
  }
  for (const s of spans) if (s.shape === 'square') s.rounding = roundingOf(s, spans)
  for (let i = 0; i < spans.length; ) i = fillRun(spans, i)
  return spans
}

function span(index: number, a: Station, b: Station): Span {
  const square = a.then === 'square'
  const d0 = (square ? a.side : a.diameter) ?? 0
  const made: Span = {
    index,
    shape: a.then,
    from: a.at,
    to: b.at,
    d0,
    d1: square ? d0 : (b.diameter ?? 0),
    station: a,
  }
  const sagitta = a.then === 'bead' ? a.rise : a.then === 'cove' ? a.depth : undefined
  const most = (b.at - a.at) / 2
  if (a.then === 'bead' || a.then === 'cove') made.sagitta = Math.min(sagitta ?? most, most)
  return made
}

/** Side to corner of a square that is rounded over by a quarter circle, over the side. */
const CORNER_OVER_SIDE = (Math.SQRT2 - 1) / 2

function roundingOf({ station, from, to, d0 }: Span, spans: Span[]): [number, number] {
  const wanted = station.shoulder ?? 'square'
  const [foot, top] = typeof wanted === 'string' ? [wanted, wanted] : wanted
  const length = station.shoulderLength ?? d0 * CORNER_OVER_SIDE
  const atFoot = samePlace(from, spans[0]!.from)
  const atTop = samePlace(to, spans.at(-1)!.to)
  return [foot === 'rounded' && !atFoot ? length : 0, top === 'rounded' && !atTop ? length : 0]
}

/** Gives the run of curves that starts at span `i` its slopes; answers the index of the span after the run. */
function fillRun(spans: Span[], i: number): number {
  if (spans[i]!.shape !== 'curve') return i + 1
  let end = i + 1
  while (spans[end]?.shape === 'curve' && spans[end]!.index === spans[end - 1]!.index + 1) end++
  const run = spans.slice(i, end)
  const slopes = curveSlopes(
    [run[0]!.from, ...run.map((s) => s.to)],
    [run[0]!.d0 / 2, ...run.map((s) => s.d1 / 2)],
  )
  run.forEach((s, k) => {
    s.slopes = [slopes[k]!, slopes[k + 1]!]
  })
  return end
}
