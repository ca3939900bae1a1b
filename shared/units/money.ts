/**
 * Minor digits of a currency by ISO 4217 (list one, maintenance agency SIX); two unless listed.
 *
 * @example minorDigits('JPY') // 0
 */
export function minorDigits(currency: string): number {
  if (/^(BIF|CLP|DJF|GNF|ISK|JPY|KMF|KRW|PYG|RWF|UGX|VND|VUV|XAF|XOF|XPF)$/.test(currency)) return 0
  if (/^(BHD|IQD|JOD|KWD|LYD|OMR|TND)$/.test(currency)) return 3
  return 2
}

/** Whole minor units (cents) of an amount in currency units; halves away from zero. */
export function minorOf(amount: number, currency: string): number {
  const scaled = Math.abs(amount) * 10 ** minorDigits(currency)
  // A shave above the binary noise of e.g. 1.005 × 100, so that a written half rounds up.
  return Math.sign(amount) * Math.round(scaled * (1 + 1e-12))
}

/** Currency units of whole minor units. */
export const amountOf = (minor: number, currency: string): number => minor / 10 ** minorDigits(currency)

/**
 * An amount of minor units as text with its currency.
 *
 * @example moneyText(123450, 'USD') // '1,234.50 USD'
 */
export function moneyText(minor: number, currency: string): string {
  const digits = minorDigits(currency)
  const [whole, rest] = Math.abs(minor / 10 ** digits)
    .toFixed(digits)
    .split('.')
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, ',')
  return `${minor < 0 ? '-' : ''}${grouped}${rest ? `.${rest}` : ''} ${currency}`
}
