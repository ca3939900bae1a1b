import type { Span } from '../profile.ts'
import { spanAt, spanRadius } from '../radius.ts'

const SAMPLES = 96
const ROUNDS = 40
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Greatest value of a function between two places, by golden section. */
function peakBetween(low: number, high: number, f: (x: number) => number): number {
  let [a, b] = [low, high]
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)]
  let [fc, fd] = [f(c), f(d)]
  for (let round = 0; round < ROUNDS; round++) {
    if (fc > fd) {
      ;[b, d, fd] = [d, c, fc]
      c = b - GOLDEN * (b - a)
      fc = f(c)
    } else {
      ;[a, c, fc] = [c, d, fd]
      d = a + GOLDEN * (b - a)
      fd = f(d)
    }
  }
  return Math.max(fc, fd)
}

/**
 * Greatest difference of the radius between an outline and a span laid over it, mm. Samples crowd at both ends, where
 * a half round stands upright, and the highest are closed in on.
 */
export function deviationOf(outline: readonly Span[], span: Span): number {
  const { from, to } = span
  const old = spanAt([...outline], (from + to) / 2)
  const place = (angle: number): number => from + ((to - from) * (1 - Math.cos(angle))) / 2
  const difference = (angle: number): number => {
    const x = place(angle)
    return Math.abs(spanRadius(old, x) - spanRadius(span, x))
  }
  const angles = Array.from({ length: SAMPLES + 1 }, (_, i) => (Math.PI * i) / SAMPLES)
  const values = angles.map(difference)
  return values.reduce((most, value, i) => {
    const [before, after] = [values[i - 1] ?? 0, values[i + 1] ?? 0]
    if (value < before || value < after) return most
    const [low, high] = [angles[Math.max(0, i - 1)]!, angles[Math.min(SAMPLES, i + 1)]!]
    return Math.max(most, value, peakBetween(low, high, difference))
  }, 0)
}
