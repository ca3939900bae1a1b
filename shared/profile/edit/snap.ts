import { inches, mmOfNm, nm } from '../../units/length.ts'

/** The grids a dragged place or size falls on: the first three inches, the last two mm. */
export const snaps = ['1/64', '1/32', '1/16', '0.5', '1'] as const
export type Snap = (typeof snaps)[number] | 'none'

const STEPS: Record<Snap, number> = {
  '1/64': inches(1 / 64),
  '1/32': inches(1 / 32),
  '1/16': inches(1 / 16),
  '0.5': 0.5,
  '1': 1,
  none: 0,
}

/** A grid where none is asked for, mm: finer than any caliper, so that nothing ends in a shade of a nanometre. */
const FINEST = 0.001

/**
 * Distance between two lines of the grid, mm; 0 where there is none.
 *
 * @example snapMm('1/16') // 1.5875
 */
export const snapMm = (snap: Snap): number => STEPS[snap]

/**
 * The step a size is changed by on that grid, mm: a micrometre where there is none.
 *
 * @example stepOf('none') // 0.001
 */
export const stepOf = (snap: Snap): number => STEPS[snap] || FINEST

/**
 * The length on the nearest line of the grid, mm, exact to the nanometre; without a grid, to the nanometre.
 *
 * @example snapped(60.1, '1/16') // 60.325
 * @example snapped(60.3, '1') // 60
 */
export function snapped(mm: number, snap: Snap): number {
  const step = nm(STEPS[snap])
  return mmOfNm(step === 0 ? nm(mm) : Math.round(nm(mm) / step) * step)
}
