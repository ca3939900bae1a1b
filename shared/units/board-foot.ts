import { nm } from './length.ts'

/** Outside sizes of one stick or board, mm. */
interface Size {
  thickness: number
  width: number
  length: number
}

const NM_PER_INCH = 25_400_000
const NM_PER_FOOT = 12 * NM_PER_INCH
const INCH3_PER_BOARD_FOOT = 144

const cubicInches = ({ thickness, width, length }: Size): number =>
  (nm(thickness) / NM_PER_INCH) * (nm(width) / NM_PER_INCH) * (nm(length) / NM_PER_INCH)

/**
 * Board feet of a board as it measures: thickness (in) × width (in) × length (ft) / 12, where stock under one
 * inch counts as one inch (Noyes, Handwork in Wood, 1910; NHLA practice). Sizes in mm.
 *
 * @example boardFeet({ thickness: 25.4, width: 228.6, length: 2438.4 }) // 6
 * @example boardFeet({ thickness: 15.875, width: 228.6, length: 2438.4 }) // 6
 */
export function boardFeet(size: Size): number {
  return cubicInches({ ...size, thickness: Math.max(size.thickness, 25.4) }) / INCH3_PER_BOARD_FOOT
}

/**
 * Board feet of wood that is really there, without the one-inch minimum: for blanks. Sizes in mm.
 *
 * @example boardFeetNet({ thickness: 63.5, width: 63.5, length: 914.4 }) // 1.5625
 */
export function boardFeetNet(size: Size): number {
  return cubicInches(size) / INCH3_PER_BOARD_FOOT
}

/**
 * Surface measure of a board in whole square feet: the width keeps its fraction, the length drops to whole
 * feet, the product over 12 goes to the nearest whole number, halves up (NHLA rules, paragraphs 16 to 18).
 * Sizes in mm.
 *
 * @example surfaceMeasure(163.5125, 3276.6) // 5
 */
export function surfaceMeasure(width: number, length: number): number {
  const feet = Math.floor(nm(length) / NM_PER_FOOT)
  return Math.floor((2 * nm(width) * feet + NM_PER_FOOT) / (2 * NM_PER_FOOT))
}

/**
 * Board feet as a yard tallies them: surface measure × nominal thickness in inches, under one inch counting
 * as one (NHLA rules, paragraph 18). Sizes in mm, `thickness` as the board is sold.
 *
 * @example boardFeetTallied({ thickness: 31.75, width: 209.55, length: 3048 }) // 8.75
 */
export function boardFeetTallied({ thickness, width, length }: Size): number {
  return (surfaceMeasure(width, length) * Math.max(nm(thickness), NM_PER_INCH)) / NM_PER_INCH
}
