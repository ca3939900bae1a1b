/** Coats of each finish. Common practice, no source; the finish’s maker comes first. */
const coats = { none: 0, oil: 2, wax: 1, polish: 1, film: 3 }

/**
 * How many coats a finish takes.
 *
 * @example coatsOf('film') // 3
 */
export const coatsOf = (finish: keyof typeof coats): number => coats[finish]
