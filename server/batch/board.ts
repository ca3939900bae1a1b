import { z } from 'zod'
import { type RackBoard, readBoard } from '../../shared/contract/board.ts'
import { readInput } from '../../shared/input.ts'
import { Problem } from '../../shared/problem.ts'
import { type Context, shopOf } from '../context.ts'
import { inTransaction } from '../storage/database.ts'
import { boardByKey, boardList } from '../storage/read/boards.ts'
import { deleteBoard, insertBoard, updateBoard } from '../storage/write/boards.ts'
import { forgetKey, once } from '../storage/write/used-keys.ts'

/** The boards on the rack, lengths in mm. */
export async function boardsOnRack(context: Context): Promise<RackBoard[]> {
  return (await boardList(context.db)).map(({ file }) => readBoard(file, 'mm'))
}

/** The board as entered, with the units its text lengths are in written down. */
async function entered(context: Context, body: unknown) {
  const { units } = await shopOf(context)
  const file = { units, ...readInput(z.looseObject({}), body) }
  return { file, board: readBoard(file, units) }
}

/** Puts a board on the rack, once for its key. */
export async function addBoard(context: Context, body: unknown): Promise<RackBoard> {
  const { file, board } = await entered(context, body)
  const at = context.now()
  const answer = await once(context.db, { noun: 'board', key: board.key, body: file }, at, async (tx) => {
    if (await boardByKey(tx, board.key))
      throw new Problem('key-reused', `There is a board ${board.key} already.`)
    await insertBoard(tx, { key: board.key, file }, at)
    return board
  })
  context.changes.tell('board', board.key)
  return answer
}

const noBoard = (key: string): Problem => {
  const message = `There is no board ${JSON.stringify(key)}.`
  return new Problem('not-found', message, [{ path: 'key', message }])
}

/** Changes a board; its key stays. */
export async function changeBoard(context: Context, key: string, body: unknown): Promise<RackBoard> {
  const { file, board } = await entered(context, { ...readInput(z.looseObject({}), body), key })
  await inTransaction(context.db, async (tx) => {
    if (!(await boardByKey(tx, key))) throw noBoard(key)
    await updateBoard(tx, { key, file }, context.now())
  })
  context.changes.tell('board', key)
  return board
}

/** Takes a board off the rack; its key is free again. */
export async function dropBoard(context: Context, key: string): Promise<void> {
  await inTransaction(context.db, async (tx) => {
    if (!(await boardByKey(tx, key))) throw noBoard(key)
    await deleteBoard(tx, key)
    await forgetKey(tx, 'board', key)
  })
  context.changes.tell('board', key)
}
