import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { inches } from '../../shared/units/length.ts'
import type { Choice } from '../../web/yard-order.ts'
import { type NewBoard, withBoard, type YardNeed, type YardTally } from '../../web/yard-tally.ts'

/** A device's storage in memory; `full` refuses every write. */
export function storageBench() {
  const kept = new Map<string, string>()
  const state = { full: false }
  const storage: Storage = {
    get length() {
      return kept.size
    },
    key: (index) => [...kept.keys()][index] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => {
      if (state.full) throw new Error('no room')
      kept.set(key, value)
    },
    removeItem: (key) => void kept.delete(key),
    clear: () => kept.clear(),
  }
  return { storage, kept, state }
}

/** An order of square blanks 50 × 700 mm with round figures for trim and kerf. */
export const legsOrder = (more: Partial<CutOrder> = {}): CutOrder => ({
  units: 'mm',
  kerf: 3,
  endTrim: 10,
  edgeTrim: 2,
  process: 'either',
  priceBy: 'exact',
  minOffcut: 300,
  seconds: 10,
  currency: 'EUR',
  blanks: [{ key: 'blank', side: 50, length: 700, count: 8, thickness: 50 }],
  boards: [],
  ...more,
})

export const needOf = (more: Partial<YardNeed> = {}): YardNeed => ({
  job: 'bench',
  name: 'Bench legs',
  species: 'maple-sugar',
  wood: 'Maple, sugar',
  nominal: '8/4',
  thickness: 50.8,
  sap: 'none',
  order: legsOrder(),
  ...more,
})

export const emptyTally = (more: Partial<YardTally> = {}): YardTally => ({
  id: 'ta11y',
  name: 'Saturday',
  units: 'mm',
  currency: 'EUR',
  needs: [],
  boards: [],
  steps: [],
  changedAt: '2026-03-07T09:00:00.000Z',
  ...more,
})

export const newBoard = (width: number, more: Partial<NewBoard['board']> = {}): NewBoard => ({
  board: { units: 'mm', width, length: 2400, thickness: 52, count: 1, ...more },
})

/** A board of maple as it is pulled from the stack. */
export const size = { width: inches(7.375), length: inches(100), thickness: inches(2) }
export const pulled = withBoard(emptyTally(), newBoard(0, size)).boards[0]!
/** A plan of what was pulled. */
export const cutOf = (more: Partial<CutPlan>): CutPlan => ({
  boards: [],
  boardFeetBought: 20,
  boardFeetTallied: 20,
  boardFeetInBlanks: 10,
  yield: 0.5,
  cost: 84.2,
  lowerBound: 80,
  proven: false,
  unmet: [],
  seconds: 1,
  ...more,
})
/** The choice that keeps that board. */
export const choice = (more: Partial<Choice>): Choice => ({
  wanted: 12,
  missing: 0,
  keep: [pulled],
  back: [],
  onHand: 0,
  sum: { boards: 1, feet: 10, minor: 8420 },
  leastMinor: 8000,
  proven: false,
  plan: cutOf({}),
  ...more,
})
