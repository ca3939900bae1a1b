import { mmOfNm, nm } from '../../units/length.ts'
import { type Span, type Station, spansOf } from '../profile.ts'
import { refused } from './accepted.ts'
import { deviationOf, deviationText } from './deviation.ts'
import type { Edited } from './edited.ts'
import { fittedArc } from './fitted-arc.ts'
import { highestAt, lowestAt } from './group-places.ts'
import { type PointWear, pointOf, type Segment, type SpanWear, wearOf, written } from './segment.ts'

/** One side of a place where two spans meet. */
interface Side {
  diameter: number | undefined
  own: PointWear
}

/** The upper side; it carries what starts there. */
interface UpperSide extends Side {
  wear: SpanWear
}

/** One station where two spans meet, or a step where they meet at two diameters. `at` in nanometres. */
function meeting(at: number, below: Side | undefined, above: UpperSide | undefined): Station[] {
  const place = mmOfNm(at)
  const wear: SpanWear = above?.wear ?? { then: 'straight' }
  const stepped =
    below?.diameter !== undefined &&
    above?.diameter !== undefined &&
    nm(below.diameter) !== nm(above.diameter)
  if (stepped) {
    return [
      { ...below.own, at: place, diameter: below.diameter!, then: 'straight' },
      { ...wear, ...above.own, at: place, diameter: above.diameter! },
    ]
  }
  const own = { ...below?.own, ...above?.own }
  const diameter = below?.diameter ?? above?.diameter ?? own.diameter
  return [{ ...wear, ...own, at: place, ...written({ diameter }) } as Station]
}

/** The stations without a key that stands for another of them. */
export function withOwnKeys(stations: Station[]): Station[] {
  const seen = new Set<string>()
  return stations.map((station, index) => {
    const { key, ...rest } = station
    if (key === undefined) return station
    const owner = Number(/^s(\d+)[cr]?$/.exec(key)?.[1] ?? Number.NaN)
    if (seen.has(key) || (owner < stations.length && key !== `s${index}`)) return rest
    seen.add(key)
    return station
  })
}

/** Ends left long stay ends left long, whatever stands there now. */
function withEnds(stations: Station[], before: readonly Station[]): Station[] {
  return stations.map((station, i) => {
    const { trimLater: _trim, ...plain } = station
    const end = i === 0 ? before[0] : i === stations.length - 1 ? before.at(-1) : undefined
    return { ...plain, ...written({ trimLater: end?.trimLater }) }
  })
}

const spansOfAll = (stations: readonly Station[]): Span[] =>
  spansOf({ stations: [...stations], split: false })

/** How far curves move, mm on the radius, that have other neighbours now: what they were before, in order, against what they are. */
function curvesMoved(
  before: readonly Pick<Segment, 'slopes'>[],
  after: readonly Span[],
): Pick<Edited, 'deviation' | 'note'> {
  const moved = after.map((span, k) => {
    const slopes = before[k]?.slopes
    return slopes && span.slopes ? deviationOf([{ ...span, slopes }], span) : 0
  })
  const deviation = Math.max(0, ...moved)
  if (nm(deviation) <= 1) return {}
  const note = `The outline moves by up to ${deviationText(deviation)} on the radius: a curve follows the stations beside it.`
  return { deviation, note }
}

/**
 * The stations with all that lies between two of them replaced by those segments; what follows moves along the part.
 * Where the segments meet at two diameters a step is made, where they meet at one it goes. `touched` are the stations
 * from the one that opens the segments to the one that closes them. Curves that run on otherwise than they did are said.
 */
export function spliced(
  stations: readonly Station[],
  from: number,
  to: number,
  segments: readonly Segment[],
): Omit<Edited, 'placeOf'> {
  const [low, high] = [lowestAt(stations, from), highestAt(stations, to)]
  const own = (index: number): PointWear => pointOf(stations, index)
  const sideAt = (index: number, span: number): Side => ({
    diameter: stations[span]!.then === 'square' ? undefined : stations[index]!.diameter,
    own: own(index),
  })
  let below: Side | undefined = low > 0 ? sideAt(low, low - 1) : undefined
  const above: UpperSide | undefined =
    high + 1 < stations.length ? { ...sideAt(high, high), wear: wearOf(stations, high) } : undefined
  // one station that both sides share speaks once
  if (low === high && below && above) above.own = written({ diameter: above.own.diameter })
  if (segments.length === 0 && !below && !above) throw refused('must leave the part some length')
  let at = nm(stations[low]!.at)
  const made: Station[] = []
  for (const { width, wear, d0, d1, foot, top } of segments) {
    made.push(...meeting(at, below, { diameter: d0, own: foot, wear: fittedArc(wear, mmOfNm(width)) }))
    at += width
    below = { diameter: d1, own: top }
  }
  made.push(...meeting(at, below, above))
  const shift = at - nm(stations[high]!.at)
  const after = stations.slice(high + 1)
  const moved = shift === 0 ? after : after.map((s) => ({ ...s, at: mmOfNm(nm(s.at) + shift) }))
  const all = withEnds([...stations.slice(0, low), ...made, ...moved], stations)
  const old = spansOfAll(stations)
  const before = [
    ...old.filter(({ index }) => index < low),
    ...segments,
    ...old.filter(({ index }) => index >= high),
  ]
  const touched = made.map((_, i) => low + i)
  return { stations: withOwnKeys(all), touched, ...curvesMoved(before, spansOfAll(all)) }
}
