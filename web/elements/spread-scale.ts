import { MM_PER_INCH as IN, type LengthStyle } from '../../shared/units/length.ts'

/** Steps a scale may have, mm: binary fractions of an inch, decimal inches, or millimetres. */
const steps: Record<LengthStyle, number[]> = {
  fraction: [1 / 256, 1 / 128, 1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8].map((n) => n * IN),
  decimal: [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5].map((n) => n * IN),
  mm: [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100],
}

/** Places of the ticks between `low` and `high`, mm: whole multiples of the finest step that needs no more than `most`. */
export function ticksBetween(low: number, high: number, style: LengthStyle, most = 9): number[] {
  const fitting = steps[style].find((step) => Math.floor(high / step) - Math.ceil(low / step) + 1 <= most)
  const step = fitting ?? (high - low) / (most - 1)
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  // `+ 0` turns a minus nought into a plain one.
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step + 0)
}

const fractionOf = (inch: number): string => {
  const [top, bottom] = [Math.round(inch * 256), 256]
  if (top % bottom === 0) return String(top / bottom)
  let [a, b] = [top, bottom]
  while (a % 2 === 0) [a, b] = [a / 2, b / 2]
  return a > b ? `${Math.floor(a / b)}-${a % b}/${b}` : `${a}/${b}`
}

/** A tick's figure with its sign; the unit stands at the end of the scale. */
export function tickText(mm: number, style: LengthStyle): string {
  const sign = mm > 0 ? '+' : mm < 0 ? '−' : ''
  const size = Math.abs(mm)
  if (mm === 0) return '0'
  if (style === 'fraction') return sign + fractionOf(size / IN)
  return sign + String(Number((style === 'decimal' ? size / IN : size).toFixed(4)))
}

/** Rows for dots on a line so that none hides another: 0 on the line, then 1, -1, 2, -2… away from it. */
export function dodged(places: readonly number[], width: number): number[] {
  const taken: { place: number; row: number }[] = []
  return places.map((place) => {
    const near = new Set(taken.filter((dot) => Math.abs(dot.place - place) < width).map(({ row }) => row))
    let row = 0
    while (near.has(row)) row = row > 0 ? -row : 1 - row
    taken.push({ place, row })
    return row
  })
}
