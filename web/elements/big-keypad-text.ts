import type { LengthStyle } from '../../shared/units/length.ts'

/** Keys of a row; what they do is in `pressed`. */
export type Key = string

/** The keys for readings in one style, row by row. */
export function keypadRows(style: LengthStyle | 'whole'): Key[][] {
  if (style === 'fraction')
    return [
      ['7', '8', '9', '⌫', 'C'],
      ['4', '5', '6', '.', '-'],
      ['1', '2', '3', '0', '/2'],
      ['/4', '/8', '/16', '/32', '/64'],
    ]
  const digits = [
    ['7', '8', '9', '⌫'],
    ['4', '5', '6', 'C'],
  ]
  return style === 'whole'
    ? [...digits, ['1', '2', '3', '0']]
    : [...digits, ['1', '2', '3', '.'], ['0', '00']]
}

const denominators: Record<string, string> = {
  '/2': '/2 halves',
  '/4': '/4 quarters',
  '/8': '/8 eighths',
  '/16': '/16 sixteenths',
  '/32': '/32 thirty-seconds',
  '/64': '/64 sixty-fourths',
}

/** How a key is read out; what stands on it is part of it, for those who speak to the screen. */
export const keyName = (key: Key): string =>
  ({ '⌫': 'Delete the last', C: 'Clear', '.': 'Decimal point', '-': 'in –, then a fraction' })[key] ??
  denominators[key] ??
  key

const LONGEST = 12

/** A reading in inches: `1`, then `-`, then the numerator and its denominator; or a decimal as a dial shows it. */
function pressedInches(text: string, key: Key): string {
  if (key === '-') return /^\d+$/.test(text) ? `${text}-` : text
  if (key in denominators) return /^(\d+-)?\d+(\/\d+)?$/.test(text) ? text.replace(/\/\d+$/, '') + key : text
  // A digit after a fraction begins a new reading.
  if (text.includes('/')) return key === '.' ? text : key
  return key === '.' && text.includes('-') ? text : pressedDecimal(text, key)
}

function pressedDecimal(text: string, key: Key): string {
  if (key === '.' && /[.,]/.test(text)) return text
  return key === '.' && text === '' ? '0.' : text + key
}

/**
 * The reading as text after a key of the keypad. Fractions of an inch are keyed as they are spoken: numerator, then
 * its denominator, after whole inches and a dash. Delete takes a denominator off in one.
 */
export function pressed(text: string, key: Key, style: LengthStyle | 'whole'): string {
  if (key === 'C') return ''
  if (key === '⌫') return text.replace(/(\/\d*|.)$/, '')
  return (style === 'fraction' ? pressedInches(text, key) : pressedDecimal(text, key)).slice(0, LONGEST)
}
