import { type Shape, shares } from './shape.ts'

/** An S that lies along the axis at both ends: r = r0 + (r1−r0)·(3t²−2t³). */
export const ogee: Shape = {
  radius(span, x) {
    const [t, rest] = shares(span, x)
    return (span.d0 * rest * rest * (1 + 2 * t) + span.d1 * t * t * (1 + 2 * rest)) / 2
  },
  slope(span, x) {
    const [t, rest] = shares(span, x)
    return (3 * t * rest * (span.d1 - span.d0)) / (span.to - span.from)
  },
  arcs({ from, to, d0, d1 }) {
    const [w, rise] = [to - from, (d1 - d0) / 2]
    const at = (t: number) => ({
      x: from + w * t,
      r: d0 / 2 + rise * t * t * (3 - 2 * t),
      dx: w,
      dr: 6 * rise * t * (1 - t),
    })
    return [{ start: 0, end: 1, at }]
  },
}
