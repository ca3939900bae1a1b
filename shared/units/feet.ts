import { inches, type LengthStyle, lengthText, nm, readLength } from './length.ts'

/** Shorter lengths are read in inches alone; common practice, no source. */
const FROM_FEET = 4

/**
 * A long length as rooms are measured, feet and inches; nothing below 4 ft or where mm are shown.
 *
 * @example feetText(4673.6, 'fraction') // '15 ft 4 in'
 * @example feetText(1828.8, 'decimal') // '6 ft'
 * @example feetText(1000, 'fraction') // undefined
 */
export function feetText(mm: number, style: LengthStyle): string | undefined {
  if (style === 'mm') return undefined
  // From what is shown in inches, so that both say the same.
  const shown = readLength(lengthText(mm, style), 'in')!
  const feet = Math.floor(nm(shown) / nm(inches(12)))
  if (feet < FROM_FEET) return undefined
  const rest = shown - inches(12 * feet)
  return nm(rest) === 0 ? `${feet} ft` : `${feet} ft ${lengthText(rest, style)}`
}
