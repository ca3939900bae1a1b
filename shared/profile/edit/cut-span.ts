import { mmOfNm, nm } from '../../units/length.ts'
import { type ShapeName, type Span, type Station, spansOf } from '../profile.ts'
import { spanRadius } from '../radius.ts'
import { cornerRadius } from '../shapes/square.ts'
import { closestShape } from './closest.ts'
import { deviationOf } from './deviation.ts'
import type { Edited } from './edited.ts'
import { withOwnKeys } from './splice.ts'

/** What a station says of the shape that starts there. */
function shapeFields(
  shape: ShapeName,
  sagitta: number | undefined,
): Pick<Station, 'then' | 'rise' | 'depth'> {
  if (sagitta === undefined) return { then: shape }
  return shape === 'bead' ? { then: shape, rise: sagitta } : { then: shape, depth: sagitta }
}

/** The stations of a turned span cut at those places, each part in the closest shape. */
function turnedParts(span: Span, places: readonly number[]): Station[] {
  const { at: _at, rise: _rise, depth: _depth, ...first } = span.station
  const { diameter: _d, name: _name, key: _key, check: _check, trimLater: _trim, ...later } = first
  const keeps = span.shape === 'straight' || span.shape === 'curve'
  return [span.from, ...places].map((at, k) => {
    const to = places[k] ?? span.to
    const { shape, sagitta } = keeps ? { shape: span.shape } : closestShape(span, at, to)
    const own = k === 0 ? first : { ...later, diameter: 2 * mmOfNm(nm(spanRadius(span, at))) }
    return { ...own, ...shapeFields(shape, sagitta), at } as Station
  })
}

/** The stations of a length left square cut at those places: only the outer shoulders are shoulders still. */
function squareParts(span: Span, places: readonly number[]): Station[] {
  const { shoulder = 'square', shoulderLength, side, diameter: _d, ...rest } = span.station
  const [foot, top] = Array.isArray(shoulder) ? shoulder : [shoulder, shoulder]
  const { name: _name, key: _key, check: _check, trimLater: _trim, ...later } = rest
  const last = places.length
  return [span.from, ...places].map((at, k) => {
    const ends = [k === 0 ? foot : 'square', k === last ? top : 'square'] as const
    const own = k === 0 ? span.station : later
    const { shoulder: _s, shoulderLength: _l, ...plain } = own as Station
    const rounded = ends.includes('rounded')
    return {
      ...plain,
      at,
      ...(side === undefined ? {} : { side }),
      ...(rounded ? { shoulder: [...ends] as [typeof foot, typeof foot] } : {}),
      ...(rounded && shoulderLength !== undefined ? { shoulderLength } : {}),
    }
  })
}

/** Greatest difference the cuts make to a square: a rounded shoulder that no longer reaches its full corner. */
function squareDeviation(before: Span, after: readonly Span[]): number {
  const half = before.d0 / 2
  const lost = (width: number, reach: number): number =>
    nm(reach) > nm(width) ? half * Math.SQRT2 - cornerRadius(half, width / reach) : 0
  const [foot, top] = before.rounding ?? [0, 0]
  const [first, last] = [after[0]!, after.at(-1)!]
  return Math.max(lost(first.to - first.from, foot), lost(last.to - last.from, top))
}

/**
 * The stations with the span that starts at one of them cut at places strictly inside it, in order; nothing is
 * checked. `deviation` is there where the outline moves, over the whole run where the span is part of a curve.
 */
export function cutSpan(stations: Station[], index: number, places: readonly number[]): Edited {
  const before = spansOf({ stations, split: false })
  const span = before.find((s) => s.index === index)!
  const parts = span.shape === 'square' ? squareParts(span, places) : turnedParts(span, places)
  const cut = withOwnKeys([...stations.slice(0, index), ...parts, ...stations.slice(index + 1)])
  const after = spansOf({ stations: cut, split: false })
  const inside = after.filter((s) => s.index >= index && s.index <= index + places.length)
  const deviation =
    span.shape === 'square'
      ? squareDeviation(span, inside)
      : Math.max(...(span.shape === 'curve' ? after : inside).map((s) => deviationOf(before, s)))
  return {
    stations: cut,
    touched: places.map((_, k) => index + 1 + k),
    placeOf: (at) => at,
    ...(nm(deviation) > 1 ? { deviation } : {}),
  }
}
