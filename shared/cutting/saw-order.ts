import { nm } from '../units/length.ts'
import type { CutBoard, CutPlan, PlacedBlank } from './board.ts'

/** One setting of a saw and everything that is cut at it before it is moved. Lengths mm. */
export interface SawSetting {
  saw: 'rip' | 'crosscut'
  /** Fence of the rip saw or stop of the crosscut saw; `longest` where sections are cut to it. */
  setting: number
  what: 'strips' | 'blanks' | 'sections'
  count: number
  /** Width of the strips that are cut to length, where that matters for the sorting. */
  side?: number
  boards: CutBoard[]
}

/** The boards by name, alike ones with their number: `rack 3, 2 of 8 × 96 in`. */
export function boardsText(boards: CutBoard[]): string {
  const copies = new Map<string, number>()
  for (const { key } of boards) copies.set(key, (copies.get(key) ?? 0) + 1)
  return [...copies].map(([key, count]) => (count > 1 ? `${count} of ${key}` : key)).join(', ')
}

/**
 * The cuts of a plan in saw order: all rips of one width together, then all lengths of one stop together,
 * widest and longest first. Boards cut crosscut first have their sections before their strips.
 * Common practice, no source.
 */
export function sawOrder(plan: CutPlan): SawSetting[] {
  const ripped = plan.boards.filter((board) => board.strips)
  const sectioned = plan.boards.filter((board) => board.sections)
  const sections = gathered('crosscut', 'sections', sectioned, (board) =>
    (board.sections ?? []).map(({ from, to }) => ({ setting: to - from })),
  )
  const strips = gathered('rip', 'strips', plan.boards, (board) => [
    ...(board.strips ?? []).map(({ side }) => ({ setting: side })),
    ...(board.sections ?? []).flatMap(({ blanks }) => blanks.map((blank) => ({ setting: sideOf(blank) }))),
  ])
  const blanks = gathered('crosscut', 'blanks', ripped, (board) =>
    (board.strips ?? []).flatMap(({ side, blanks }) =>
      blanks.map(({ from, to }) => ({ setting: to - from, side })),
    ),
  )
  const trimmed = gathered('crosscut', 'blanks', sectioned, (board) =>
    (board.sections ?? []).flatMap((section) =>
      section.blanks
        .filter(({ from, to }) => nm(to - from) < nm(section.to - section.from))
        .map((blank) => ({ setting: blank.to - blank.from, side: sideOf(blank) })),
    ),
  )
  return [...sections, ...strips, ...merged([...blanks, ...trimmed])]
}

const sideOf = ({ across }: PlacedBlank): number => across[1] - across[0]

type Cut = { setting: number; side?: number }

function gathered(
  saw: SawSetting['saw'],
  what: SawSetting['what'],
  boards: CutBoard[],
  cutsOf: (board: CutBoard) => Cut[],
): SawSetting[] {
  return merged(
    boards.flatMap((board) => cutsOf(board).map((cut) => ({ saw, what, ...cut, count: 1, boards: [board] }))),
  )
}

/** Equal settings as one, the largest first. */
function merged(settings: SawSetting[]): SawSetting[] {
  const byKey = new Map<string, SawSetting>()
  for (const one of settings) {
    const key = `${one.saw} ${one.what} ${nm(one.setting)} ${nm(one.side ?? 0)}`
    const there = byKey.get(key)
    if (!there) byKey.set(key, { ...one, boards: [...one.boards] })
    else {
      there.count += one.count
      for (const board of one.boards) if (!there.boards.includes(board)) there.boards.push(board)
    }
  }
  return [...byKey.values()].sort((a, b) => b.setting - a.setting || (b.side ?? 0) - (a.side ?? 0))
}
