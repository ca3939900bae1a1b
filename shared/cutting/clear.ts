import { nm } from '../units/length.ts'
import type { Board, CutOrder } from './board.ts'

/** A stretch along or across a board, nanometres. */
export type Run = readonly [from: number, to: number]

/** A rectangle on a board, nanometres. */
export interface Patch {
  along: Run
  across: Run
}

/** A board as a grid: blanks may lie where a clear run along it crosses a clear band across it. Nanometres. */
export interface Grid {
  runs: Run[]
  bands: Run[]
}

/** The wood of one board inside its trim, and the defects on it. Nanometres. */
export interface ClearWood {
  usable: Patch
  defects: Patch[]
  /** Every way to clear the board by whole cuts along or across; the first takes all defects across. */
  grids: Grid[]
  /** The grid when only defects as wide or as long as the board are heeded. */
  whole: Grid
  /** Some defect is neither as wide nor as long as the board. */
  partial: boolean
}

/** More partial defects than this are cleared all one way or all the other. */
const TRIED_SINGLY = 3

const clip = ([from, to]: Run, [least, most]: Run): Run => [Math.max(from, least), Math.min(to, most)]
const isReal = ([from, to]: Run): boolean => to > from

/** What is left of a run when others are taken out of it, in order. */
export function without(whole: Run, taken: readonly Run[]): Run[] {
  const left: Run[] = []
  let from = whole[0]
  for (const [a, b] of [...taken].sort((x, y) => x[0] - y[0])) {
    if (a > from) left.push([from, Math.min(a, whole[1])])
    from = Math.max(from, b)
  }
  left.push([from, whole[1]])
  return left.filter(isReal)
}

/** Whether the insides of two runs have anything in common. */
export const overlap = (a: Run, b: Run): boolean => Math.max(a[0], b[0]) < Math.min(a[1], b[1])

/** The clear wood of a board: defects cut to the trimmed board, sorted, those outside it dropped. */
export function clearWood(board: Board, order: Pick<CutOrder, 'endTrim' | 'edgeTrim'>): ClearWood {
  const { endTrim, edgeTrim } = board.trimmed ? { endTrim: 0, edgeTrim: 0 } : order
  const usable: Patch = {
    along: [nm(endTrim), nm(board.length) - nm(endTrim)],
    across: [nm(edgeTrim), nm(board.width) - nm(edgeTrim)],
  }
  const defects = (board.defects ?? [])
    .map((defect): Patch => {
      const [low, high] = defect.across ?? [0, board.width]
      return {
        along: clip([nm(defect.from), nm(defect.to)], usable.along),
        across: clip([nm(low), nm(high)], usable.across),
      }
    })
    .filter((patch) => isReal(patch.along) && isReal(patch.across))
    .sort((a, b) => a.along[0] - b.along[0] || a.along[1] - b.along[1] || a.across[0] - b.across[0])
  return { usable, defects, ...gridsOf(usable, defects) }
}

const covers = (run: Run, whole: Run): boolean => run[0] <= whole[0] && run[1] >= whole[1]

function gridsOf(usable: Patch, defects: Patch[]): Pick<ClearWood, 'grids' | 'whole' | 'partial'> {
  const acrossBoard = defects.filter((d) => covers(d.across, usable.across))
  const alongBoard = defects.filter((d) => !covers(d.across, usable.across) && covers(d.along, usable.along))
  const rest = defects.filter((d) => !covers(d.across, usable.across) && !covers(d.along, usable.along))
  const choices: boolean[][] =
    rest.length <= TRIED_SINGLY
      ? Array.from({ length: 2 ** rest.length }, (_, bits) => rest.map((_, i) => (bits & (1 << i)) !== 0))
      : [rest.map(() => false), rest.map(() => true)]
  const gridOf = (crosscut: Patch[], ripped: Patch[]): Grid => ({
    runs: without(
      usable.along,
      [...acrossBoard, ...crosscut].map((d) => d.along),
    ),
    bands: without(
      usable.across,
      [...alongBoard, ...ripped].map((d) => d.across),
    ),
  })
  const grids = choices.map((ripped) =>
    gridOf(
      rest.filter((_, i) => !ripped[i]),
      rest.filter((_, i) => ripped[i]),
    ),
  )
  return { grids, whole: gridOf([], []), partial: rest.length > 0 }
}
