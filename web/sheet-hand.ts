import type { LibraryFile } from './library-file.ts'
import type { EnteredSheet } from './sheet-file.ts'
import { noHistory, type SheetHistory } from './sheet-history.ts'
import { type LiveSheet, sameStations, stationsOfSheet } from './sheet-live.ts'
import { unreadPlace } from './sheet-way.ts'

/** Where a person is on a sheet, and what can be taken back: kept on this device beside the draft. */
export interface SheetHand {
  original: number
  place: number
  /** The range of the originals becomes the tolerance of the profile. */
  asTolerance: boolean
  /** The profile was drawn on by hand since it was measured: the sheet leaves it alone. */
  byHand: boolean
  history: SheetHistory
}

const PREFIX = 'setwright.sheet-hand.'

export const freshHand: SheetHand = {
  original: 0,
  place: 0,
  asTolerance: false,
  byHand: false,
  history: noHistory,
}

/** Where a person begins on a sheet that this device has not kept. */
export function firstHand(
  { profile: { stations }, units }: LibraryFile,
  sheet: EnteredSheet,
  live: LiveSheet,
): SheetHand {
  const made = live.lacking.length === 0 ? stationsOfSheet(live, sheet, false) : []
  return {
    ...freshHand,
    place: unreadPlace(sheet, 0),
    asTolerance: stations.some(({ plus, minus }) => plus !== undefined || minus !== undefined),
    byHand: stations.length > 0 && !sameStations(stations, made, units),
  }
}

/** The hand on a sheet that may have fewer originals and places than the one it was on. */
export const handOnSheet = (hand: SheetHand, { originals, stations }: EnteredSheet): SheetHand => ({
  ...hand,
  original: Math.min(hand.original, originals.length - 1),
  place: Math.min(hand.place, stations.length),
})

/** The hand kept for a draft, by the draft's key. */
export function handOf(key: string): SheetHand | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(PREFIX + key) ?? 'null') as SheetHand | null
    return kept?.history?.past ? kept : undefined
  } catch {
    return undefined
  }
}

/** Keeps the hand; where there is no room for its history, without that, and else not at all: the readings come first. */
export function keepHand(key: string, hand: SheetHand): void {
  for (const each of [hand, { ...hand, history: noHistory }]) {
    try {
      localStorage.setItem(PREFIX + key, JSON.stringify(each))
      return
    } catch {
      localStorage.removeItem(PREFIX + key)
    }
  }
}

export const dropHand = (key: string): void => localStorage.removeItem(PREFIX + key)
