import type { Span } from '../profile/profile.ts'
import { spanAt, spanRadius } from '../profile/radius.ts'
import { caliperSetting, type SettingSum, settingSum } from '../turning/calipers.ts'
import { inches, nm } from '../units/length.ts'
import type { Zone } from './features.ts'
import type { RouteInput } from './input.ts'
import type { PartShape } from './part-shape.ts'

/** One cut with the parting tool to a set caliper. Lengths mm. */
export interface SizedCut {
  /** Key of the check or station. */
  station: string
  name?: string
  at: number
  target: number
  caliper: number
  /** What the caliper’s setting is made up of. */
  sum: SettingSum
  tenon: boolean
  /** The span it lies in. */
  span: Span
}

/** Sizing cuts nearer than the width of the tool are one. Milton & Wohlers (1919) ch. III: it cuts 1/8 in. */
const SAME_PLACE = inches(1 / 8)

/** The cuts so far, by place: is there one as good as here? */
function takenPlaces(): {
  isTaken(at: number, target: number): boolean
  take(at: number, target: number): void
} {
  const places = new Map<number, { at: number; target: number }[]>()
  const bucket = (at: number): number => Math.floor(at / SAME_PLACE)
  return {
    isTaken(at, target) {
      const here = [-1, 0, 1].flatMap((off) => places.get(bucket(at) + off) ?? [])
      return here.some((cut) => nm(Math.abs(cut.at - at)) < nm(SAME_PLACE) && nm(cut.target) === nm(target))
    },
    take(at, target) {
      const here = places.get(bucket(at))
      if (here) here.push({ at, target })
      else places.set(bucket(at), [{ at, target }])
    },
  }
}

/**
 * Where sizing cuts go: at every diameter that is checked, then wherever a station has a diameter the
 * caliper is set to anyway, at tenons, and at the largest diameter of a zone that has none. One for each
 * distinct position; the rest is turned to the pattern.
 */
export function sizedCutsOf({ spans, zones }: PartShape, input: RouteInput): SizedCut[] {
  const film = input.finish === 'film'
  const setting = (target: number, span: Span): number =>
    caliperSetting(target, input.allowances, { tenon: isTenon(span), film })
  const cuts: SizedCut[] = []
  const places = takenPlaces()
  const taken = new Set<string>()
  const add = (station: string, at: number, target: number, span: Span, name?: string): void => {
    const cylinder = isCylinder(span) ? `${span.index} all along` : station
    if (taken.has(station) || taken.has(cylinder) || places.isTaken(at, target)) return
    places.take(at, target)
    taken.add(station).add(cylinder)
    const caliper = setting(target, span)
    cuts.push({
      station,
      at,
      target,
      caliper,
      sum: settingSum(target, input.allowances, { tenon: isTenon(span), film }),
      tenon: isTenon(span),
      span,
      ...(name !== undefined && { name }),
    })
  }
  for (const check of input.checks) {
    const span = check.kind === 'diameter' ? checkedSpan(spans, check.at, check.target) : undefined
    if (span) add(check.key, check.at, check.target, span, check.name ?? nameOf(span, check.at))
  }
  const set = new Set(cuts.map((cut) => nm(cut.caliper)))
  for (const span of spans) {
    if (span.shape === 'square' || !(isTenon(span) || set.has(nm(setting(span.d0, span))))) continue
    add(keyOf(span), span.from, span.d0, span, span.station.name)
  }
  for (const zone of zones) {
    if (cuts.some((cut) => nm(cut.at) >= nm(zone.from) && nm(cut.at) <= nm(zone.to))) continue
    const [at, span] = widestPlace(zone)
    add(keyOf(span), at, zone.maxDiameter, span, span.station.name)
  }
  return cuts.sort((a, b) => a.at - b.at)
}

const isTenon = (span: Span): boolean => span.station.tenon === true
const isCylinder = (span: Span): boolean => span.shape === 'straight' && nm(span.d0) === nm(span.d1)
const keyOf = (span: Span): string => span.station.key ?? `s${span.index}`

/** A station’s name belongs to its span, not to where the span ends. */
const nameOf = (span: Span, at: number): string | undefined =>
  nm(at) < nm(span.to) ? span.station.name : undefined

/** The turned span a check belongs to; where two meet, the one whose diameter it names. */
function checkedSpan(spans: Span[], at: number, target: number): Span | undefined {
  const off = (span: Span): number => Math.abs(2 * spanRadius(span, at) - target)
  return [spanAt(spans, at, 'foot'), spanAt(spans, at, 'top')]
    .filter((span) => span.shape !== 'square')
    .sort((a, b) => off(a) - off(b))[0]
}

/** Where a zone is thickest: an end of a span, else the middle of the thickest. */
function widestPlace(zone: Zone): [number, Span] {
  for (const span of zone.spans) {
    if (nm(span.d0) === nm(zone.maxDiameter)) return [span.from, span]
    if (nm(span.d1) === nm(zone.maxDiameter)) return [span.to, span]
  }
  const thickest = (span: Span): number => 2 * spanRadius(span, (span.from + span.to) / 2)
  const span = zone.spans.reduce((a, b) => (thickest(b) > thickest(a) ? b : a))
  return [(span.from + span.to) / 2, span]
}
