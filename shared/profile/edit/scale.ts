import { mmOfNm, nm } from '../../units/length.ts'
import { isHalfRound } from '../arc-radius.ts'
import { isFillet } from '../fillet.ts'
import { type Span, type Station, samePlace, spansOf } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import { accepted, needStation, refused } from './accepted.ts'
import type { Edited } from './edited.ts'
import { sagittaField } from './fitted-arc.ts'
import { type Snap, snapped, stepOf } from './snap.ts'

/** How lengths are scaled. */
export interface LengthScale {
  /** Half-round beads and coves, fillets and tenons keep their width; the rest takes up the difference. */
  keepRound: boolean
  snap: Snap
}

/** How diameters are scaled. */
export interface DiameterScale {
  /** Half-round beads and coves stay half rounds. */
  keepRound: boolean
  /** Indices of stations whose diameter and side stay. */
  keep?: number[]
  snap: Snap
}

function needFactor(factor: number): void {
  if (!(factor > 0 && Number.isFinite(factor)))
    throw refused(`can be scaled by a number more than 0; read ${factor}`)
}

/** What the spans that give way are scaled by, so that the whole is scaled by `factor`. */
function freeFactor(spans: readonly Span[], kept: ReadonlySet<number>, factor: number): number {
  const length = spans.reduce((sum, { from, to }) => sum + to - from, 0)
  const held = spans.reduce((sum, { index, from, to }) => sum + (kept.has(index) ? to - from : 0), 0)
  const free = nm(length - held) > 0 ? (length * factor - held) / (length - held) : 0
  if (free > 0) return free
  throw refused(
    `cannot be scaled to ${sizeText(length * factor)}: the half rounds, fillets and tenons that keep their width take ${sizeText(held)} of it`,
  )
}

/** New positions of all stations, mm; spans that give way end on the grid, none of them vanishes. */
function positions(
  stations: readonly Station[],
  kept: ReadonlySet<number>,
  free: number,
  snap: Snap,
): number[] {
  const step = stepOf(snap)
  const places = [0]
  let ideal = 0
  for (let i = 0; i + 1 < stations.length; i++) {
    const width = stations[i + 1]!.at - stations[i]!.at
    const here = places[i]!
    ideal += kept.has(i) ? width : width * free
    if (samePlace(width, 0)) places.push(here)
    else if (kept.has(i)) places.push(mmOfNm(nm(here) + nm(width)))
    else places.push(Math.max(snapped(ideal, snap), mmOfNm(nm(here) + nm(Math.min(step, width)))))
  }
  return places
}

/** An arc of that height over a width; a half round where it can be no higher. */
function withSagitta(station: Station, sagitta: number, width: number): Station {
  const field = sagittaField(station.then)!
  const { [field]: _old, ...rest } = station
  return nm(sagitta) >= nm(width / 2) ? rest : { ...rest, [field]: mmOfNm(nm(sagitta)) }
}

/** What is said of arcs that would have to be deeper than a half round. */
function limitNote(spans: readonly Span[]): { note?: string } {
  if (spans.length === 0) return {}
  const names = spans.map(({ shape, station, index }) => station.name ?? `${shape} at station ${index}`)
  const one = names.length === 1
  return {
    note: `No deeper than a half round, so not scaled in full: ${names.join(', ')}${one ? '' : ` (${names.length} arcs)`}.`,
  }
}

/** What is said where spans that cannot get shorter than a step of the grid keep the part longer than was asked. */
const longerNote = (got: number, wanted: number, snap: Snap): string | undefined =>
  nm(got - wanted) > nm(stepOf(snap))
    ? `Scaled to ${sizeText(got)}, not to ${sizeText(wanted)}: no span gets shorter than a step of the grid.`
    : undefined

/** Where a place lies when the stations have moved: in proportion between its neighbours. */
function placesBetween(before: readonly number[], after: readonly number[]): (at: number) => number {
  return (at) => {
    const k = before.findIndex((place) => nm(place) >= nm(at))
    if (k < 0) return after.at(-1)!
    if (k === 0 || nm(before[k]!) === nm(at)) return after[k]!
    const share = (at - before[k - 1]!) / (before[k]! - before[k - 1]!)
    return mmOfNm(nm(after[k - 1]! + share * (after[k]! - after[k - 1]!)))
  }
}

/**
 * The part with its lengths scaled, diameters as they are. Beads and coves keep their height as far as their new
 * width allows; with `keepRound` the half rounds, fillets and tenons keep their width and shape, and the rest takes up
 * the difference.
 * @throws Problem `bad-input` where the rest would have to vanish
 *
 * @example scaledLengths([{ at: 0, diameter: 20, then: 'straight' }, { at: 30, diameter: 20, then: 'bead' }, { at: 40, diameter: 20, then: 'straight' }], 1.5, { keepRound: true, snap: 'none' }).stations.map(({ at }) => at) // [0, 50, 60]
 */
export function scaledLengths(stations: Station[], factor: number, { keepRound, snap }: LengthScale): Edited {
  needFactor(factor)
  needStation(stations, 0)
  const spans = spansOf({ stations, split: false })
  const keeps = (span: Span): boolean => isHalfRound(span) || isFillet(span) || span.station.tenon === true
  const kept = new Set(keepRound ? spans.filter(keeps).map(({ index }) => index) : [])
  const places = positions(stations, kept, freeFactor(spans, kept, factor), snap)
  const limited: Span[] = []
  const scaled = stations.map((station, i): Station => ({ ...station, at: places[i]! }))
  for (const span of spans) {
    const { index: i, sagitta } = span
    if (kept.has(i)) continue
    const width = places[i + 1]! - places[i]!
    const { shoulderLength } = scaled[i]!
    if (sagitta !== undefined) {
      if (nm(sagitta) > Math.ceil(nm(width) / 2)) limited.push(span)
      scaled[i] = withSagitta(scaled[i]!, sagitta, width)
    }
    if (shoulderLength !== undefined)
      scaled[i] = {
        ...scaled[i]!,
        shoulderLength: mmOfNm(nm((shoulderLength * width) / (span.to - span.from))),
      }
  }
  const longer = longerNote(places.at(-1)!, stations.at(-1)!.at * factor, snap)
  const note = [limitNote(limited).note, longer].filter((text) => text !== undefined).join(' ')
  return accepted({
    stations: scaled,
    touched: places.flatMap((at, i) => (samePlace(at, stations[i]!.at) ? [] : [i])),
    placeOf: placesBetween(
      stations.map(({ at }) => at),
      places,
    ),
    ...(note && { note }),
  })
}

/** Stations whose size has to stay: those asked for, those that are `fixed`, and both ends of a tenon. */
function heldStations(stations: readonly Station[], keep: readonly number[]): Set<number> {
  const held = new Set(keep)
  stations.forEach(({ fixed, tenon }, i) => {
    if (fixed) held.add(i)
    if (tenon) held.add(i).add(i + 1)
  })
  return held
}

/**
 * The part with its diameters and sides scaled, lengths as they are. Stations of `keep`, fixed ones and tenons stay;
 * beads and coves grow or shrink in height too, as far as their width allows; with `keepRound` the half rounds stay
 * what they are.
 * @throws Problem `bad-input` where the part could not be turned
 *
 * @example scaledDiameters([{ at: 0, diameter: 20, then: 'straight' }, { at: 30, diameter: 24, then: 'straight' }], 1.1, { keepRound: false, keep: [0], snap: '0.5' }).stations.map(({ diameter }) => diameter) // [20, 26.5]
 */
export function scaledDiameters(
  stations: Station[],
  factor: number,
  { keepRound, keep = [], snap }: DiameterScale,
): Edited {
  needFactor(factor)
  for (const index of keep) needStation(stations, index)
  const held = heldStations(stations, keep)
  const sized = (mm: number): number => Math.max(snapped(mm * factor, snap), Math.min(stepOf(snap), mm))
  const scaled = stations.map((station, i): Station => {
    if (held.has(i)) return station
    const { diameter, side } = station
    return {
      ...station,
      ...(diameter === undefined ? {} : { diameter: sized(diameter) }),
      ...(side === undefined ? {} : { side: sized(side) }),
    }
  })
  const limited: Span[] = []
  for (const span of spansOf({ stations, split: false })) {
    const { index: i, sagitta, from, to } = span
    if (sagitta === undefined || (keepRound && isHalfRound(span))) continue
    if (held.has(i) && held.has(i + 1)) continue
    const wanted = snapped(sagitta * factor, snap)
    if (nm(wanted) > Math.ceil(nm(to - from) / 2)) limited.push(span)
    scaled[i] = withSagitta(scaled[i]!, wanted, to - from)
  }
  return accepted({
    stations: scaled,
    touched: scaled.flatMap((station, i) => (station === stations[i] ? [] : [i])),
    placeOf: (at) => at,
    ...limitNote(limited),
  })
}
