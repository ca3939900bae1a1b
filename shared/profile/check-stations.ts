import { type LengthStyle, nm } from '../units/length.ts'
import { judged } from './better-place.ts'
import { clearOf, jawsReach, type Measuring, slopeAllows } from './jaws.ts'
import { type Profile, type Span, type Station, samePlace, spansOf } from './profile.ts'
import { spanAt, spanRadius } from './radius.ts'
import { type Place, showingPlaces } from './showing.ts'

/** A place where every piece is measured. Lengths mm; `target` is the finished size there. */
export interface CheckStation {
  /** `s<index>` of its station, `s<index>c` or `s<index>r` for a crest or root, or the station's own key. */
  key: string
  name?: string
  at: number
  /** Across the turned wood, or across the flats of a square. */
  kind: 'diameter' | 'side'
  target: number
  plus: number
  minus: number
  /** Never brought down: it has to fit something. */
  fixed: boolean
  /** On a tenon: neither sanded nor coated. */
  tenon: boolean
  chosen: 'marked' | 'auto'
  caution?: string
  /** Nearest place along the part, mm from the foot, where it can be measured well. */
  better?: number
}

/** Tolerances of a job that bear on checks, mm. */
export interface CheckTolerance {
  diameter: number
  position: number
  side: number
  /** Of tenons, which have to fit; that of other diameters when absent, and never more than it. */
  tenon?: number
  /** How lengths are said in cautions; in both systems when absent. */
  style?: LengthStyle
}

/** Most check stations that are chosen without being asked for. */
const MOST = 8

/** The diameter or side tolerance of a station: its own where it has one, on a tenon the closer one of tenons. */
function limitsOf(station: Station, kind: CheckStation['kind'], tolerance: CheckTolerance, tenon: boolean) {
  const other = kind === 'side' ? tolerance.side : tolerance.diameter
  const usual = tenon ? Math.min(other, tolerance.diameter, tolerance.tenon ?? other) : other
  return { plus: station.plus ?? usual, minus: station.minus ?? usual }
}

const isTenon = (span: Span): boolean => span.station.tenon === true

function measuringOf(
  station: Station,
  tolerance: CheckTolerance,
  jawWidth: number,
  tenon: boolean,
): Measuring {
  const { plus, minus } = limitsOf(station, 'diameter', tolerance, tenon)
  return { diameter: Math.max(plus, minus), position: tolerance.position, jawWidth, style: tolerance.style }
}

function checkAt(
  station: Station,
  place: Pick<Place, 'key' | 'at' | 'kind' | 'target'>,
  tolerance: CheckTolerance,
  tenon: boolean,
) {
  return {
    key: place.key,
    ...(station.name === undefined ? {} : { name: station.name }),
    at: place.at,
    kind: place.kind,
    target: place.target,
    ...limitsOf(station, place.kind, tolerance, tenon),
    fixed: station.fixed ?? tenon,
    tenon,
  }
}

/** Spans that meet at a station; at a step only the one on its own side, if there is one. */
function spansAt(spans: Span[], stations: Station[], index: number): Span[] {
  const at = stations[index]!.at
  const stepBelow = index > 0 && samePlace(stations[index - 1]!.at, at)
  const stepAbove = index + 1 < stations.length && samePlace(stations[index + 1]!.at, at)
  const beside = [...new Set([spanAt(spans, at, 'foot'), spanAt(spans, at, 'top')])]
  const own = beside.filter(
    (span) => (samePlace(span.to, at) && !stepBelow) || (samePlace(span.from, at) && !stepAbove),
  )
  return own.length > 0 ? own : beside
}

function markedStation(
  profile: Profile,
  spans: Span[],
  index: number,
  tolerance: CheckTolerance,
  jawWidth: number,
): CheckStation {
  const station = profile.stations[index]!
  const [key, at] = [station.key ?? `s${index}`, station.at]
  const beside = spansAt(spans, profile.stations, index)
  const turned = beside.filter((span) => span.shape !== 'square')
  const tenon = beside.some(isTenon)
  const [kind, span] = turned[0] ? (['diameter', turned[0]] as const) : (['side', beside.at(-1)!] as const)
  const check = checkAt(station, { key, at, kind, target: 2 * spanRadius(span, at) }, tolerance, tenon)
  const measuring = measuringOf(station, tolerance, jawWidth, tenon)
  const caution = turned[0] ? judged(spans, turned, at, measuring) : {}
  return { ...check, chosen: 'marked', ...caution }
}

function autoStations(
  profile: Profile,
  spans: Span[],
  tolerance: CheckTolerance,
  jawWidth: number,
): CheckStation[] {
  const reachable = showingPlaces(profile, spans, clearOf(jawWidth)).filter(({ span, at, station, kind }) => {
    if (kind === 'side') return nm(span.to - span.from) >= nm(jawWidth)
    const measuring = measuringOf(profile.stations[station]!, tolerance, jawWidth, isTenon(span))
    return jawsReach(spans, span, at, measuring) && slopeAllows(span, at, measuring)
  })
  return reachable
    .slice(0, MOST)
    .sort((a, b) => a.at - b.at)
    .map((place) => {
      const station = profile.stations[place.station]!
      const check = checkAt(station, place, tolerance, isTenon(place.span))
      return { ...check, chosen: 'auto' as const }
    })
}

/**
 * Where every piece of the set is measured, from the foot to the top. Marked stations all stay: where jaws of
 * `jawWidth` (mm) do not reach, or the slope turns a step along the part into more than the tolerance, a caution and the
 * nearest better place stand beside them. Where none is marked, the program chooses at most 8, the ones that show most.
 *
 * @example checkStations({ stations: [{ at: 0, diameter: 40, then: 'bead', rise: 5 }, { at: 30, diameter: 40, then: 'straight' }], split: false }, { diameter: 0.8, position: 1.5, side: 0.4 }, 3).map(({ key, at, target }) => [key, at, target]) // [['s0c', 15, 50]]
 */
export function checkStations(profile: Profile, tolerance: CheckTolerance, jawWidth: number): CheckStation[] {
  const spans = spansOf(profile)
  const marked = profile.stations.flatMap(({ check }, index) =>
    check ? [markedStation(profile, spans, index, tolerance, jawWidth)] : [],
  )
  return marked.length > 0 ? marked : autoStations(profile, spans, tolerance, jawWidth)
}
