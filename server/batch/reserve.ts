import { isDeepStrictEqual } from 'node:util'
import { readBoard } from '../../shared/contract/board.ts'
import type { Board } from '../../shared/cutting/board.ts'
import { takenOnHand } from '../../shared/cutting/on-hand.ts'
import { boardToCut, measuresOf } from '../../shared/cutting/stock-board.ts'
import type { Plan } from '../../shared/plan.ts'
import { Problem } from '../../shared/problem.ts'
import type { Db } from '../storage/database.ts'
import { boardByKey } from '../storage/read/boards.ts'
import { reservedOfBoard } from '../storage/read/reserved.ts'
import { reserveBoards } from '../storage/write/reserved.ts'

/** Why boards of the rack cannot serve a plan any more, if they cannot. */
async function whyGone(db: Db, planned: Board, wanted: number, { job }: Plan): Promise<string | undefined> {
  const stored = await boardByKey(db, planned.key)
  if (!stored) return 'it is not on the rack any more'
  const board = readBoard(stored.file, 'mm')
  if (!isDeepStrictEqual(measuresOf(boardToCut(board, job.lumber)), measuresOf(planned)))
    return 'it was entered anew with other measures'
  if (board.count === null) return undefined
  const others = await reservedOfBoard(db, planned.key)
  const free = board.count - others.reduce((sum, { count }) => sum + count, 0)
  if (free >= wanted) return undefined
  return `${wanted} of it are needed and ${free} are free; ${others.map(({ name }) => JSON.stringify(name)).join(' and ')} has the rest`
}

/**
 * Reserves the boards on hand that a plan cuts, so that no other batch takes them; within the transaction that starts
 * the batch.
 * @throws Problem `wrong-state` when one of them went to another batch, off the rack or has other measures now
 */
export async function reserveFor(db: Db, job: string, plan: Plan): Promise<string[]> {
  const taken = takenOnHand(plan.cut)
  const planned = new Map(plan.cutOrder.boards.map((board) => [board.key, board]))
  for (const [key, count] of taken) {
    const why = await whyGone(db, planned.get(key)!, count, plan)
    if (why === undefined) continue
    const message = `Board ${key} is no longer free: ${why}. Start the batch again, and it is planned without.`
    throw new Problem('wrong-state', message, [{ path: 'boards', message }])
  }
  await reserveBoards(db, job, taken)
  return [...taken.keys()]
}
