import type { Units } from '../../shared/units/length.ts'
import { gramsOf } from '../../shared/units/mass.ts'

/** Mass as people say it: grams below a kilogram, else kilograms. */
export const massText = (grams: number | undefined): string =>
  grams === undefined
    ? 'mass not known'
    : grams < 1000
      ? `${grams.toFixed(grams < 100 ? 1 : 0)} g`
      : `${(grams / 1000).toFixed(2)} kg`

/** Mass for who writes in inches: ounces below a pound, else pounds, the grams behind. */
export const massIn = (grams: number, units: Units): string => {
  if (units === 'mm') return massText(grams)
  const pounds = grams / gramsOf('lb')
  const text = pounds < 1 ? `${(16 * pounds).toFixed(1)} oz` : `${pounds.toFixed(2)} lb`
  return `${text} (${massText(grams)})`
}
