import type { Outline } from './quadrature.ts'

/*
 * The outlines of the shapes written down a second time, straight from their definitions and independently of
 * shared/profile/shapes: w is the width, r0 and r1 the end radii, t the share of the width, u = 1 − t.
 */

export const lineOutline =
  (w: number, r0: number, r1: number): Outline =>
  (t, u) => ({ r: r0 * u + r1 * t, slope: (r1 - r0) / w })

/** Line plus (bead) or less (cove) a circular arc of sagitta s: R² − (x − w/2)² = (R² − w²/4) + w²·t·u. */
export const arcOutline =
  (sign: 1 | -1, w: number, r0: number, r1: number, s: number): Outline =>
  (t, u) => {
    const R = (w * w) / (8 * s) + s / 2
    const root = Math.sqrt((R - s) ** 2 + w * w * t * u)
    return {
      r: r0 * u + r1 * t + sign * (root - (R - s)),
      slope: (r1 - r0) / w - (sign * w * (t - 0.5)) / root,
    }
  }

const falling = (w: number, large: number, small: number) => ({
  ovolo: (t: number, u: number) => {
    const root = Math.sqrt(u * (1 + t))
    return { r: small + (large - small) * root, slope: (-(large - small) / w) * (t / root) }
  },
  cavetto: (t: number, u: number) => {
    const root = Math.sqrt(t * (1 + u))
    return { r: small + (large - small) * (1 - root), slope: (-(large - small) / w) * (u / root) }
  },
})

const mirrored =
  (outline: Outline): Outline =>
  (t, u) => {
    const { r, slope } = outline(u, t)
    return { r, slope: -slope }
  }

/** Quarter ellipses as defined for r0 > r1; the mirror image where they rise. */
export function ellipseOutline(shape: 'ovolo' | 'cavetto', w: number, r0: number, r1: number): Outline {
  return r0 >= r1 ? falling(w, r0, r1)[shape] : mirrored(falling(w, r1, r0)[shape])
}

export const ogeeOutline =
  (w: number, r0: number, r1: number): Outline =>
  (t, u) => ({
    r: r0 + (r1 - r0) * (3 * t * t - 2 * t ** 3),
    slope: ((r1 - r0) * 6 * t * u) / w,
  })
