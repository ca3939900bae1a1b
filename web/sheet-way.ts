import { nm, readLength } from '../shared/units/length.ts'
import { type EnteredSheet, readingAt } from './sheet-file.ts'

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

/** The first place of an original that lacks a diameter, from the foot; else beyond the end. */
export function openPlace(sheet: EnteredSheet, original: number): number {
  const open = sheet.originals[original]?.readings.findIndex(({ diameters }) => diameters.length === 0) ?? -1
  return open < 0 ? sheet.stations.length : open
}

/**
 * Whether a place entered at the foot end, where the tape runs down, belongs on top: it is read before every other
 * place of the original, as a tenon above the shoulder that positions are counted from, and nothing else is known of it.
 */
export function belongsOnTop(sheet: EnteredSheet, original: number, place: number): boolean {
  if (!runsDown(sheet, original) || sheet.way !== 'running' || place !== 0) return false
  const read = (i: number): number | undefined => {
    const { at } = readingAt(sheet, original, i)
    return at === undefined ? undefined : readLength(at, sheet.units)
  }
  const here = read(0)
  const others = sheet.stations.slice(1).flatMap((_, i) => read(i + 1) ?? [])
  const isFresh = sheet.originals.every((_, k) => readingAt(sheet, k, 0).diameters.length === 0)
  return here !== undefined && isFresh && others.length > 0 && others.every((at) => nm(at) > nm(here))
}
