import { noHistory, type SheetHistory } from './sheet-history.ts'

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
