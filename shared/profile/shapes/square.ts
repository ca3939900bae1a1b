import type { Piece } from '../integral.ts'
import type { Span } from '../profile.ts'
import { cornerAngle, halfFlat, type Section, sectionArea, squareSection } from '../section.ts'
import type { Shape } from './shape.ts'
import { lineArc } from './straight.ts'

/** Where two rounded shoulders meet on a square too short for both. */
function meeting({ from, to, rounding: [foot, top] = [0, 0] }: Span): number {
  return from + (to - from) * (foot + top > 0 ? foot / (foot + top) : 0)
}

/**
 * Radius ρ of the circle that rounds the corners, mm, a share `s` of the shoulder's length inside the shoulder;
 * `half` is half the side.
 */
export function cornerRadius(half: number, s: number): number {
  return half + half * (Math.SQRT2 - 1) * Math.sqrt(Math.max(0, s * (2 - s)))
}

function sectionOf(span: Span, x: number): Section {
  const [foot, top] = span.rounding ?? [0, 0]
  const [half, fromFoot, fromTop] = [span.d0 / 2, x - span.from, span.to - x]
  const radii = [
    fromFoot < foot ? cornerRadius(half, Math.max(0, fromFoot) / foot) : Number.POSITIVE_INFINITY,
    fromTop < top ? cornerRadius(half, Math.max(0, fromTop) / top) : Number.POSITIVE_INFINITY,
  ]
  return { half, radius: Math.min(...radii) }
}

/**
 * A rounded shoulder as far as `reach` from its face. With the angle τ = σ² from the shoulder, u = a(1−cos τ) and
 * ρ = half + k·sin τ, so that neither the upright start of ρ nor the square root in the flats spoils the integral.
 */
function shoulderPiece(half: number, length: number, reach: number, face: number, direction: 1 | -1): Piece {
  const k = half * (Math.SQRT2 - 1)
  const end = Math.sqrt(Math.acos(1 - Math.min(1, reach / length)))
  const at = (sigma: number) => {
    const tau = sigma * sigma
    const u = 2 * length * Math.sin(tau / 2) ** 2
    const section = { half, radius: half + k * Math.sin(tau) }
    const [du, dRadius] = [2 * sigma * length * Math.sin(tau), 2 * sigma * k * Math.cos(tau)]
    const corners = 4 * section.radius * cornerAngle(section) * Math.hypot(du, dRadius)
    return {
      x: face + direction * u,
      dx: du,
      area: sectionArea(section),
      lateral: 8 * halfFlat(section) * du + corners,
    }
  }
  return { start: 0, end, at }
}

/** A length left square, its shoulders cut straight in or rounded over. */
export const square: Shape = {
  radius: ({ d0 }) => d0 / 2,
  slope: () => 0,
  arcs: (span) => [lineArc(span)],
  section: sectionOf,
  pieces(span) {
    const { from, to, d0, rounding: [foot, top] = [0, 0] } = span
    const overlapping = foot + top > to - from
    const plainFrom = overlapping ? meeting(span) : from + foot
    const plainTo = overlapping ? plainFrom : to - top
    const pieces: Piece[] = []
    if (foot > 0) pieces.push(shoulderPiece(d0 / 2, foot, plainFrom - from, from, 1))
    const [area, perimeter] = [sectionArea(squareSection(d0)), 4 * d0]
    const whole = {
      start: plainFrom,
      end: plainTo,
      at: (x: number) => ({ x, dx: 1, area, lateral: perimeter }),
    }
    if (plainTo > plainFrom) pieces.push(whole)
    if (top > 0) pieces.push(shoulderPiece(d0 / 2, top, to - plainTo, to, -1))
    return pieces
  },
}
