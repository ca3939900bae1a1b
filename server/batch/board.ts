import { isDeepStrictEqual } from 'node:util'
import { z } from 'zod'
import { type HeldBoard, type RackBoard, readBoard } from '../../shared/contract/board.ts'
import { freeBoards } from '../../shared/cutting/on-hand.ts'
import { measuresOf, type StockBoard } from '../../shared/cutting/stock-board.ts'
import { readInput } from '../../shared/input.ts'
import { Problem } from '../../shared/problem.ts'
import { type Context, shopOf } from '../context.ts'
import { type Db, inTransaction } from '../storage/database.ts'
import { boardByKey, boardList } from '../storage/read/boards.ts'
import { type Reserved, reservedList, reservedOfBoard } from '../storage/read/reserved.ts'
import { deleteBoard, insertBoard, updateBoard } from '../storage/write/boards.ts'
import { forgetKey, once } from '../storage/write/used-keys.ts'

/** The boards on the rack with the started batches that have them reserved, lengths in mm. */
export async function boardsOnRack({ db }: Pick<Context, 'db'>): Promise<HeldBoard[]> {
  const held = new Map<string, Omit<Reserved, 'board'>[]>()
  for (const { board, ...by } of await reservedList(db)) held.set(board, [...(held.get(board) ?? []), by])
  return (await boardList(db)).map(({ key, file }) => {
    const reserved = held.get(key)
    return { ...readBoard(file, 'mm'), ...(reserved && { reserved }) }
  })
}

/** The boards that no started batch has reserved, lengths in mm. */
export const freeOnRack = async (context: Pick<Context, 'db'>): Promise<StockBoard[]> =>
  freeBoards(await boardsOnRack(context))

/** The board as entered, with the units its text lengths are in written down. */
async function entered(context: Context, body: unknown) {
  const { units } = await shopOf(context)
  const { reserved: _told, ...sent } = readInput(z.looseObject({}), body)
  const file = { units, ...sent }
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

/** Fields of a board whose measures are others now. */
function fieldsChanged(before: RackBoard, after: RackBoard): string[] {
  const [was, is] = [measuresOf(before), measuresOf(after)]
  return (Object.keys(was) as (keyof typeof was)[]).filter((name) => !isDeepStrictEqual(was[name], is[name]))
}

/** @throws Problem `wrong-state` when a started batch is cut from the board as it was */
async function refuseReserved(db: Db, key: string, before: RackBoard, after?: RackBoard): Promise<void> {
  const held = await reservedOfBoard(db, key)
  if (held.length === 0) return
  const count = held.reduce((sum, by) => sum + by.count, 0)
  const fields = after ? fieldsChanged(before, after) : []
  if (after && after.count !== null && after.count < count) fields.push('count')
  if (after && fields.length === 0) return
  const names = held.map(({ name }) => JSON.stringify(name)).join(' and ')
  const message = `${count} of board ${key} ${count === 1 ? 'is' : 'are'} reserved by ${names}: say first that it is sawn, or delete the job.`
  const errors = fields.map((path) => ({
    path,
    message: `cannot be changed while a started batch has the board`,
  }))
  throw new Problem('wrong-state', message, after ? errors : [{ path: 'key', message }])
}

/**
 * Changes a board; its key stays.
 * @throws Problem `wrong-state` when a started batch is cut from it and its measures would be others
 */
export async function changeBoard(context: Context, key: string, body: unknown): Promise<RackBoard> {
  const { file, board } = await entered(context, { ...readInput(z.looseObject({}), body), key })
  await inTransaction(context.db, async (tx) => {
    const before = await boardByKey(tx, key)
    if (!before) throw noBoard(key)
    await refuseReserved(tx, key, readBoard(before.file, 'mm'), board)
    await updateBoard(tx, { key, file }, context.now())
  })
  context.changes.tell('board', key)
  return board
}

/**
 * Takes a board off the rack; its key is free again.
 * @throws Problem `wrong-state` when a started batch is cut from it
 */
export async function dropBoard(context: Context, key: string): Promise<void> {
  await inTransaction(context.db, async (tx) => {
    const before = await boardByKey(tx, key)
    if (!before) throw noBoard(key)
    await refuseReserved(tx, key, readBoard(before.file, 'mm'))
    await deleteBoard(tx, key)
    await forgetKey(tx, 'board', key)
  })
  context.changes.tell('board', key)
}
