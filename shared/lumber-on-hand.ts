import type { CutPlan } from './cutting/board.ts'
import { blanksOn, blanksWanted } from './cutting/cut-blanks.ts'
import { takenOnHand } from './cutting/on-hand.ts'
import type { StockBoard } from './cutting/stock-board.ts'
import { partOfKey } from './cutting/together.ts'
import type { Plan } from './plan.ts'

/** What boards on hand yield for one of several jobs, and what is left to buy of it. */
export interface OnHandShare {
  job: { id: string; name: string }
  /** Boards by their key, and how many blanks of the job come from them; layers of a glue-up are counted singly. */
  boards: { key: string; blanks: number }[]
  wanted: number
  toBuy: number
  /** Layers glued to one blank; 1 where it is sawn in one piece. */
  layers: number
}

/** A job as it is planned by itself. */
export interface PlannedAlone {
  id: string
  plan: Pick<Plan, 'job' | 'cut'>
}

/** A board on hand that jobs, each planned by itself, count on more often than it is there. */
export interface CountedTwice {
  board: string
  /** How many of it are free. */
  free: number
  jobs: { id: string; name: string; boards: number }[]
}

/** What boards on hand yield for a job, by the plan for several jobs where there is one, else by its own. */
export function onHandShare(
  { id, plan }: { id: string; plan: Pick<Plan, 'job' | 'cut' | 'cutOrder' | 'blank'> },
  pooled: CutPlan | undefined,
): OnHandShare {
  const counts = new Map<string, number>()
  for (const board of (pooled ?? plan.cut).boards) {
    if (!board.onHand) continue
    const own = blanksOn(board).filter(({ key }) => !pooled || partOfKey(key).part === id).length
    if (own > 0) counts.set(board.key, (counts.get(board.key) ?? 0) + own)
  }
  const boards = [...counts].map(([key, blanks]) => ({ key, blanks }))
  const wanted = blanksWanted(plan.cutOrder)
  const toBuy = wanted - boards.reduce((sum, { blanks }) => sum + blanks, 0)
  return { job: { id, name: plan.job.name }, boards, wanted, toBuy, layers: plan.blank.layers }
}

/** Boards on hand that these jobs, each planned by itself, cannot all have. Boards without end are never among them. */
export function countedTwice(jobs: readonly PlannedAlone[], onHand: readonly StockBoard[]): CountedTwice[] {
  const taken = jobs.map(({ id, plan }) => ({ id, name: plan.job.name, boards: takenOnHand(plan.cut) }))
  return onHand.flatMap(({ key, count }) => {
    const takers = taken.flatMap(({ id, name, boards }) => {
      const own = boards.get(key)
      return own === undefined ? [] : [{ id, name, boards: own }]
    })
    const wanted = takers.reduce((sum, { boards }) => sum + boards, 0)
    return count === null || wanted <= count ? [] : [{ board: key, free: count, jobs: takers }]
  })
}

/**
 * What is said of a job in a list where others count on the same boards; nothing where none does.
 *
 * @example twiceWords('a', [{ board: 'ash 1', free: 1, jobs: [{ id: 'a', name: 'Legs', boards: 1 }, { id: 'b', name: 'Posts', boards: 1 }] }]) // 'Counts on board ash 1, as Posts does: only 1 is free.'
 */
export function twiceWords(id: string, twice: readonly CountedTwice[]): string {
  return twice
    .filter(({ jobs }) => jobs.some((job) => job.id === id))
    .map(({ board, free, jobs }) => {
      const others = jobs.filter((job) => job.id !== id).map(({ name }) => name)
      const as = `as ${others.join(', ')} ${others.length === 1 ? 'does' : 'do'}`
      return `Counts on board ${board}, ${as}: only ${free} ${free === 1 ? 'is' : 'are'} free.`
    })
    .join(' ')
}

/**
 * Which boards on hand yield what of a job, and what is left to buy.
 *
 * @example shareWords({ job: { id: 'a', name: 'Legs' }, boards: [{ key: 'ash 1', blanks: 3 }], wanted: 4, toBuy: 1, layers: 1 }) // '3 of 4 blanks from board ash 1; 1 left to buy.'
 */
export function shareWords({ boards, wanted, toBuy, layers }: OnHandShare): string {
  const noun = `${layers > 1 ? 'layer' : 'blank'}${wanted === 1 ? '' : 's'}`
  if (boards.length === 0) return `No board on hand; ${wanted} ${noun} to buy.`
  const from = boards.map(({ key, blanks }, i) =>
    i === 0 ? `${blanks} of ${wanted} ${noun} from board ${key}` : `${blanks} from ${key}`,
  )
  return `${from.join(', ')}; ${toBuy === 0 ? 'nothing' : toBuy} left to buy.`
}
