import { type Snap, snaps } from '../shared/profile/edit/snap.ts'
import type { LibraryFile } from './library-file.ts'
import type { EnteredSheet } from './sheet-file.ts'
import { noHistory, type SheetHistory } from './sheet-history.ts'
import { liveSheet, sameStations, stationsOfSheet } from './sheet-live.ts'
import { unreadPlace } from './sheet-way.ts'

/** Where a person is on a sheet, and what can be taken back: kept on this device beside the draft. */
export interface SheetHand {
  original: number
  place: number
  /** The range of the originals becomes the tolerance of the profile. */
  asTolerance: boolean
  /** The profile was drawn on by hand since it was measured: the sheet leaves it alone. */
  byHand: boolean
  /** The grid that places and sizes of the profile fall on; the readings stay as they are. */
  snap: Snap
  history: SheetHistory
}

const PREFIX = 'setwright.sheet-hand.'

export const freshHand: SheetHand = {
  original: 0,
  place: 0,
  asTolerance: false,
  byHand: false,
  snap: 'none',
  history: noHistory,
}

/** Where a person begins on a sheet that this device has not kept. */
export function firstHand({ profile: { stations }, units }: LibraryFile, sheet: EnteredSheet): SheetHand {
  // A profile that was stored tells by itself on which grid it was made.
  const snap = (['none', ...snaps] as const).find((grid) => {
    const live = liveSheet(sheet, grid)
    return live.lacking.length === 0 && sameStations(stations, stationsOfSheet(live, sheet, false), units)
  })
  return {
    ...freshHand,
    place: unreadPlace(sheet, 0),
    asTolerance: stations.some(({ plus, minus }) => plus !== undefined || minus !== undefined),
    byHand: stations.length > 0 && snap === undefined,
    snap: snap ?? 'none',
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
    return kept?.history?.past ? { ...freshHand, ...kept } : undefined
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
