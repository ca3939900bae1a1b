import type { Units } from '../../shared/units/length.ts'
import { gramsOf } from '../../shared/units/mass.ts'
import { minorOf, moneyText } from '../../shared/units/money.ts'

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

/** Hours as a figure, one decimal. */
export const hours = (minutes: number): string => (minutes / 60).toFixed(1)

/** An amount in currency units with its currency. */
export const priceText = (amount: number, currency: string): string =>
  moneyText(minorOf(amount, currency), currency)

export const boardFeetText = (feet: number): string => `${feet.toFixed(feet < 10 ? 2 : 1)} bd ft`

export const percentText = (fraction: number): string => `${(fraction * 100).toFixed(0)} %`

/** A change of a length with its sign. */
export const changeText = (mm: number, text: (mm: number) => string): string =>
  `${mm < 0 ? '−' : '+'}${text(Math.abs(mm))}`
