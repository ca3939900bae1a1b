import { type LengthStyle, lengthText, mmOfNm, nm } from './length.ts'

/** What lengths of a style are written to, nm: 1/64 in, 1/10,000 in, 0.1 mm. */
const STEP: Record<LengthStyle, number> = { fraction: 396_875, decimal: 2_540, mm: 100_000 }

/**
 * The longest length, as people read it, that is less than a limit: for limits that must not be reached.
 *
 * @example lengthBelow(101.6, 'fraction') // '3-63/64 in'
 * @example lengthBelow(101.65, 'mm') // '101.6 mm'
 */
export function lengthBelow(mm: number, style: LengthStyle): string {
  const step = STEP[style]
  return lengthText(mmOfNm(Math.max(0, Math.ceil(nm(mm) / step) - 1) * step), style)
}

/**
 * A length as people read it, rounded down: what may get no larger by being written.
 *
 * @example lengthDown(101.6, 'fraction') // '4 in'
 * @example lengthDown(101.69, 'mm') // '101.6 mm'
 */
export const lengthDown = (mm: number, style: LengthStyle): string =>
  lengthText(mmOfNm(Math.floor(nm(mm) / STEP[style]) * STEP[style]), style)

/**
 * A length as people read it, rounded up: what may get no smaller by being written.
 *
 * @example lengthUp(101.6, 'fraction') // '4 in'
 * @example lengthUp(101.61, 'mm') // '101.7 mm'
 */
export const lengthUp = (mm: number, style: LengthStyle): string =>
  lengthText(mmOfNm(Math.ceil(nm(mm) / STEP[style]) * STEP[style]), style)
