import { mmOfNm, nm } from '../../units/length.ts'
import type { ShapeName, Span } from '../profile.ts'
import { spanRadius } from '../radius.ts'
import { topBetween } from '../top-between.ts'
import { deviationOf } from './deviation.ts'

/** A span as close to part of another as any shape comes, and how close that is, mm on the radius. */
export interface Closest {
  shape: ShapeName
  sagitta?: number
  deviation: number
}

const SAMPLES = 32

/** A span of that shape laid over part of an outline, which it meets at both ends. */
function laid(shape: ShapeName, outline: Span, from: number, to: number, sagitta?: number): Span {
  const [d0, d1] = [from, to].map((x) => 2 * mmOfNm(nm(spanRadius(outline, x))))
  const station = { at: from, then: shape }
  return {
    index: 0,
    shape,
    from,
    to,
    d0: d0!,
    d1: d1!,
    station,
    ...(sagitta === undefined ? {} : { sagitta }),
  }
}

/** Greatest difference at places that crowd at both ends. */
function roughly(outline: Span, span: Span): number {
  let most = 0
  for (let i = 1; i < SAMPLES; i++) {
    const x = span.from + ((span.to - span.from) * (1 - Math.cos((Math.PI * i) / SAMPLES))) / 2
    most = Math.max(most, Math.abs(spanRadius(outline, x) - spanRadius(span, x)))
  }
  return most
}

/** The sagitta that comes closest: the difference falls to one least value and rises again. */
function bestSagitta(shape: 'bead' | 'cove', outline: Span, from: number, to: number): number {
  const most = (to - from) / 2
  const closeness = (sagitta: number): number => -roughly(outline, laid(shape, outline, from, to, sagitta))
  return Math.min(mmOfNm(nm(topBetween(closeness, 0, most))), most)
}

/** The shape that comes closest to the outline of a span between two of its places; the span’s own where it is as good. */
export function closestShape(outline: Span, from: number, to: number): Closest {
  const arcs = (['bead', 'cove'] as const).map((shape) => {
    const sagitta = bestSagitta(shape, outline, from, to)
    return {
      shape,
      sagitta,
      deviation: deviationOf([outline], laid(shape, outline, from, to, sagitta)),
    }
  })
  const others = (['straight', 'ovolo', 'cavetto', 'ogee'] as const).map((shape) => ({
    shape,
    deviation: deviationOf([outline], laid(shape, outline, from, to)),
  }))
  const own = ({ shape }: Closest): number => (shape === outline.shape ? 0 : 1)
  const all: Closest[] = [...others, ...arcs].sort((a, b) => own(a) - own(b))
  return all.reduce((best, one) => (nm(one.deviation) < nm(best.deviation) ? one : best))
}
