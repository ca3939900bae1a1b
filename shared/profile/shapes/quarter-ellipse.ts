import type { Span } from '../profile.ts'
import { type Arc, type Shape, shares } from './shape.ts'

/** √(1−t²) from t and 1−t, with no figures lost near the end. */
const quarter = (t: number, rest: number): number => Math.sqrt(Math.max(0, rest * (1 + t)))

/** Slope of √(1−t²) by t. */
const quarterSlope = (t: number, rest: number): number => -t / quarter(t, rest)

/**
 * Ovolo and cavetto are one quarter of an ellipse that stands upright at one end of the span and lies along it
 * at the other. `upright` says where: for an ovolo at its small end, for a cavetto at its large end.
 */
export function quarterEllipse(upright: 'small' | 'large'): Shape {
  const uprightAtTop = ({ d0, d1 }: Span): boolean => (upright === 'small') === d0 > d1
  /** Radius at the upright end, and how much the ellipse adds to it at the other. */
  const ends = (span: Span): [number, number] =>
    uprightAtTop(span) ? [span.d1 / 2, (span.d0 - span.d1) / 2] : [span.d0 / 2, (span.d1 - span.d0) / 2]
  return {
    radius(span, x) {
      const [t, rest] = shares(span, x)
      const [base, height] = ends(span)
      return base + height * (uprightAtTop(span) ? quarter(t, rest) : quarter(rest, t))
    },
    slope(span, x) {
      const [t, rest] = shares(span, x)
      const [, height] = ends(span)
      if (height === 0) return 0
      const w = span.to - span.from
      return (height / w) * (uprightAtTop(span) ? quarterSlope(t, rest) : -quarterSlope(rest, t))
    },
    arcs: (span) => [ellipseArc(span, ends(span), uprightAtTop(span))],
  }
}

function ellipseArc({ from, to }: Span, [base, height]: [number, number], uprightAtTop: boolean): Arc {
  const w = to - from
  const at = (angle: number) => {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
    return uprightAtTop
      ? { x: from + w * sin, r: base + height * cos, dx: w * cos, dr: -height * sin }
      : { x: from + 2 * w * Math.sin(angle / 2) ** 2, r: base + height * sin, dx: w * sin, dr: height * cos }
  }
  return { start: 0, end: Math.PI / 2, at }
}
