/**
 * Integral over 0…1 by the double exponential rule (Takahasi & Mori 1974), which bears end points where the
 * function has a square root or grows like one over it. `f` gets both t and 1−t, so nothing is lost near the ends.
 */
export function doubleExponential(f: (t: number, rest: number) => number): number {
  const sumWith = (step: number): number => {
    let sum = 0
    for (let k = -Math.ceil(3.6 / step); k <= Math.ceil(3.6 / step); k++) {
      const s = (Math.PI / 2) * Math.sinh(k * step)
      const [t, rest] = [1 / (1 + Math.exp(-2 * s)), 1 / (1 + Math.exp(2 * s))]
      const weight = Math.PI * Math.cosh(k * step) * t * rest * step
      if (t > 0 && rest > 0 && weight > 0) sum += weight * f(t, rest)
    }
    return sum
  }
  let [before, step] = [sumWith(0.25), 0.125]
  for (; step > 1e-3; step /= 2) {
    const now = sumWith(step)
    if (Math.abs(now - before) <= 1e-13 * Math.abs(now)) return now
    before = now
  }
  return before
}

/** Radius and slope dr/dx of an outline by the share t of its width, and 1−t. */
export type Outline = (t: number, rest: number) => { r: number; slope: number }

/** Volume, centroid from the foot, and lateral surface of the outline turned about its axis, over a width. */
export function turnedAbout(
  outline: Outline,
  width: number,
): { volume: number; centroid: number; lateral: number } {
  const volume = width * doubleExponential((t, rest) => Math.PI * outline(t, rest).r ** 2)
  const moment = width ** 2 * doubleExponential((t, rest) => Math.PI * outline(t, rest).r ** 2 * t)
  const lateral =
    width *
    doubleExponential((t, rest) => {
      const { r, slope } = outline(t, rest)
      return 2 * Math.PI * r * Math.hypot(1, slope)
    })
  return { volume, centroid: moment / volume, lateral }
}
