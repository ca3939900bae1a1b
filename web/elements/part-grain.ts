import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import { tenth } from './part-silhouette.ts'

/** Numbers 0…1 in an order fixed by `seed`: the same profile always shows the same grain. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** One whole number from the figures of a profile. */
export function seedOf(figures: readonly number[]): number {
  let hash = 0x811c9dc5
  for (const figure of figures) {
    hash = Math.imul(hash ^ Math.round(figure * 1000), 0x01000193)
    hash ^= hash >>> 13
  }
  return hash >>> 0
}

export interface GrainLine {
  path: string
  /** Late wood shows as a darker line, 0…1. */
  weight: number
}

/** Growth layers lie at this angle to the line of sight: rift, as a turner wants it. */
const RIFT = 0.62

interface Layers {
  depths: { depth: number; weight: number }[]
  drift: (x: number) => number
}

function layersOf(radius: number, seed: number): Layers {
  const next = seededNumbers(seed)
  const spacing = Math.max(3.4, radius / 6.5)
  const depths: Layers['depths'] = []
  for (let depth = -radius; depth < radius; depth += spacing * (0.6 + 0.8 * next())) {
    depths.push({ depth, weight: 0.35 + 0.65 * next() })
  }
  const [slope, wave, phase] = [(next() - 0.5) / 60, 110 + 160 * next(), next() * Math.PI * 2]
  return { depths, drift: (x) => slope * x + 0.35 * spacing * Math.sin(x / wave + phase) }
}

/**
 * Where growth layers, taken as planes along the stick, come out on the turned surface: a layer at distance d
 * from the axis meets radius r at the angle asin(d / r). Lengths in drawing units about the axis y = 0.
 */
export function grainLines(outline: readonly OutlinePoint[], seed: number): GrainLine[] {
  const radius = outlineRadius(outline)
  const { depths, drift } = layersOf(radius, seed)
  return depths.flatMap(({ depth, weight }) =>
    [0, 1].flatMap((far) => {
      const path = grainPath(outline, (x) => depth + drift(x), far === 1)
      return path ? [{ path, weight }] : []
    }),
  )
}

function grainPath(outline: readonly OutlinePoint[], depthAt: (x: number) => number, far: boolean): string {
  let path = ''
  let drawing = false
  let lastX = Number.NEGATIVE_INFINITY
  for (const { x, r } of outline) {
    const d = depthAt(x) / r
    const meeting = Math.abs(d) < 1 ? Math.asin(d) : undefined
    const angle = meeting === undefined ? undefined : (far ? Math.PI - meeting : meeting) - RIFT
    const seen = angle !== undefined && Math.cos(angle) > 0.02
    const stepped = x - lastX < 1e-9
    if (seen) path += `${drawing && !stepped ? 'L' : 'M'}${tenth(x)} ${tenth(r * Math.sin(angle))}`
    drawing = seen
    lastX = x
  }
  return path.includes('L') ? path : ''
}

/** The same layers on a flat that faces the eye, `half` its half side: lines that run straight along it. */
export function flatGrain(from: number, to: number, half: number, radius: number, seed: number): GrainLine[] {
  const { depths, drift } = layersOf(radius, seed)
  const steps = Math.max(1, Math.ceil((to - from) / 24))
  return depths.flatMap(({ depth, weight }) => {
    let path = ''
    let drawing = false
    for (let k = 0; k <= steps; k++) {
      const x = from + ((to - from) * k) / steps
      const y = (depth + drift(x) - half * Math.sin(RIFT)) / Math.cos(RIFT)
      const seen = Math.abs(y) < half
      if (seen) path += `${drawing ? 'L' : 'M'}${tenth(x)} ${tenth(y)}`
      drawing = seen
    }
    return path.includes('L') ? [{ path, weight }] : []
  })
}
