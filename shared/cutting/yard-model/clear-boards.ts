import { joined } from '../capacity.ts'
import type { Run } from '../clear.ts'
import type { BoardKind } from '../sorted-order.ts'

/** A board as the model sees it: blanks lie where a run crosses a band, in each independent of the others. */
export interface ClearBoard {
  runs: Run[]
  bands: Run[]
}

/** Runs pushed apart until a kerf lies between them: what fits then fits anyhow. */
function apart(runs: readonly Run[], kerf: number): Run[] {
  const out: Run[] = []
  for (const [from, to] of runs) {
    const start = Math.max(from, (out.at(-1)?.[1] ?? Number.NEGATIVE_INFINITY) + kerf)
    if (to > start) out.push([start, to])
  }
  return out
}

/** Ways to see a board that each can be sawn so. */
export const surelyClear = ({ wood }: BoardKind, kerf: number): ClearBoard[] =>
  wood.grids.map(({ runs, bands }) => ({ runs: apart(runs, kerf), bands: apart(bands, kerf) }))

/** The board at its best: nothing more can be sawn from it. */
export const clearAtMost = ({ wood: { whole } }: BoardKind, kerf: number): ClearBoard[] => [
  { runs: joined(whole.runs, kerf), bands: joined(whole.bands, kerf) },
]

/** Whether the two say the same, so that the model is neither too narrow nor too wide. */
export function isClearExact({ wood }: BoardKind, kerf: number): boolean {
  const isApart = (runs: readonly Run[]) =>
    runs.every((run, i) => i === 0 || run[0] - runs[i - 1]![1] >= kerf)
  return !wood.partial && isApart(wood.whole.runs) && isApart(wood.whole.bands)
}
