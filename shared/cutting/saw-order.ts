import { nm } from '../units/length.ts'
import type { CutBoard, CutPlan, PlacedBlank } from './board.ts'

/** One setting of a saw and everything that is cut at it before it is moved. Lengths mm. */
export interface SawSetting<B extends CutBoard = CutBoard> {
  saw: 'rip' | 'crosscut'
  /** Fence of the rip saw, or stop of the crosscut saw. */
  setting: number
  what: 'strips' | 'blanks' | 'sections'
  count: number
  /** Width of the strips that are cut to length, where that matters for the sorting. */
  side?: number
  boards: B[]
}

/**
 * The cuts of a plan in saw order: all rips of one width together, all lengths of one stop together, the widest and
 * longest first, of two ways the one with fewer settings. Either sections are crosscut, everything is ripped, and
 * blanks are cut to length; or strips are ripped, sections and blanks of one length are cut at one stop, and the
 * sections are ripped after. Rip saw and crosscut saw keep their settings while the other is used.
 */
export function sawOrder<B extends CutBoard>({
  boards,
}: Pick<CutPlan, 'boards'> & { boards: B[] }): SawSetting<B>[] {
  const { sections, strips, sectionStrips, blanks, trimmed } = cutsOf(boards)
  const together = joined(sections, merged([...blanks, ...trimmed]))
  const ripsTogether = [...together[0], ...merged([...strips, ...sectionStrips]), ...together[1]]
  const [ripped, rippedAfter] = joined(strips, sectionStrips)
  const [toLength, after] = joined(merged([...sections, ...blanks]), trimmed)
  const stopsTogether = [...ripped, ...toLength, ...rippedAfter, ...after]
  return settingsOf(stopsTogether) < settingsOf(ripsTogether) ? stopsTogether : ripsTogether
}

/**
 * How often a fence or stop is set for cuts in this order; the first time counts.
 *
 * @example settingsOf([{ saw: 'rip', setting: 60 }, { saw: 'crosscut', setting: 700 }, { saw: 'rip', setting: 60 }]) // 2
 */
export function settingsOf(order: readonly Pick<SawSetting, 'saw' | 'setting'>[]): number {
  const at = new Map<string, number>()
  let times = 0
  for (const { saw, setting } of order) {
    if (at.get(saw) !== nm(setting)) times++
    at.set(saw, nm(setting))
  }
  return times
}

/** The cuts of each kind, equal ones together. */
function cutsOf<B extends CutBoard>(boards: B[]) {
  const ripped = boards.filter((board) => board.strips)
  const sectioned = boards.filter((board) => board.sections)
  return {
    sections: gathered('crosscut', 'sections', sectioned, (board) =>
      (board.sections ?? []).map(({ from, to }) => ({ setting: to - from })),
    ),
    strips: gathered('rip', 'strips', ripped, (board) =>
      (board.strips ?? []).map(({ side }) => ({ setting: side })),
    ),
    sectionStrips: gathered('rip', 'strips', sectioned, (board) =>
      (board.sections ?? []).flatMap(({ blanks }) => blanks.map((blank) => ({ setting: sideOf(blank) }))),
    ),
    blanks: gathered('crosscut', 'blanks', ripped, (board) =>
      (board.strips ?? []).flatMap(({ side, blanks }) =>
        blanks.map(({ from, to }) => ({ setting: to - from, side })),
      ),
    ),
    trimmed: gathered('crosscut', 'blanks', sectioned, (board) =>
      (board.sections ?? []).flatMap((section) =>
        section.blanks
          .filter(({ from, to }) => nm(to - from) < nm(section.to - section.from))
          .map((blank) => ({ setting: blank.to - blank.from, side: sideOf(blank) })),
      ),
    ),
  }
}

const sideOf = ({ across }: PlacedBlank): number => across[1] - across[0]

type Cut = { setting: number; side?: number }

function gathered<B extends CutBoard>(
  saw: SawSetting['saw'],
  what: SawSetting['what'],
  boards: B[],
  cutsOf: (board: B) => Cut[],
): SawSetting<B>[] {
  return merged(
    boards.flatMap((board) => cutsOf(board).map((cut) => ({ saw, what, ...cut, count: 1, boards: [board] }))),
  )
}

/** Equal settings as one, the largest first. */
function merged<B extends CutBoard>(settings: SawSetting<B>[]): SawSetting<B>[] {
  const byKey = new Map<string, SawSetting<B>>()
  for (const one of settings) {
    const key = `${one.saw} ${one.what} ${nm(one.setting)} ${nm(one.side ?? 0)}`
    const there = byKey.get(key)
    if (!there) byKey.set(key, { ...one, boards: [...one.boards] })
    else {
      there.count += one.count
      // Cuts of one board follow each other.
      for (const board of one.boards) if (there.boards.at(-1) !== board) there.boards.push(board)
    }
  }
  return [...byKey.values()].sort((a, b) => b.setting - a.setting || (b.side ?? 0) - (a.side ?? 0))
}

/** Two runs on one saw, where they share a setting with it last in the one and first in the other. */
function joined<B extends CutBoard>(
  first: SawSetting<B>[],
  then: SawSetting<B>[],
): [SawSetting<B>[], SawSetting<B>[]] {
  const shared = first.find(({ setting }) => then.some((one) => nm(one.setting) === nm(setting)))
  if (!shared) return [first, then]
  const isShared = ({ setting }: SawSetting<B>) => nm(setting) === nm(shared.setting)
  const [others, late] = [first.filter((one) => !isShared(one)), then.filter((one) => !isShared(one))]
  return [
    [...others, ...first.filter(isShared)],
    [...then.filter(isShared), ...late],
  ]
}

/** The boards by name, alike ones with their number: `rack 3, 2 of 8 × 96 in`. */
export function boardsText(boards: readonly Pick<CutBoard, 'key'>[]): string {
  const copies = new Map<string, number>()
  for (const { key } of boards) copies.set(key, (copies.get(key) ?? 0) + 1)
  return [...copies].map(([key, count]) => (count > 1 ? `${count} of ${key}` : key)).join(', ')
}
