import { nm } from '../units/length.ts'
import { clearOf, jawsReach, type Measuring, slopeAllows, slopeError } from './jaws.ts'
import { type Profile, type Span, type Station, samePlace, spansOf } from './profile.ts'
import { spanAt, spanRadius, spanTurns } from './radius.ts'
import { type Place, showingPlaces } from './showing.ts'
import { sizeText } from './size-text.ts'

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
}

/** Most check stations that are chosen without being asked for. */
const MOST = 8

/** The diameter or side tolerance of a station: its own where it has one. */
function limitsOf(station: Station, kind: CheckStation['kind'], tolerance: CheckTolerance) {
  const usual = kind === 'side' ? tolerance.side : tolerance.diameter
  return { plus: station.plus ?? usual, minus: station.minus ?? usual }
}

const measuringOf = (station: Station, tolerance: CheckTolerance, jawWidth: number): Measuring => {
  const { plus, minus } = limitsOf(station, 'diameter', tolerance)
  return { diameter: Math.max(plus, minus), position: tolerance.position, jawWidth }
}

function checkAt(
  station: Station,
  place: Pick<Place, 'key' | 'at' | 'kind' | 'target'>,
  tolerance: CheckTolerance,
  fixed: boolean,
) {
  return {
    key: place.key,
    ...(station.name === undefined ? {} : { name: station.name }),
    at: place.at,
    kind: place.kind,
    target: place.target,
    ...limitsOf(station, place.kind, tolerance),
    fixed,
  }
}

/** Spans that meet at a station; at a step only the one on its own side. */
function spansAt(spans: Span[], stations: Station[], index: number): Span[] {
  const at = stations[index]!.at
  const stepBelow = index > 0 && samePlace(stations[index - 1]!.at, at)
  const stepAbove = index + 1 < stations.length && samePlace(stations[index + 1]!.at, at)
  const beside = new Set([spanAt(spans, at, 'foot'), spanAt(spans, at, 'top')])
  return [...beside].filter(
    (span) => (samePlace(span.to, at) && !stepBelow) || (samePlace(span.from, at) && !stepAbove),
  )
}

const isFixed = (station: Station, tenon: boolean): boolean => station.fixed ?? tenon

/** The nearest place on the spans beside a station where jaws reach and the slope allows. */
function betterPlace(spans: Span[], beside: Span[], at: number, measuring: Measuring): number | undefined {
  const clear = clearOf(measuring.jawWidth)
  const step = 25.4 / 64
  const candidates = beside.flatMap((span) => {
    const inner = [span.from + clear, span.to - clear, (span.from + span.to) / 2, ...spanTurns(span)]
    const scan = Array.from({ length: Math.min(400, Math.floor((span.to - span.from) / step)) }, (_, k) =>
      samePlace(span.from, at) ? span.from + (k + 1) * step : span.to - (k + 1) * step,
    )
    return [...inner, ...scan]
      .filter((x) => nm(x) >= nm(span.from) && nm(x) <= nm(span.to))
      .map((x) => ({ span, x, distance: nm(Math.abs(x - at)) }))
  })
  return candidates
    .sort((a, b) => a.distance - b.distance)
    .find(({ span, x }) => jawsReach(spans, span, x, measuring) && slopeAllows(span, x, measuring))?.x
}

/** What is wrong with measuring at a marked place, and where would be better. */
function judged(
  spans: Span[],
  beside: Span[],
  at: number,
  measuring: Measuring,
): Pick<CheckStation, 'caution' | 'better'> {
  const reach = beside.every((span) => jawsReach(spans, span, at, measuring))
  const steep = beside.find((span) => !slopeAllows(span, at, measuring))
  if (reach && !steep) return {}
  const better = betterPlace(spans, beside, at, measuring)
  const off = steep && slopeError(steep, at, measuring.position)
  const why = !reach
    ? `Jaws ${sizeText(measuring.jawWidth)} wide do not reach the wood at ${sizeText(at)}`
    : `At ${sizeText(at)} the outline is so steep that ${sizeText(measuring.position)} along the part changes the diameter by ${Number.isFinite(off) ? sizeText(off!) : 'any amount'}`
  return better === undefined
    ? { caution: `${why}; no place beside it is better.` }
    : { caution: `${why}; ${sizeText(better)} from the foot is the nearest better place.`, better }
}

function markedStations(
  profile: Profile,
  spans: Span[],
  tolerance: CheckTolerance,
  jawWidth: number,
): CheckStation[] {
  return profile.stations.flatMap((station, index): CheckStation[] => {
    if (!station.check) return []
    const key = station.key ?? `s${index}`
    const beside = spansAt(spans, profile.stations, index)
    const turned = beside.filter((span) => span.shape !== 'square')
    const fixed = isFixed(
      station,
      beside.some((span) => span.station.tenon === true),
    )
    if (turned.length === 0) {
      const square = beside.at(-1)
      if (!square) return []
      const check = checkAt(
        station,
        { key, at: station.at, kind: 'side', target: square.d0 },
        tolerance,
        fixed,
      )
      return [{ ...check, chosen: 'marked' }]
    }
    const target = 2 * spanRadius(turned[0]!, station.at)
    const check = checkAt(station, { key, at: station.at, kind: 'diameter', target }, tolerance, fixed)
    return [
      {
        ...check,
        chosen: 'marked',
        ...judged(spans, turned, station.at, measuringOf(station, tolerance, jawWidth)),
      },
    ]
  })
}

function autoStations(
  profile: Profile,
  spans: Span[],
  tolerance: CheckTolerance,
  jawWidth: number,
): CheckStation[] {
  const reachable = showingPlaces(profile, spans, clearOf(jawWidth)).filter(({ span, at, station, kind }) => {
    if (kind === 'side') return nm(span.to - span.from) >= nm(jawWidth)
    const measuring = measuringOf(profile.stations[station]!, tolerance, jawWidth)
    return jawsReach(spans, span, at, measuring) && slopeAllows(span, at, measuring)
  })
  return reachable
    .slice(0, MOST)
    .sort((a, b) => a.at - b.at)
    .map((place) => {
      const station = profile.stations[place.station]!
      const check = checkAt(station, place, tolerance, isFixed(station, place.span.station.tenon === true))
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
  const marked = markedStations(profile, spans, tolerance, jawWidth)
  return marked.length > 0 ? marked : autoStations(profile, spans, tolerance, jawWidth)
}
