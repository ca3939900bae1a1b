import { type Piece, pieceSums, type SolidSums } from './integral.ts'
import { type Profile, type Span, spansOf } from './profile.ts'
import { diametersOf, spanSection } from './radius.ts'
import { faceArea, sectionArea } from './section.ts'
import { shapeOf } from './shapes/index.ts'
import type { Arc } from './shapes/shape.ts'

/** The finished part as a solid. Lengths mm, surfaces mm², volume mm³, `centroid` mm from the foot. */
export interface Solid {
  length: number
  /** Largest and least turned diameter; the sides on a part that is left square all over. */
  maxDiameter: number
  minDiameter: number
  /** Largest side left square; absent on a part turned all over. */
  maxSide?: number
  volume: number
  /** The whole outside: lateral, step rings, shoulder faces and both ends. */
  surface: number
  /** Lateral surface of the turned spans alone. */
  surfaceTurned: number
  centroid: number
}

function turnedPiece({ start, end, at }: Arc): Piece {
  return {
    start,
    end,
    at(parameter) {
      const { x, r, dx, dr } = at(parameter)
      return { x, dx, area: Math.PI * r * r, lateral: 2 * Math.PI * r * Math.hypot(dx, dr) }
    },
  }
}

/** The pieces of a span that add up to its solid. */
function piecesOf(span: Span): Piece[] {
  const shape = shapeOf(span)
  return shape.pieces?.(span) ?? shape.arcs(span).map(turnedPiece)
}

/** Volume mm³, its first moment about the foot mm⁴ and lateral surface mm² of one span, to better than 1e-9. */
function spanSums(span: Span): SolidSums {
  const sums = { volume: 0, moment: 0, lateral: 0 }
  for (const piece of piecesOf(span)) {
    const { volume, moment, lateral } = pieceSums(piece)
    sums.volume += volume
    sums.moment += moment
    sums.lateral += lateral
  }
  return sums
}

/** Areas across the axis: both ends, step rings and shoulder faces. */
function facesArea(spans: Span[]): number {
  const [first, last] = [spans[0]!, spans.at(-1)!]
  const ends = sectionArea(spanSection(first, first.from)) + sectionArea(spanSection(last, last.to))
  return spans.slice(1).reduce((sum, span, i) => {
    const before = spans[i]!
    return sum + faceArea(spanSection(before, before.to), spanSection(span, span.from))
  }, ends)
}

/**
 * Volume, surfaces, centroid and extreme sizes of the finished part, to better than 1e-9 of each. A part that is
 * turned as a glued pair is taken whole, as it leaves the lathe.
 *
 * @example solidOf({ stations: [{ at: 0, then: 'square', side: 40 }, { at: 100, then: 'straight' }], split: false }).volume // 160000
 */
export function solidOf(profile: Profile): Solid {
  const spans = spansOf(profile)
  const totals = { volume: 0, moment: 0, lateral: 0, turned: 0 }
  for (const span of spans) {
    const { volume, moment, lateral } = spanSums(span)
    totals.volume += volume
    totals.moment += moment
    totals.lateral += lateral
    if (span.shape !== 'square') totals.turned += lateral
  }
  const turned = spans.filter((span) => span.shape !== 'square')
  const sizes = (turned.length > 0 ? turned : spans).map(diametersOf)
  const sides = spans.filter((span) => span.shape === 'square').map((span) => span.d0)
  return {
    length: spans.at(-1)!.to - spans[0]!.from,
    maxDiameter: Math.max(...sizes.map((size) => size.greatest)),
    minDiameter: Math.min(...sizes.map((size) => size.least)),
    ...(sides.length > 0 ? { maxSide: Math.max(...sides) } : {}),
    volume: totals.volume,
    surface: totals.lateral + facesArea(spans),
    surfaceTurned: totals.turned,
    centroid: totals.moment / totals.volume,
  }
}
