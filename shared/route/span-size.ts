import type { Span } from '../profile/profile.ts'
import { shapeOf } from '../profile/shapes/index.ts'

/** Volume mm³ and lateral surface mm² of a span. */
export interface SpanSize {
  volume: number
  surface: number
}

const PANELS = 8

/** Simpson’s rule over both functions at once; minutes ask for no more than that. */
function simpson(f: (p: number) => SpanSize, from: number, to: number): SpanSize {
  const step = (to - from) / (2 * PANELS)
  const sum = { volume: 0, surface: 0 }
  for (let i = 0; i <= 2 * PANELS; i++) {
    const weight = (i === 0 || i === 2 * PANELS ? 1 : i % 2 === 0 ? 2 : 4) * (step / 3)
    const at = f(from + i * step)
    sum.volume += weight * at.volume
    sum.surface += weight * at.surface
  }
  return sum
}

/** Volume and lateral surface of one span, near enough to put minutes to (relative error under 1e-4). */
export function spanSize(span: Span): SpanSize {
  const shape = shapeOf(span)
  const pieces = shape.pieces?.(span)
  const parts = pieces
    ? pieces.map(({ start, end, at }) =>
        simpson(
          (p) => {
            const { area, dx, lateral } = at(p)
            return { volume: area * Math.abs(dx), surface: lateral }
          },
          start,
          end,
        ),
      )
    : shape.arcs(span).map(({ start, end, at }) =>
        simpson(
          (p) => {
            const { r, dx, dr } = at(p)
            return { volume: Math.PI * r * r * dx, surface: 2 * Math.PI * r * Math.hypot(dx, dr) }
          },
          start,
          end,
        ),
      )
  return parts.reduce((a, b) => ({ volume: a.volume + b.volume, surface: a.surface + b.surface }))
}
