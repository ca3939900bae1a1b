import { nm } from '../units/length.ts'
import type { Board, CutOrder, CutPlan } from './board.ts'
import { blanksMissing, blanksWanted } from './cut-blanks.ts'

/** What a plan makes of the boards pulled from a stack. */
export interface BoardPick {
  /** Blanks wanted altogether, and how many of them these boards do not yield. */
  wanted: number
  missing: number
  /** Keys of the boards that something is cut from. */
  used: Set<string>
}

/** Whether the boards pulled are enough, and which of them the plan uses. */
export function pickOf(order: CutOrder, plan: CutPlan): BoardPick {
  return {
    wanted: blanksWanted(order),
    missing: blanksMissing(plan),
    used: new Set(plan.boards.map(({ key }) => key)),
  }
}

/** One lift off the pile: back to the yard’s stack, or aside to the boards that are kept. */
export interface Lift {
  key: string
  to: 'back' | 'aside'
}

/** How boards go back with every board lifted once at most. */
export interface PutBack {
  /** From the top of the pile down. */
  lifts: Lift[]
  /** Keys of the kept boards below, from the bottom up, that nobody needs to touch. */
  stay: string[]
}

/**
 * How to take the boards that are not kept out of the pile. The last pulled lies on top: it is lifted first, down
 * to the lowest board that goes back and no farther. What goes back reaches the yard’s stack in the reverse of the
 * order it was pulled in, so that the stack lies as it lay; kept boards on the way are laid aside once and stay there.
 * @param pulled the pile from the bottom up
 *
 * @example putBack([{ key: '1' }, { key: '2' }, { key: '3' }], new Set(['1', '3'])) // { lifts: [{ key: '3', to: 'aside' }, { key: '2', to: 'back' }], stay: ['1'] }
 * @example putBack([{ key: '1' }], new Set(['1'])) // { lifts: [], stay: ['1'] }
 */
export function putBack(pulled: readonly { key: string }[], kept: ReadonlySet<string>): PutBack {
  const lowest = pulled.findIndex(({ key }) => !kept.has(key))
  if (lowest < 0) return { lifts: [], stay: pulled.map(({ key }) => key) }
  return {
    lifts: pulled
      .slice(lowest)
      .reverse()
      .map(({ key }) => ({ key, to: kept.has(key) ? 'aside' : 'back' })),
    stay: pulled.slice(0, lowest).map(({ key }) => key),
  }
}

/** Why nothing wanted can come from a board, whatever else is pulled. */
export type Useless = 'thin' | 'narrow' | 'short'

/** A board against all blanks wanted: what it falls short in for every one of them, and by the least of them. */
export interface Shortfall {
  why: Useless
  /** The least thickness, width or length that would do, trim included; mm. */
  least: number
}

type Sizes = Pick<Board, 'thickness' | 'width' | 'length'>

/**
 * What keeps every blank wanted from this board by its outside sizes alone, thickness before width before length;
 * nothing where some blank fits, or none is wanted. Defects are not looked at.
 */
export function shortfallOf(board: Sizes, order: Omit<CutOrder, 'boards'>): Shortfall | undefined {
  const needs = order.blanks.map(({ side, length, thickness }) => ({
    thin: thickness ?? side,
    narrow: side + 2 * order.edgeTrim,
    short: length + 2 * order.endTrim,
  }))
  const measures = { thin: board.thickness, narrow: board.width, short: board.length }
  let able = needs
  for (const why of ['thin', 'narrow', 'short'] as const) {
    if (able.length === 0) return undefined
    const next = able.filter((need) => nm(need[why]) <= nm(measures[why]))
    if (next.length === 0) return { why, least: Math.min(...able.map((need) => need[why])) }
    able = next
  }
  return undefined
}
