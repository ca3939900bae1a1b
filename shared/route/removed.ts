import type { Span } from '../profile/profile.ts'
import type { RouteContext } from './context.ts'
import { type PommelShoulder, SHOULDER_GROOVE, type Zone } from './features.ts'
import { octagonShare } from './octagon.ts'
import { partingTool } from './tool-choice.ts'

/** Area of a circle of that diameter. */
export const circleArea = (diameter: number): number => (Math.PI / 4) * diameter * diameter

/** Grooves take at most this of what a span loses; the rest is left to form it. Common practice, no source. */
const GROOVE_MOST = 0.5
/** So does sanding. Common practice, no source. */
const SANDING_MOST = 0.25

/** Section of the blank as it goes on the lathe, mm²: the square, or what is left of it without its corners. */
export const blankArea = (context: RouteContext): number =>
  context.blank.side ** 2 * (sawsCorners(context) ? octagonShare : 1)

/** Fully turned squares from this side on are sawn to eight sides first, mm. Common practice, no source. */
const CORNERS_FROM = 100

/** Whether the corners are sawn off before the blank goes on the lathe. */
export const sawsCorners = ({ blank, maxSide, gluedUp }: RouteContext): boolean =>
  maxSide === 0 && !gluedUp && blank.side >= CORNERS_FROM

/** Turned waste that belongs to a zone at an end of the part, mm: at the foot, at the top. */
export function wasteOf({ blank, zones, spans }: RouteContext, zone: Zone): [number, number] {
  const { foot, top } = blank.lengthParts
  return [
    zone === zones[0] && spans[0] === zone.spans[0] ? foot : 0,
    zone === zones.at(-1) && spans.at(-1) === zone.spans.at(-1) ? top : 0,
  ]
}

/** All the wood over a length of the stick that a zone takes: the parts, the waste at its ends and between. */
export function zoneLength(context: RouteContext, zone: Zone): number {
  const [foot, top] = wasteOf(context, zone)
  return context.parts * (zone.to - zone.from) + foot + top + context.blank.lengthParts.between
}

/** What a zone’s shoulders take of its roughing at most, each. Common practice, no source. */
const SHOULDER_MOST = 0.25

/** Groove beside the shoulder in the zone it bounds, mm³ for one part. */
function shoulderGroove(context: RouteContext, { at, round }: PommelShoulder): number {
  const zone = context.zones.find((z) => (round === 'foot' ? z.to === at : z.from === at))
  if (!zone) return 0
  const ring = blankArea(context) - circleArea(context.roughDiameter(zone))
  return Math.max(0, ring) * Math.min(SHOULDER_GROOVE, SHOULDER_MOST * (zone.to - zone.from))
}

/** Wood a shoulder takes from one part, mm³: its groove, and the corners where it is rounded over. */
export function removedByShoulder(context: RouteContext, shoulder: PommelShoulder): number {
  const { span, round } = shoulder
  const [foot, top] = span.rounding ?? [0, 0]
  const corners = Math.max(0, span.d0 ** 2 * (span.to - span.from) - context.sizeOf(span).volume)
  const share = foot + top > 0 ? (round === 'foot' ? foot : top) / (foot + top) : 0
  return shoulderGroove(context, shoulder) + corners * share
}

/** Wood roughing takes from a zone over the whole stick, mm³, down to a diameter. */
export function removedByRoughing(context: RouteContext, zone: Zone, diameter: number): number {
  const grooves = context.shoulders
    .filter((shoulder) => (shoulder.round === 'foot' ? zone.to === shoulder.at : zone.from === shoulder.at))
    .reduce((sum, shoulder) => sum + context.parts * shoulderGroove(context, shoulder), 0)
  const ring = blankArea(context) - circleArea(diameter)
  return Math.max(0, ring * zoneLength(context, zone) - grooves)
}

/** What one part loses in a span between the roughed cylinder and the finished surface, mm³. */
function lossOf(context: RouteContext, span: Span): number {
  const cylinder = circleArea(context.roughDiameter(context.zoneAt(span.to))) * (span.to - span.from)
  return Math.max(0, cylinder - context.sizeOf(span).volume)
}

/** Grooves of all sizing cuts in a span, mm³ each before they are held to their share. */
function groovesOf(context: RouteContext, span: Span): { raw: number; share: number } {
  const width = Math.min(partingTool(context).width, span.to - span.from)
  const rough = circleArea(context.roughDiameter(context.zoneAt(span.to)))
  const raw = context
    .sizedCutsIn(span)
    .reduce((sum, cut) => sum + width * Math.max(0, rough - circleArea(cut.caliper)), 0)
  const most = GROOVE_MOST * lossOf(context, span)
  return { raw, share: raw > most ? most / raw : 1 }
}

/** Wood a sizing cut takes from one part, mm³. */
export function removedBySizing(context: RouteContext, span: Span, caliper: number): number {
  const width = Math.min(partingTool(context).width, span.to - span.from)
  const rough = circleArea(context.roughDiameter(context.zoneAt(span.to)))
  return width * Math.max(0, rough - circleArea(caliper)) * groovesOf(context, span).share
}

/** Wood sanding takes from a span of one part, mm³: half the allowance on the diameter over its surface. */
export function removedBySanding(context: RouteContext, span: Span): number {
  if (span.station.tenon) return 0
  const skin = (context.sizeOf(span).surface * context.allowances.turned) / 2
  return Math.min(skin, SANDING_MOST * lossOf(context, span))
}

/** Wood the forming cut takes from a span of one part, mm³: all that sizing and sanding leave to it. */
export function removedByForming(context: RouteContext, span: Span): number {
  const { raw, share } = groovesOf(context, span)
  return lossOf(context, span) - raw * share - removedBySanding(context, span)
}
