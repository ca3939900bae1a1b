import type { Span } from '../profile/profile.ts'
import { radiusAt } from '../profile/radius.ts'
import { caliperSetting } from '../turning/calipers.ts'
import { inches, nm } from '../units/length.ts'
import type { Zone } from './features.ts'
import type { RouteInput } from './input.ts'

/** One cut with the parting tool to a set caliper. Lengths mm. */
export interface SizedCut {
  /** Key of the check or station. */
  station: string
  name?: string
  at: number
  target: number
  caliper: number
  tenon: boolean
  /** The span it lies in. */
  span: Span
}

/** Sizing cuts nearer than the width of the tool are one. Milton & Wohlers (1919) ch. III: it cuts 1/8 in. */
const SAME_PLACE = inches(1 / 8)

const spanUnder = (spans: Span[], at: number): Span | undefined =>
  spans.find((span) => span.shape !== 'square' && nm(span.from) <= nm(at) && nm(at) <= nm(span.to))

/**
 * Where sizing cuts go: at every diameter that is checked, then wherever a station has a diameter the
 * caliper is set to anyway, at tenons, and at the largest diameter of a zone that has none. One for each
 * distinct position; the rest is turned to the pattern.
 */
export function sizedCutsOf(spans: Span[], zones: Zone[], input: RouteInput): SizedCut[] {
  const film = input.finish === 'film'
  const cuts: SizedCut[] = []
  const add = (station: string, at: number, target: number, span: Span, name?: string): void => {
    const tenon = span.station.tenon === true
    const near = cuts.some(
      (cut) => Math.abs(nm(cut.at) - nm(at)) < nm(SAME_PLACE) && nm(cut.target) === nm(target),
    )
    if (near) return
    const caliper = caliperSetting(target, input.allowances, { tenon, film })
    cuts.push({ station, at, target, caliper, tenon, span, ...(name !== undefined && { name }) })
  }
  for (const check of input.checks) {
    const span = check.kind === 'diameter' ? checkedSpan(spans, check.at, check.target) : undefined
    if (span) add(check.key, check.at, check.target, span, check.name ?? nameOf(span, check.at))
  }
  const set = new Set(cuts.map((cut) => nm(cut.caliper)))
  for (const span of spans) {
    if (span.shape === 'square') continue
    const own = span.station.key ?? `s${span.index}`
    const tenon = span.station.tenon === true
    const free = set.has(nm(caliperSetting(span.d0, input.allowances, { tenon, film })))
    if (tenon || free) add(own, span.from, span.d0, span, span.station.name)
  }
  for (const zone of zones) {
    if (cuts.some((cut) => cut.at >= zone.from && cut.at <= zone.to)) continue
    const [at, span] = widestPlace(zone)
    add(span.station.key ?? `s${span.index}`, at, zone.maxDiameter, span, span.station.name)
  }
  return cuts.sort((a, b) => a.at - b.at)
}

/** A station’s name belongs to its span, not to where the span ends. */
const nameOf = (span: Span, at: number): string | undefined =>
  nm(at) < nm(span.to) ? span.station.name : undefined

/** The span a check belongs to; at a step the side whose diameter it names. */
function checkedSpan(spans: Span[], at: number, target: number): Span | undefined {
  const touching = spans.filter(
    (span) => span.shape !== 'square' && nm(span.from) <= nm(at) && nm(at) <= nm(span.to),
  )
  const off = (span: Span): number => Math.abs(2 * radiusAt([span], at) - target)
  return touching.sort((a, b) => off(a) - off(b))[0] ?? spanUnder(spans, at)
}

/** Where a zone is thickest: an end of a span, else the middle of the thickest. */
function widestPlace(zone: Zone): [number, Span] {
  for (const span of zone.spans) {
    if (nm(span.d0) === nm(zone.maxDiameter)) return [span.from, span]
    if (nm(span.d1) === nm(zone.maxDiameter)) return [span.to, span]
  }
  const thickest = (span: Span): number => 2 * radiusAt([span], (span.from + span.to) / 2)
  const span = zone.spans.reduce((a, b) => (thickest(b) > thickest(a) ? b : a))
  return [(span.from + span.to) / 2, span]
}
