import { isFillet } from '../profile/fillet.ts'
import type { Span } from '../profile/profile.ts'
import { inches, nm } from '../units/length.ts'
import type { OperationKind } from './kinds.ts'

/** What one forming operation cuts: a span, a row of beads, or a run of one curve. Lengths mm. */
export interface Feature {
  kind: OperationKind
  /** Station where it starts. */
  index: number
  spans: Span[]
  from: number
  to: number
}

/** Stretch that is turned, between parts left square or the ends of the part; lengths mm. */
export interface Zone {
  index: number
  from: number
  to: number
  spans: Span[]
  maxDiameter: number
}

/** A step between two diameters at one position, both turned; lengths mm. */
export interface StepFace {
  /** The second of the two stations. */
  index: number
  at: number
  smaller: number
  larger: number
}

/** Where the round meets a part left square, away from the ends. */
export interface PommelShoulder {
  /** Station at the shoulder. */
  index: number
  at: number
  side: number
  form: 'square' | 'rounded'
  /** Which way the round lies. */
  round: 'foot' | 'top'
  /** The span left square. */
  span: Span
  /** From where to where it is cut. */
  reach: [number, number]
}

const isTenon = (span: Span): boolean => span.station.tenon === true
const sameLength = (a: number, b: number): boolean => nm(a) === nm(b)

/** Which operation forms a span that is turned. */
function kindOf(span: Span): OperationKind {
  if (isTenon(span)) return 'tenon'
  if (span.shape === 'straight') return sameLength(span.d0, span.d1) ? 'straight' : 'taper'
  return span.shape as Exclude<Span['shape'], 'square' | 'straight'>
}

/** A bead that goes on with a row: it touches the last of it or stands a fillet away, on the same diameter. */
function continuesRow(row: Feature | undefined, since: Span[], span: Span): row is Feature {
  const last = row?.spans.at(-1)
  if (!last || since.length > 1 || !since.every(isFillet)) return false
  const [before, after] = [last, ...since].slice(-1).concat(span) as [Span, Span]
  return (
    span.index === last.index + 1 + since.length &&
    sameLength(last.d1, since[0]?.d0 ?? span.d0) &&
    sameLength(before.d1, after.d0)
  )
}

/** A free curve goes on with the one it touches. */
const continuesCurve = (open: Feature | undefined, span: Span): open is Feature =>
  open?.kind === 'curve' && span.index === open.spans.at(-1)!.index + 1

function extend(feature: Feature, span: Span): void {
  feature.spans.push(span)
  feature.to = span.to
}

/**
 * The turned spans by the operation that forms them, from the foot up. Every one is in exactly one feature: beads of a
 * row are one, alike or not, so that the same side of all is cut together.
 */
export function featuresOf(spans: Span[]): Feature[] {
  const features: Feature[] = []
  let row: Feature | undefined
  let since: Span[] = []
  for (const span of spans) {
    const kind = span.shape === 'square' ? undefined : kindOf(span)
    if (kind === 'bead' && continuesRow(row, since, span)) {
      extend(row, span)
      since = []
      continue
    }
    since.push(span)
    if (kind === undefined) continue
    const open = features.at(-1)
    if (kind === 'curve' && continuesCurve(open, span)) extend(open, span)
    else features.push({ kind, index: span.index, spans: [span], from: span.from, to: span.to })
    if (kind === 'bead') [row, since] = [features.at(-1), []]
  }
  return features
}

/** Turned stretches from the foot up; `widest` tells the largest diameter in a span. */
export function zonesOf(spans: Span[], widest: (span: Span) => number): Zone[] {
  const zones: Zone[] = []
  let open: Zone | undefined
  for (const span of spans) {
    if (span.shape === 'square') open = undefined
    else if (open) {
      open.spans.push(span)
      open.to = span.to
      open.maxDiameter = Math.max(open.maxDiameter, widest(span))
    } else {
      open = { index: span.index, from: span.from, to: span.to, spans: [span], maxDiameter: widest(span) }
      zones.push(open)
    }
  }
  return zones
}

/** Steps between turned diameters, from the foot up. */
export function stepFacesOf(spans: Span[]): StepFace[] {
  return spans.flatMap((span, i) => {
    const before = spans[i - 1]
    if (!before || before.shape === 'square' || span.shape === 'square') return []
    if (sameLength(before.d1, span.d0)) return []
    const [smaller, larger] = [Math.min(before.d1, span.d0), Math.max(before.d1, span.d0)]
    return [{ index: span.index, at: span.from, smaller, larger }]
  })
}

/** A square shoulder is cut in as a groove so wide on the waste side. Common practice, no source. */
export const SHOULDER_GROOVE = inches(1 / 8)

function pommelShoulder(span: Span, index: number, round: 'foot' | 'top'): PommelShoulder {
  const rounding = span.rounding?.[round === 'foot' ? 0 : 1] ?? 0
  const at = round === 'foot' ? span.from : span.to
  const [out, into] =
    round === 'foot' ? [at - SHOULDER_GROOVE, at + rounding] : [at + SHOULDER_GROOVE, at - rounding]
  const reach: [number, number] = [Math.min(out, into), Math.max(out, into)]
  return { index, at, side: span.d0, form: rounding > 0 ? 'rounded' : 'square', round, span, reach }
}

/** Shoulders between square and round, from the foot up; a square at an end of the part has none there. */
export function pommelShouldersOf(spans: Span[]): PommelShoulder[] {
  return spans.flatMap((span, i) => {
    if (span.shape !== 'square') return []
    const [before, next] = [spans[i - 1], spans[i + 1]]
    return [
      ...(before && before.shape !== 'square' ? [pommelShoulder(span, span.index, 'foot')] : []),
      ...(next && next.shape !== 'square' ? [pommelShoulder(span, next.index, 'top')] : []),
    ]
  })
}
