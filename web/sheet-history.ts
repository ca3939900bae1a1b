import { keptSteps } from './kept-steps.ts'
import type { EnteredSheet } from './sheet-file.ts'

interface Before {
  /** The field that was written in: strokes in one field are taken back together. */
  stroke: string
  sheet: EnteredSheet
}

/** What a sheet was before its changes, and after those that were taken back; the latest last. */
export interface SheetHistory {
  past: Before[]
  future: Before[]
}

export const noHistory: SheetHistory = { past: [], future: [] }

/** Characters of its history that a draft may take up: browsers give some 5 million for all they keep, from memory. */
const MOST_CHARACTERS = 600_000

/** The history after a change of the sheet `before`; further strokes in one field are one change. */
export function remembered(history: SheetHistory, before: EnteredSheet, stroke: string): SheetHistory {
  const goesOn = stroke !== '' && history.future.length === 0 && history.past.at(-1)?.stroke === stroke
  return goesOn
    ? history
    : { past: keptSteps([...history.past, { stroke, sheet: before }], MOST_CHARACTERS), future: [] }
}

/** The sheet as it was before its last change, and the history from there; nothing where there was none. */
export function undone(history: SheetHistory, sheet: EnteredSheet) {
  const last = history.past.at(-1)
  return (
    last && {
      sheet: last.sheet,
      history: {
        past: history.past.slice(0, -1),
        future: [...history.future, { stroke: last.stroke, sheet }],
      },
    }
  )
}

/** The sheet with the change done again that was taken back last; nothing where there is none. */
export function redone(history: SheetHistory, sheet: EnteredSheet) {
  const next = history.future.at(-1)
  return (
    next && {
      sheet: next.sheet,
      history: {
        past: [...history.past, { stroke: next.stroke, sheet }],
        future: history.future.slice(0, -1),
      },
    }
  )
}
