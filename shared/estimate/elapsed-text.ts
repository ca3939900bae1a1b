import type { BatchTime } from './time.ts'

const counted = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`

/**
 * The days of a batch in words; a floor and no more where even one batch in ten takes longer, as wood that dries may.
 *
 * @example elapsedDays({ workDays: 1, waitDays: 30, days: 31, why: '', p10: 40, p50: 55, p90: 70 }) // "at least 31 days"
 */
export const elapsedDays = ({ days, p10 = days }: BatchTime['elapsed']): string =>
  days < p10 ? `at least ${counted(days)}` : counted(days)

/**
 * The same with the days that nine batches in ten stay within; plans frozen before these were kept have none.
 *
 * @example elapsedText({ workDays: 2, waitDays: 4, days: 6, why: '', p10: 6, p50: 6, p90: 7 }) // "6 days, nine batches in ten within 7"
 */
export const elapsedText = (elapsed: BatchTime['elapsed']): string =>
  elapsed.p90 === undefined || elapsed.p90 <= elapsed.days
    ? elapsedDays(elapsed)
    : `${elapsedDays(elapsed)}, nine batches in ten within ${elapsed.p90}`
