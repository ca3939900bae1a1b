import { nm } from '../units/length.ts'
import type { Profile, Span } from './profile.ts'
import { spanRadius, spanTurns } from './radius.ts'

/** A place worth measuring. Lengths mm. */
export interface Place {
  key: string
  /** Index of the station that its name and limits come from. */
  station: number
  span: Span
  at: number
  kind: 'diameter' | 'side'
  target: number
  /** How much it shows; only the order counts. */
  shows: number
}

/** A tenon comes before anything that only shows: it has to fit. Squares come last: the planer made them alike. */
const FITS = 1e6
const PLANED = 1e-6

/** A long cylinder shows more than a short one: mm of diameter to mm of length; common practice, no source. */
const PER_LENGTH = 0.01

/** Jump of the diameter at one end of a span: a step or a shoulder, mm. */
function jumpAt(spans: Span[], i: number, end: 'foot' | 'top'): number {
  const [span, beside] = [spans[i]!, spans[end === 'foot' ? i - 1 : i + 1]]
  if (!beside) return 0
  return end === 'foot' ? Math.abs(span.d0 - beside.d1) : Math.abs(span.d1 - beside.d0)
}

function crestsAndRoots(spans: Span[]): Place[] {
  return spans.flatMap((span) => {
    if (span.shape !== 'bead' && span.shape !== 'cove') return []
    const letter = span.shape === 'bead' ? 'c' : 'r'
    return spanTurns(span).map((at) => ({
      key: span.station.key ?? `s${span.index}${letter}`,
      station: span.index,
      span,
      at,
      kind: 'diameter' as const,
      target: 2 * spanRadius(span, at),
      shows: 2 * span.sagitta!,
    }))
  })
}

const isFlat = (span: Span | undefined): boolean => span?.shape === 'straight' && nm(span.d0) === nm(span.d1)

/** Cylinders, fillets and tenons at mid-width, and squares across the flats. */
function flats(spans: Span[], key: (index: number) => string): Place[] {
  return spans.flatMap((span, i) => {
    const side = span.shape === 'square'
    if (!side && !isFlat(span)) return []
    const jump = Math.max(jumpAt(spans, i, 'foot'), jumpAt(spans, i, 'top'))
    const shows = side ? PLANED : span.station.tenon ? FITS : jump + (span.to - span.from) * PER_LENGTH
    const at = (span.from + span.to) / 2
    return [
      {
        key: key(span.index),
        station: span.index,
        span,
        at,
        kind: side ? 'side' : 'diameter',
        target: span.d0,
        shows,
      } as Place,
    ]
  })
}

/** Whether the outline jumps or ends at that end of the span: a step, a shoulder, an upright arc, an end of the part. */
function endsAbruptly(spans: Span[], i: number, end: 'foot' | 'top'): boolean {
  const [span, beside] = [spans[i]!, spans[end === 'foot' ? i - 1 : i + 1]]
  if (!beside) return true
  const [here, there] = end === 'foot' ? [span.d0, beside.d1] : [span.d1, beside.d0]
  return (
    nm(here) !== nm(there) || beside.shape === 'square' || beside.shape === 'bead' || beside.shape === 'cove'
  )
}

/** Ends of tapers and curves, both sides of a step: clear of a shoulder, or right at a station that is no shoulder. */
function ends(spans: Span[], clear: number, key: (index: number) => string): Place[] {
  return spans.flatMap((span, i) => {
    if (isFlat(span) || span.shape === 'square' || span.shape === 'bead' || span.shape === 'cove') return []
    return (['foot', 'top'] as const).flatMap((end) => {
      const station = end === 'foot' ? span.index : span.index + 1
      const beside = spans[end === 'foot' ? i - 1 : i + 1]
      const abrupt = endsAbruptly(spans, i, end)
      if (!abrupt && isFlat(beside)) return []
      const inset = abrupt ? Math.min(clear, (span.to - span.from) / 2) : 0
      const at = end === 'foot' ? span.from + inset : span.to - inset
      const target = 2 * spanRadius(span, at)
      return [
        {
          key: key(station),
          station,
          span,
          at,
          kind: 'diameter' as const,
          target,
          shows: span.station.tenon ? FITS : jumpAt(spans, i, end) + Math.abs(span.d1 - span.d0) / 2,
        },
      ]
    })
  })
}

/**
 * Every place of a profile that is worth a check, none of them twice, those that show most first: crests, roots, flats at mid-width, ends of
 * tapers and curves `clear` mm from a shoulder, both sides of a step, squares across the flats.
 */
export function showingPlaces(profile: Profile, spans: Span[], clear: number): Place[] {
  const turned = crestsAndRoots(spans)
  const taken = new Set(turned.map((place) => place.key))
  const key = (index: number): string => {
    const own = profile.stations[index]!.key
    return own === undefined || taken.has(own) ? `s${index}` : own
  }
  const all = [...turned, ...flats(spans, key), ...ends(spans, clear, key)].sort((a, b) => b.shows - a.shows)
  const [keys, places] = [new Set<string>(), new Set<number>()]
  return all.filter((place) => {
    const known = keys.has(place.key) || places.has(nm(place.at))
    keys.add(place.key)
    places.add(nm(place.at))
    return !known
  })
}
