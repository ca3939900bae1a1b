import { diametersOf } from '../profile/radius.ts'
import { caliperSetting } from '../turning/calipers.ts'
import { inches, nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import type { DraftFields } from './draft.ts'
import type { Zone } from './features.ts'
import type { RouteInput } from './input.ts'
import type { SizedCut } from './sized-cuts.ts'

/** Roughing stops so far over the largest diameter where the blank allows it: a lathe maker’s manual. */
const OVER = inches(1 / 8)
/** A blank is centred and bent so far off that it needs this on the diameter to come round. Common practice, no source. */
const TRUING = inches(1 / 16)

/** The largest caliper setting in a zone, mm. */
function largestSetting({ spans, maxDiameter }: Zone, { allowances, finish }: RouteInput): number {
  const film = finish === 'film'
  if (!spans.some((span) => span.station.tenon)) return caliperSetting(maxDiameter, allowances, { film })
  const settings = spans.map((span) =>
    caliperSetting(diametersOf(span).greatest, allowances, { film, tenon: span.station.tenon === true }),
  )
  return Math.max(...settings)
}

/**
 * Diameter a zone is roughed to, mm: 1/8 in over its largest, so that every sizing cut has wood to cut. Where
 * the blank has not so much to spare, to the largest caliper setting, which roughing then carries itself.
 */
export function roughDiameterOf(zone: Zone, input: RouteInput): number {
  const { side } = input.blank
  const [sized, over] = [largestSetting(zone, input), zone.maxDiameter + OVER]
  const spare = nm(over) > nm(sized) && nm(over + TRUING) <= nm(side)
  return spare ? over : Math.min(side, sized)
}

/** Sizing cuts of a zone that are there already once it is roughed: all of one setting, the largest. */
function carriedCuts({ sizedCuts, roughDiameter }: RouteContext, zone: Zone): SizedCut[] {
  const [first, last] = [zone.spans[0]!.index, zone.spans.at(-1)!.index]
  const cuts = sizedCuts.filter(
    ({ span, caliper }) =>
      span.index >= first && span.index <= last && nm(caliper) >= nm(roughDiameter(zone)),
  )
  const largest = Math.max(...cuts.map((cut) => nm(cut.caliper)))
  return cuts.filter((cut) => nm(cut.caliper) === largest)
}

/** Sizing cuts that are left to be made with the parting tool. */
export function cutsToMake(context: RouteContext): SizedCut[] {
  const carried = new Set(context.zones.flatMap((zone) => carriedCuts(context, zone)))
  return context.sizedCuts.filter((cut) => !carried.has(cut))
}

/** Said where the blank is no larger than the caliper is set: nothing is there to true it by. */
export const NO_WOOD_OVER = 'The square leaves no wood over here: flats may stay on the round.'

/** Caliper and stations of what brings a zone to its roughed diameter, with what is to be minded. */
export function carriedSizing(
  context: RouteContext,
  zone: Zone,
): Pick<DraftFields, 'caliper' | 'caliperStation' | 'caliperAlso'> & { caution?: string } {
  const [cut, ...more] = carriedCuts(context, zone)
  if (!cut) return {}
  return {
    caliper: cut.caliper,
    caliperStation: cut.station,
    caliperAlso: more.map((other) => other.station),
    ...(nm(cut.caliper) > nm(context.roughDiameter(zone)) && { caution: NO_WOOD_OVER }),
  }
}
