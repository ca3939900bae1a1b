import { nm } from '../../units/length.ts'
import { type Station, samePlace, spansOf } from '../profile.ts'

/** What a station says of the span that starts there. */
export type SpanWear = Omit<Station, 'at' | 'diameter' | 'check' | 'trimLater'>

/** What a station says of itself; a diameter only where no span asks for one. */
export type PointWear = Partial<Omit<Station, 'at' | 'then' | 'trimLater'>>

/** A span taken out of its profile: it knows its own width and ends, not where it stands. Lengths mm. */
export interface Segment {
  /** Whole nanometres. */
  width: number
  wear: SpanWear
  /** Diameters at its foot and top; absent where it is left square. */
  d0?: number
  d1?: number
  /** Slopes dr/dx of a curve at its foot and top, as its neighbours gave them. */
  slopes?: [foot: number, top: number]
  /** What its closing stations say of themselves. */
  foot: PointWear
  top: PointWear
}

/** What goes with a marked place, or else with the span that starts there. */
const EITHER = ['name', 'key', 'fixed', 'plus', 'minus'] as const

/** Whether a station stands for its place alone: it is marked to be checked there, or starts no span. */
function isPlace(stations: readonly Station[], index: number): boolean {
  const [here, after] = [stations[index]!, stations[index + 1]]
  return here.check === true || after === undefined || samePlace(here.at, after.at)
}

/** What a station says of its own place. */
export function pointOf(stations: readonly Station[], index: number): PointWear {
  const { diameter, check, name, key, fixed, plus, minus } = stations[index]!
  const own = isPlace(stations, index) ? { name, key, fixed, plus, minus } : {}
  return written({ diameter, check, ...own })
}

/** What a station says of the span that starts there. */
export function wearOf(stations: readonly Station[], index: number): SpanWear {
  const { at: _at, diameter: _diameter, check: _check, trimLater: _trim, ...wear } = stations[index]!
  if (!isPlace(stations, index)) return wear
  for (const field of EITHER) delete wear[field]
  return wear
}

/** The fields that hold something. */
export function written<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>
  }
}

/** The spans between two stations, taken out. */
export function segmentsOf(stations: readonly Station[], from: number, to: number): Segment[] {
  const segments: Segment[] = []
  const slopesAt = new Map(spansOf({ stations: [...stations], split: false }).map((s) => [s.index, s.slopes]))
  for (let i = from; i < to; i++) {
    const [a, b] = [stations[i]!, stations[i + 1]!]
    if (nm(b.at) <= nm(a.at)) continue
    const ends = a.then === 'square' ? {} : written({ d0: a.diameter, d1: b.diameter })
    const [foot, top] = [pointOf(stations, i), pointOf(stations, i + 1)]
    const slopes = slopesAt.get(i)
    segments.push({
      width: nm(b.at) - nm(a.at),
      wear: wearOf(stations, i),
      ...ends,
      ...(slopes && { slopes }),
      foot,
      top,
    })
  }
  return segments
}

/** The segment turned end for end. */
export function turnedSegment({ width, wear, d0, d1, slopes, foot, top }: Segment): Segment {
  const { shoulder } = wear
  const turned = Array.isArray(shoulder)
    ? { ...wear, shoulder: [shoulder[1], shoulder[0]] as typeof shoulder }
    : wear
  return {
    width,
    wear: turned,
    ...written({ d0: d1, d1: d0 }),
    ...(slopes && { slopes: [-slopes[1], -slopes[0]] }),
    foot: top,
    top: foot,
  }
}

/** The segments in the opposite order, each turned end for end. */
export const turnedSegments = (segments: readonly Segment[]): Segment[] =>
  segments.map(turnedSegment).reverse()
