import type { Units } from './length.ts'

/** Grams of an avoirdupois pound, exact by definition (NIST Handbook 44, appendix C). */
const POUND = 453.59237

const PER_UNIT: Record<string, number> = {
  g: 1,
  kg: 1000,
  oz: POUND / 16,
  lb: POUND,
  lbs: POUND,
}

/** Grams of an avoirdupois ounce or pound. */
export const gramsOf = (unit: 'oz' | 'lb'): number => PER_UNIT[unit]!

/** What can be read as a mass, for messages. */
export const READABLE_MASSES = 'text such as "560 g", "0.56 kg", "20 1/2 oz" or "1 lb 4 oz"'

/**
 * A mass in so many figures, for sentences: grams, or ounces below a pound and pounds above it. `by` tells which of
 * the two where several masses are compared.
 *
 * @example massFigures(453.59237, 'in', 4) // '1 lb'
 * @example massFigures(437.2, 'in', 4, 500) // '0.9639 lb'
 * @example massFigures(437.2, 'mm', 4) // '437.2 g'
 */
export function massFigures(grams: number, units: Units, figures: number, by = grams): string {
  const unit = units === 'mm' ? 'g' : by < POUND ? 'oz' : 'lb'
  return `${Number((grams / PER_UNIT[unit]!).toPrecision(figures))} ${unit}`
}

/**
 * A load for the van, no finer than it can be known: whole pounds or kilograms.
 *
 * @example loadText(34864, 'in') // '77 lb'
 * @example loadText(34864, 'mm') // '35 kg'
 */
export function loadText(grams: number, units: Units): string {
  const [unit, each] = units === 'in' ? (['lb', POUND] as const) : (['kg', 1000] as const)
  return `${Math.max(1, Math.round(grams / each))} ${unit}`
}

/** `1 1/2`, `1/2`, `1.5` or `1,5` as a number. */
function amountOf(figure: string): number {
  const [, whole = '0', upper, lower] = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(figure) ?? []
  return upper === undefined
    ? Number(figure.replace(',', '.'))
    : Number(whole) + Number(upper) / Number(lower)
}

/**
 * A mass in grams as read on the scales; text without a unit is in ounces where lengths are in inches, else in
 * grams. Nothing where it cannot be read, or is not more than nothing.
 *
 * @example readMass('0,56 kg', 'mm') // 560
 * @example readMass('1 lb 4 oz', 'in') // 566.9904625
 */
export function readMass(written: string, units: Units): number | undefined {
  const parts = [...written.trim().matchAll(/(\d+ \d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?)\s*([a-z]*)\s*/gi)]
  if (parts.length === 0 || parts.map(([whole]) => whole).join('') !== written.trim()) return undefined
  let grams = 0
  for (const [, figure, unit] of parts) {
    const name = unit!.toLowerCase() || (parts.length > 1 ? '?' : units === 'in' ? 'oz' : 'g')
    const perUnit = PER_UNIT[name]
    if (perUnit === undefined) return undefined
    grams += amountOf(figure!) * perUnit
  }
  return grams > 0 && Number.isFinite(grams) ? grams : undefined
}
