import { minorOf, moneyText } from '../../shared/units/money.ts'

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
