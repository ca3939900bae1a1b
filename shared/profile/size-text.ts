import { lengthText } from '../units/length.ts'

/**
 * A length for a sentence that has to serve both systems.
 *
 * @example sizeText(60.325) // '60.325 mm (2.375 in)'
 * @example sizeText(0) // '0 mm'
 */
export function sizeText(mm: number): string {
  const figure = Number(mm.toFixed(3))
  return figure === 0 ? '0 mm' : `${figure} mm (${lengthText(mm, 'decimal')})`
}
