import type { CutOrder } from '../../shared/cutting/board.ts'
import type { NewBoard, YardNeed, YardTally } from '../../web/yard-tally.ts'

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
