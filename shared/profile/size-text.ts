import { type LengthStyle, lengthText, nm } from '../units/length.ts'

/**
 * A length for a sentence: in the style given, else in both systems.
 *
 * @example sizeText(60.325) // '60.325 mm (2.375 in)'
 * @example sizeText(60.325, 'fraction') // '2-3/8 in'
 * @example sizeText(0) // '0 mm'
 */
export function sizeText(mm: number, style?: LengthStyle): string {
  if (style) return lengthText(mm, style)
  const figure = Math.round(nm(mm) / 1e3) / 1e3
  return figure === 0 ? '0 mm' : `${figure} mm (${lengthText(mm, 'decimal')})`
}
