import type { CutOrder, CutPlan } from './board.ts'

/** The plan that cuts nothing, with all blanks in `unmet`: what can be said where no time was left for any other. */
export function nothingCut({ blanks }: Pick<CutOrder, 'blanks'>): CutPlan {
  return {
    boards: [],
    boardFeetBought: 0,
    boardFeetTallied: 0,
    boardFeetInBlanks: 0,
    yield: 0,
    cost: 0,
    lowerBound: 0,
    proven: false,
    unmet: blanks.map(({ key, count }) => ({ key, count })),
    seconds: 0,
  }
}
