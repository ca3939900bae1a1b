import type { Span } from '../profile.ts'
import { spanAt, spanRadius } from '../radius.ts'
import { sizeText } from '../size-text.ts'
import { evenPlaces, topPlaces } from '../top-between.ts'

const LOOKS = 96

/** A deviation as it is told, never rounded down. */
export const deviationText = (deviation: number): string => sizeText(Math.ceil(deviation * 1e3) / 1e3)

/**
 * Greatest difference of the radius between an outline and a span laid over it, mm. It is looked for by the angle of
 * a half circle over the span, so that looks crowd at both ends, where a half round stands upright.
 */
export function deviationOf(outline: readonly Span[], span: Span): number {
  const { from, to } = span
  const old = spanAt([...outline], (from + to) / 2)
  const difference = (angle: number): number => {
    const x = from + ((to - from) * (1 - Math.cos(angle))) / 2
    return Math.abs(spanRadius(old, x) - spanRadius(span, x))
  }
  return Math.max(...topPlaces(difference, evenPlaces(0, Math.PI, LOOKS)).map(difference))
}
