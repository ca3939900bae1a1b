import { type LengthStyle, lengthText, limitText, nm } from '../units/length.ts'

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

/**
 * Lengths of one sentence in the style given, with more figures where the first would read like another.
 *
 * @example apartTexts([60.3, 60.325], 'decimal') // ['2.374 in', '2.375 in']
 * @example apartTexts([101.6, 101.7], 'fraction') // ['4 in', '4.004 in']
 * @example apartTexts([60.322, 60.324], 'mm') // ['60.322 mm (2.3749 in)', '60.324 mm (2.375 in)']
 */
export function apartTexts(lengths: [number, ...number[]], style: LengthStyle): string[] {
  for (const text of [lengthText, limitText]) {
    const [first, ...others] = lengths.map((mm) => text(mm, style))
    if (others.every((other, i) => other !== first || nm(lengths[i + 1]!) === nm(lengths[0])))
      return [first!, ...others]
  }
  return lengths.map((mm) => sizeText(mm))
}
