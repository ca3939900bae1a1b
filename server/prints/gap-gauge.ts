import type { Plan } from '../../shared/plan.ts'
import { spansOf } from '../../shared/profile/profile.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { stationWords } from './station-words.ts'

/** A plate with a gap that just passes over one diameter at one stage of the work. Lengths mm. */
export interface GapGauge {
  /** Width of the gap: the diameter it is for. */
  gap: number
  stage: string
  places: string
}

/** Outline of a gauge, mm: its gap opens upwards in the middle of the upper edge. */
export interface GaugeShape {
  width: number
  height: number
  /** How far the gap reaches down. */
  depth: number
}

/** The cheeks reach so far beyond the widest place of the round. Common practice, no source. */
const BEYOND = 6
/** Least wood beside the gap, and as a share of it: so that the cheeks do not spread. Common practice, no source. */
const CHEEK = 12
const CHEEK_SHARE = 1 / 6
/** Below the gap, where it is held and where its words stand. */
const BACK = 30
/** The words need so much. */
const NARROWEST = 52

export function gaugeShape({ gap }: GapGauge): GaugeShape {
  const depth = gap / 2 + BEYOND
  return {
    width: Math.max(NARROWEST, gap + 2 * Math.max(CHEEK, gap * CHEEK_SHARE)),
    height: depth + BACK,
    depth,
  }
}

/** One gauge for each caliper setting, thick to thin, then one for each tenon’s finished diameter. */
export function gapGauges(plan: Plan, style: LengthStyle): GapGauge[] {
  const places = (keys: string[]) =>
    [...new Set(keys)].map((key) => stationWords(plan, key, style)).join('; ')
  const sizing = plan.calipers.settings.map(({ diameter, stations }) => ({
    gap: diameter,
    stage: 'for the sizing cut',
    places: places(stations),
  }))
  const tenons = new Map<number, { gap: number; names: string[] }>()
  for (const { station, d0, from, to } of spansOf(plan.job.profile)) {
    if (station.tenon !== true) continue
    const tenon = tenons.get(nm(d0)) ?? { gap: d0, names: [] }
    tenons.set(nm(d0), tenon)
    const where = `${lengthText(from, style)} to ${lengthText(to, style)}`
    tenon.names.push(station.name ? `${station.name} ${where}` : where)
  }
  const finished = [...tenons.values()].map(({ gap, names }) => ({
    gap,
    stage: 'finished tenon',
    places: names.join('; '),
  }))
  return [...sizing, ...finished]
}
