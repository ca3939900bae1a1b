import type { Units } from './length.ts'

/** Newtons in a pound-force: 0.45359237 kg × 9.80665 m/s², both exact by definition. */
const POUND_FORCE = 0.45359237 * 9.80665

/**
 * Newtons of so many pounds of force.
 *
 * @example poundsForce(50) // 222.411080762
 */
export const poundsForce = (pounds: number): number => pounds * POUND_FORCE

/** What can be read as a force, for messages. */
export const READABLE_FORCES = 'a number of newtons, or text such as "222 N", "0.2 kN" or "50 lb"'

const PER_UNIT: Record<string, number> = {
  n: 1,
  kn: 1000,
  lb: POUND_FORCE,
  lbs: POUND_FORCE,
  lbf: POUND_FORCE,
}

/**
 * A force in newtons, from a number of newtons or from text; text without a unit is in pounds where lengths are in
 * inches, else in newtons. Nothing where it cannot be read.
 *
 * @example readForce('50 lb', 'mm') // 222.411080762
 * @example readForce('222,4 N', 'in') // 222.4
 */
export function readForce(written: number | string, units: Units): number | undefined {
  if (typeof written === 'number') return Number.isFinite(written) ? written : undefined
  const [, figure, unit] = /^\s*(\d+(?:[.,]\d+)?)\s*([a-z]*)\s*$/i.exec(written) ?? []
  if (figure === undefined) return undefined
  const perUnit = PER_UNIT[unit === '' ? (units === 'in' ? 'lb' : 'n') : unit!.toLowerCase()]
  return perUnit === undefined ? undefined : Number(figure.replace(',', '.')) * perUnit
}
