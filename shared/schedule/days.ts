/** Days of the week as the shop names them, Monday first. */
export const weekDays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const
export type WeekDay = (typeof weekDays)[number]

const MS_PER_DAY = 86_400_000

/**
 * The number of a calendar day, counted from 1 January 1970; ISO 8601 in.
 *
 * @example dayNumber('1970-01-02') // 1
 */
export const dayNumber = (iso: string): number =>
  Math.round(Date.parse(`${iso.slice(0, 10)}T00:00:00Z`) / MS_PER_DAY)

/**
 * The calendar day of a number, ISO 8601: years, months and days from a count of days (Fliegel & Van Flandern,
 * Communications of the ACM 11 (1968) 657).
 *
 * @example isoDay(1) // '1970-01-02'
 */
export function isoDay(number: number): string {
  let l = number + 2_440_588 + 68_569
  const n = Math.floor((4 * l) / 146_097)
  l -= Math.floor((146_097 * n + 3) / 4)
  const i = Math.floor((4000 * (l + 1)) / 1_461_001)
  l = l - Math.floor((1461 * i) / 4) + 31
  const j = Math.floor((80 * l) / 2447)
  const day = l - Math.floor((2447 * j) / 80)
  l = Math.floor(j / 11)
  const pad = (value: number): string => String(value).padStart(2, '0')
  return `${100 * (n - 49) + i + l}-${pad(j + 2 - 12 * l)}-${pad(day)}`
}

/**
 * Which day of the week a numbered day is; the first of 1970 was a Thursday.
 *
 * @example weekDay(0) // 'thu'
 */
export const weekDay = (number: number): WeekDay => weekDays[(((number + 3) % 7) + 7) % 7]!

/** When a shop works. */
export interface Calendar {
  workDays: readonly WeekDay[]
  /** Days it is closed all the same, ISO 8601. */
  closed: readonly string[]
}

/** Whether the shop works on a numbered day. */
export function worksOn({ workDays, closed }: Calendar): (day: number) => boolean {
  const shut = new Set(closed.map(dayNumber))
  return (day) => workDays.includes(weekDay(day)) && !shut.has(day)
}

/** Days looked ahead for one on which the shop works: a year’s holiday at the most. */
const LOOK_AHEAD = 366

/** The first day from `day` on that the shop works; `day` itself where none comes within a year. */
export function workDayFrom(works: (day: number) => boolean, day: number): number {
  for (let next = day; next <= day + LOOK_AHEAD; next++) if (works(next)) return next
  return day
}

/** Days the shop works after `due`, up to and with `done`; nothing where it is done in time. */
export function workDaysLate(works: (day: number) => boolean, due: number, done: number): number {
  let late = 0
  for (let day = due + 1; day <= done; day++) if (works(day)) late++
  // Done on a day on which the shop is closed, a day late is a day late.
  return late === 0 && done > due ? 1 : late
}
