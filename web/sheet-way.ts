import type { EnteredSheet } from './sheet-file.ts'

/** Whether the tape runs down this original: its places are read from the top to the foot. */
const runsDown = (sheet: EnteredSheet, original: number): boolean =>
  sheet.originals[original]?.datum?.towards === 'foot'

/**
 * The place that is read after this one: the next on the sheet, or one beyond its end, which is not on it yet
 * (-1 where the tape runs down, towards the foot).
 */
export const onwardPlace = (sheet: EnteredSheet, original: number, place: number): number =>
  runsDown(sheet, original) ? Math.max(-1, place - 1) : Math.min(sheet.stations.length, place + 1)

/** The place that was read before this one; the first one stays. */
export const placeBehind = (sheet: EnteredSheet, original: number, place: number): number =>
  runsDown(sheet, original)
    ? Math.min(Math.max(0, sheet.stations.length - 1), place + 1)
    : Math.max(0, place - 1)

/** Where reading an original goes on: its first place that lacks a diameter, else beyond the end. */
export function unreadPlace(sheet: EnteredSheet, original: number): number {
  const places = sheet.stations.map((_, i) => i)
  if (runsDown(sheet, original)) places.reverse()
  const readings = sheet.originals[original]?.readings ?? []
  const found = places.find(
    (i) => !readings[i] || (readings[i].diameters.length === 0 && readings[i].at === undefined),
  )
  return found ?? (runsDown(sheet, original) ? -1 : sheet.stations.length)
}
