import { inches, mmOfNm, nm, type Units } from '../../units/length.ts'

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
export const snapped = (mm: number, snap: Snap): number => onLine(mm, nm(STEPS[snap]))

const onLine = (mm: number, step: number): number =>
  mmOfNm(step === 0 ? nm(mm) : Math.round(nm(mm) / step) * step)

/** What a caliper is read to. */
const CALIPER: Record<Units, number> = { in: inches(1 / 1000), mm: 0.01 }

/**
 * A length dragged by hand, mm: without a grid it falls on what a caliper is read to, thousandths of an inch or
 * hundredths of a millimetre; a grid is left to do it by itself.
 *
 * @example dragged(90.43712, 'none', 'mm') // 90.44
 */
export const dragged = (mm: number, snap: Snap, units: Units): number =>
  snap === 'none' ? onLine(mm, nm(CALIPER[units])) : mm

/** Half the finest mark of an inch rule; a tenth of that of a metric one. */
const FREE_PRESS: Record<Units, number> = { in: inches(1 / 128), mm: 0.1 }

/**
 * How far one press of an arrow key goes, mm: one line of the grid, or without a grid half of 1/64 in or 0.1 mm.
 *
 * @example pressStep('none', 'mm') // 0.1
 * @example pressStep('1/16', 'mm') // 1.5875
 */
export const pressStep = (snap: Snap, units: Units): number => STEPS[snap] || FREE_PRESS[units]
