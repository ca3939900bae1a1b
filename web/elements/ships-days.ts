import { dayNumber, isoDay, weekDay, worksOn } from '../../shared/schedule/days.ts'
import type { ShipRow, Ships } from '../../shared/ships.ts'

/** Days drawn at the most; what goes on after them runs out of the picture. */
const DAYS_MOST = 120
/** Days that stand beside each other at the least, so that a short plan is not stretched. */
const DAYS_LEAST = 14

/** A stretch of the strip, in percent of its width. */
export interface Stretch {
  x: number
  width: number
  /** Share of a person’s day, 0 to 1; as high it is drawn. */
  share?: number
  atLathe?: boolean
  name?: string
}

/** The days that are drawn. */
export interface Window {
  from: number
  count: number
}

/** From today to the last day that matters, in whole weeks. */
export function windowOf({ today, rows }: Pick<Ships, 'today' | 'rows'>): Window {
  const from = dayNumber(today)
  const ends = rows.flatMap(({ done, due, sure }) => [done, sure.done, due ?? done]).map(dayNumber)
  const count = Math.max(DAYS_LEAST, ...ends.map((end) => end - from + 2))
  return { from, count: Math.min(DAYS_MOST, Math.ceil(count / 7) * 7) }
}

const place = (day: number, { from, count }: Window): number => ((day - from) / count) * 100
const isSeen = (day: number, { from, count }: Window): boolean => day >= from && day < from + count

/** Work of a row by days: one stretch a day and place of work, as high as it fills a person’s day. */
export function workStretches(row: ShipRow, minutesPerDay: number, window: Window): Stretch[] {
  const days = new Map<string, { day: number; minutes: number; atLathe: boolean }>()
  for (const { day, minutes, atLathe } of row.bars) {
    const key = `${day} ${atLathe}`
    const known = days.get(key)
    if (known) known.minutes += minutes
    else days.set(key, { day: dayNumber(day), minutes, atLathe })
  }
  return [...days.values()]
    .filter(({ day }) => isSeen(day, window))
    .map(({ day, minutes, atLathe }) => ({
      x: place(day, window),
      width: 100 / window.count,
      share: Math.min(1, minutes / minutesPerDay),
      atLathe,
    }))
}

/** Waits of a row: from the day after they begin to the one before they end. */
export function waitStretches(row: ShipRow, window: Window): Stretch[] {
  return row.waits.flatMap(({ name, from, to }) => {
    const [start, end] = [dayNumber(from) + 1, Math.min(dayNumber(to), window.from + window.count)]
    return end > start && isSeen(start, window)
      ? [{ x: place(start, window), width: ((end - start) / window.count) * 100, name }]
      : []
  })
}

/** Days on which the shop is closed. */
export function closedStretches({ calendar }: Pick<Ships, 'calendar'>, window: Window): Stretch[] {
  const works = worksOn(calendar)
  return Array.from({ length: window.count }, (_, i) => window.from + i)
    .filter((day) => !works(day))
    .map((day) => ({ x: place(day, window), width: 100 / window.count }))
}

/** Where a day ends, in percent; nothing for one out of the picture. */
export const endOf = (iso: string | undefined, window: Window): number | undefined =>
  iso !== undefined && isSeen(dayNumber(iso), window) ? place(dayNumber(iso) + 1, window) : undefined

/** Written days stand so far apart, and from the right edge, in percent: their names must fit on a phone. */
const APART = 20
const FROM_EDGE = 14

/** Days that are written: the first, then Mondays as far as there is room. */
export function writtenDays(window: Window): { x: number; day: string }[] {
  const written = [{ x: 0, day: isoDay(window.from) }]
  for (let day = window.from + 1; day < window.from + window.count; day++) {
    const x = place(day, window)
    if (weekDay(day) === 'mon' && x - written.at(-1)!.x >= APART && x <= 100 - FROM_EDGE)
      written.push({ x, day: isoDay(day) })
  }
  return written
}
