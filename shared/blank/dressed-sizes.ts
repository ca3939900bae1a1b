import { inches, nm } from '../units/length.ts'

/** Whether softwood was surfaced after drying or green: green lumber is sawn a little over, to shrink to size. */
export type DressedWhen = 'dry' | 'green'

/**
 * Softwood dimension lumber: nominal thickness in inches → surfaced dry, surfaced green. Tenn. Comp. R. & Regs.
 * 0080-07-07-.06, table 4, sizes as in PS 20 (read).
 */
const thicknesses: Record<number, [dry: number, green: number]> = {
  2: [1.5, 1.5625],
  2.5: [2, 2.0625],
  3: [2.5, 2.5625],
  3.5: [3, 3.0625],
  4: [3.5, 3.5625],
  4.5: [4, 4.0625],
}

/** The same for widths, and for the sides of posts. Same table. */
const widths: Record<number, [dry: number, green: number]> = {
  2: [1.5, 1.5625],
  3: [2.5, 2.5625],
  4: [3.5, 3.5625],
  5: [4.5, 4.625],
  6: [5.5, 5.625],
  8: [7.25, 7.5],
  10: [9.25, 9.5],
  12: [11.25, 11.5],
  14: [13.25, 13.5],
  16: [15.25, 15.5],
}

/** One-inch boards: 3/4 in surfaced dry (same table, read); surfaced green 25/32 in, from memory. */
const board: [dry: number, green: number] = [0.75, 25 / 32]

/** Nominal thicknesses of softwood, inches, thinnest first. */
export const softwoodThicknesses = [1, ...Object.keys(thicknesses).map(Number)].sort((a, b) => a - b)

/** Nominal widths of softwood, inches, narrowest first. */
export const softwoodWidths = Object.keys(widths)
  .map(Number)
  .sort((a, b) => a - b)

const of = ([dry, green]: [number, number], when: DressedWhen) => inches(when === 'dry' ? dry : green)

/**
 * Thickness a softwood of this nominal (inches) really has, mm; nothing where the table prints none. From 5 in on
 * posts and timbers are as thick as boards of that name are wide.
 *
 * @example dressedThickness(2, 'dry') // 38.1
 */
export function dressedThickness(nominal: number, when: DressedWhen): number | undefined {
  const printed = nominal === 1 ? board : (thicknesses[nominal] ?? widths[nominal])
  return printed && of(printed, when)
}

/**
 * Width a softwood of this nominal (inches) really has, mm; nothing where the table prints none.
 *
 * @example dressedWidth(8, 'dry') // 184.15
 * @example dressedWidth(8, 'green') // 190.5
 */
export function dressedWidth(nominal: number, when: DressedWhen): number | undefined {
  const printed = widths[nominal]
  return printed && of(printed, when)
}

/**
 * Width of hardwood of this nominal width with its edges surfaced, mm: scant by 3/8 in below 8 in, by 1/2 in from 8 in
 * on. Wood Handbook FPL-GTR-190 ch. 6 (read).
 *
 * @example edgeSurfacedWidth(152.4) // 142.875
 * @example edgeSurfacedWidth(203.2) // 190.5
 */
export const edgeSurfacedWidth = (nominal: number): number =>
  Math.max(0, nominal - inches(nm(nominal) < nm(inches(8)) ? 3 / 8 : 1 / 2))

/** Grades of solid kiln-dried squares, rough. Wood Handbook FPL-GTR-190 ch. 6 (read). */
export const squareGrades = ['Clear', 'Select', 'Sound'] as const

/** Sides rough kiln-dried squares are commonly cut to, inches: common practice, no source. */
const SQUARES = [1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4]

/**
 * The least square on sale that is at least so thick, mm; nothing where none is.
 *
 * @example squareFor(44.45) // 44.45
 * @example squareFor(46) // 50.8
 * @example squareFor(120) // undefined
 */
export function squareFor(side: number): number | undefined {
  const found = SQUARES.find((size) => nm(inches(size)) >= nm(side))
  return found === undefined ? undefined : inches(found)
}
