import type { OutlinePoint } from '../../shared/profile/outline.ts'
import { litTone } from './wood-tones.ts'

/** Light from above and a little to the front: towards the upper edge, towards the eye. */
const LIGHT_UP = 0.56
const LIGHT_FRONT = 0.83
const AMBIENT = 0.42
const DIRECT = 0.72
const GLOSS = 0.2

/** How bright a smooth round surface is `angle` radians below the line nearest the eye; 1 is the plain tone. */
export function roundLight(angle: number): number {
  const facing = Math.max(0, -Math.sin(angle) * LIGHT_UP + Math.cos(angle) * LIGHT_FRONT)
  // Halfway between light and eye is where oiled wood glints.
  const glint = Math.max(0, Math.cos(angle + Math.atan2(LIGHT_UP, LIGHT_FRONT) / 2)) ** 24
  return AMBIENT + DIRECT * facing + GLOSS * glint
}

/** Brightness of a flat that faces the eye. */
export const flatLight = (): number => AMBIENT + DIRECT * LIGHT_FRONT

interface Band {
  /** Squeeze towards the axis, 0…1. */
  squeeze: number
  fill: string
}

/**
 * Bands of one half of a round part from its edge to its axis, painted one over the other: each is the half
 * outline squeezed by the sine of its angle, so the shading follows every bead and cove.
 */
export function roundBands(tone: string, side: -1 | 1, count: number): Band[] {
  return Array.from({ length: count }, (_, k) => {
    const [outer, inner] = [count - k, count - k - 1].map((n) => ((n / count) * Math.PI) / 2) as [
      number,
      number,
    ]
    return { squeeze: Math.sin(outer), fill: litTone(tone, roundLight((side * (outer + inner)) / 2)) }
  })
}

export interface Stop {
  /** Along the part, 0…1. */
  offset: number
  /** -1 (deep shadow) … 1 (full light). */
  light: number
}

const SHARP = 0.25
const SHADOW_FALL = 1.1

/**
 * Light and shadow along the part from the slope of its surface and what stands up beside it. `from` is 1 when
 * the light comes from the foot and -1 when it comes from the top.
 */
export function slopeStops(outline: readonly OutlinePoint[], from: -1 | 1): Stop[] {
  const length = outline.at(-1)?.x ?? 0
  if (length <= 0) return []
  const shadows = castShadows(outline, from)
  const facing = facings(outline, from)
  const stops: Stop[] = []
  outline.forEach((point, i) => {
    const [before, after] = [facing[i - 1], facing[i]]
    const shadow = shadows[i]!
    const push = (light: number) =>
      stops.push({ offset: point.x / length, light: Math.max(-1, Math.min(1, light - shadow)) })
    if (before !== undefined && after !== undefined && Math.abs(before - after) < SHARP)
      push((before + after) / 2)
    else {
      if (before !== undefined) push(before)
      if (after !== undefined) push(after)
    }
  })
  return stops
}

/** Light of each stretch between two points; undefined where it has no length. */
function facings(outline: readonly OutlinePoint[], from: -1 | 1): (number | undefined)[] {
  return outline.map((point, i) => {
    const next = outline[i + 1]
    if (!next || next.x - point.x < 1e-9) return undefined
    const slope = (next.r - point.r) / (next.x - point.x)
    const steep = Math.sqrt(1 + slope * slope)
    return (from * slope) / steep - 0.35 * (1 - 1 / steep)
  })
}

/** How deep each point lies in the shadow of what stands between it and the light, 0…0.7. */
function castShadows(outline: readonly OutlinePoint[], from: -1 | 1): number[] {
  const shadows = outline.map(() => 0)
  let height = 0
  let at: number | undefined
  const order = from === 1 ? outline.map((_, i) => i) : outline.map((_, i) => outline.length - 1 - i)
  for (const i of order) {
    const { x, r } = outline[i]!
    height = Math.max(r, at === undefined ? r : height - Math.abs(x - at) * SHADOW_FALL)
    at = x
    shadows[i] = r > 0 ? Math.min(0.7, (2.2 * (height - r)) / r) : 0
  }
  return shadows
}
