import { mmOfNm, nm } from '../../units/length.ts'
import type { DiameterChoice } from './sheet.ts'

/**
 * The diameter that counts of those read at one place, mm: wood turned round ovals as it dries, so the larger of two
 * at 90° is the nearer to the size it was turned to. Absent where none was read.
 *
 * @example chosenDiameter([50, 49], 'larger') // 50
 * @example chosenDiameter([50, 49], 'mean') // 49.5
 * @example chosenDiameter([49, 50], 'today') // 49
 */
export function chosenDiameter(diameters: readonly number[], choice: DiameterChoice): number | undefined {
  if (diameters.length === 0) return undefined
  if (choice === 'today') return diameters[0]
  return choice === 'larger' ? Math.max(...diameters) : meanMm(diameters)
}

/**
 * The mean of lengths in mm, to the nanometre.
 *
 * @example meanMm([10, 10.5]) // 10.25
 */
export const meanMm = (lengths: readonly number[]): number =>
  mmOfNm(Math.round(lengths.reduce((sum, mm) => sum + nm(mm), 0) / lengths.length))

/**
 * By how much a place is out of round, mm: the difference of two diameters at 90°. Absent with fewer than two.
 *
 * @example outOfRound([50, 49.2]) // 0.8
 */
export function outOfRound(diameters: readonly number[]): number | undefined {
  return diameters.length < 2 ? undefined : mmOfNm(nm(Math.max(...diameters)) - nm(Math.min(...diameters)))
}
