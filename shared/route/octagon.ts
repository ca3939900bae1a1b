/** Share of a square’s area that is left when it is sawn to a regular octagon: 2(√2 − 1). */
export const octagonShare = 2 * (Math.SQRT2 - 1)

/**
 * Where the gauge lines go that mark a square for a regular octagon, from each edge; mm for mm.
 *
 * @example octagonLine(100) // 29.2893219
 */
export const octagonLine = (side: number): number => side * (1 - Math.SQRT1_2)
