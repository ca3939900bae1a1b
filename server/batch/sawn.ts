import { isDeepStrictEqual } from 'node:util'
import { type RackBoard, readBoard } from '../../shared/contract/board.ts'
import type { JobWood, SawnAnswer } from '../../shared/contract/sawn.ts'
import { offcutBoards } from '../../shared/cutting/offcut-boards.ts'
import { sawnAt } from '../../shared/plan.ts'
import { Problem } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import { type Db, inTransaction } from '../storage/database.ts'
import { type BoardEntry, boardByKey, boardList, type StoredBoard } from '../storage/read/boards.ts'
import type { FrozenPlan } from '../storage/read/plans.ts'
import { reservedOfBoard, reservedOfJob } from '../storage/read/reserved.ts'
import { offcutKeys, type SawnBatch, sawnBatch } from '../storage/read/sawn.ts'
import { deleteBoard, insertBoard, updateBoard } from '../storage/write/boards.ts'
import { freeBoardsOf, reserveBoards } from '../storage/write/reserved.ts'
import { deleteSawn, insertSawn } from '../storage/write/sawn.ts'
import { answerBefore, forgetKey, once } from '../storage/write/used-keys.ts'
import { jobOf, startedPlan } from './find.ts'

/** What is pencilled on an offcut: a number of its own. */
const offcutKey = (number: number): string => `O-${number}`

const numberOf = (key: string): number => Number(/^O-(\d{1,9})$/.exec(key)?.[1] ?? 0)

/** Takes boards of a key off the rack, as many as were reserved. */
async function takeOff(db: Db, board: StoredBoard, sawn: number, at: string): Promise<void> {
  const { count } = readBoard(board.file, 'mm')
  if (count === null) return
  if (count > sawn)
    return updateBoard(db, { key: board.key, file: { ...board.file, count: count - sawn } }, at)
  await deleteBoard(db, board.key)
  await forgetKey(db, 'board', board.key)
}

/** The offcuts of a plan as they are put onto the rack, with numbers that no board has or ever had. */
async function offcutEntries(db: Db, { plan }: FrozenPlan, rack: RackBoard[]): Promise<BoardEntry[]> {
  const { job, cut, cutOrder: order } = plan
  const boards = offcutBoards({ order, cut, rack, job: { ...job, moisture: sawnAt(plan) } })
  const taken = [...(await boardList(db)).map(({ key }) => key), ...(await offcutKeys(db))]
  const next = taken.reduce((most, key) => Math.max(most, numberOf(key)), 0) + 1
  return boards.map((board, i) => ({
    key: offcutKey(next + i),
    file: { units: job.units, key: offcutKey(next + i), ...board },
  }))
}

async function saw(db: Db, key: string, frozen: FrozenPlan, at: string): Promise<SawnBatch> {
  const job = frozen.job
  const boards: SawnBatch['boards'] = []
  for (const { board, count } of await reservedOfJob(db, job))
    boards.push({ ...(await boardByKey(db, board))!, sawn: count })
  await freeBoardsOf(db, job)
  const rack = boards.map(({ file }) => readBoard(file, 'mm'))
  for (const board of boards) await takeOff(db, board, board.sawn, at)
  const offcuts = await offcutEntries(db, frozen, rack)
  for (const offcut of offcuts) await insertBoard(db, offcut, at)
  const batch = { job, key, at, boards, offcuts }
  await insertSawn(db, batch)
  return batch
}

const answerOf = ({ at, boards, offcuts }: SawnBatch): SawnAnswer => ({
  at,
  boards: boards.map(({ key, sawn }) => ({ key, count: sawn })),
  offcuts: offcuts.map(({ file }) => readBoard(file, 'mm')),
})

/** The boards that a job has reserved, and what was sawn for it. */
export async function woodOfJob({ db }: Pick<Context, 'db'>, id: string): Promise<JobWood> {
  const reserved = (await reservedOfJob(db, id)).map(({ board, count }) => ({ key: board, count }))
  const batch = await sawnBatch(db, id)
  return { reserved, ...(batch && { sawn: answerOf(batch) }) }
}

/**
 * Says that the blanks of a started batch are sawn, once for its key: its boards leave the rack, and offcuts long
 * enough to keep come onto it with what is known of their wood.
 * @throws Problem `wrong-state` when the batch is not started, is sawn already, or that was taken back under this key
 */
export async function sawBatch(context: Context, id: string, key: string): Promise<SawnAnswer> {
  const frozen = await startedPlan(context, await jobOf(context, id))
  const at = context.now()
  const request = { noun: 'sawn' as const, key, body: { job: id } }
  const answer = await inTransaction(context.db, async (db) => {
    const before = await answerBefore(db, request)
    const sawn = await sawnBatch(db, id)
    if (before !== undefined && sawn?.key !== key)
      throw new Problem('wrong-state', 'That was taken back: say it anew under a new key.')
    return once(db, request, at, async (tx) => {
      if (sawn) throw new Problem('wrong-state', 'The blanks of this batch are sawn already.')
      return answerOf(await saw(tx, key, frozen, at))
    })
  })
  tellAll(context, id, answer)
  return answer
}

function tellAll({ changes }: Context, id: string, { boards, offcuts }: SawnAnswer): void {
  changes.tell('job', id)
  for (const { key } of [...boards, ...offcuts]) changes.tell('board', key)
}

/** @throws Problem `wrong-state` when an offcut is in use, or is not what it was when it came onto the rack */
async function takeOffcutOff(db: Db, { key, file }: BoardEntry): Promise<void> {
  const now = await boardByKey(db, key)
  const held = await reservedOfBoard(db, key)
  if (now && held.length === 0 && isDeepStrictEqual(now.file, file)) return deleteBoard(db, key)
  const why = !now
    ? 'is not on the rack any more'
    : held[0]
      ? `is reserved by ${JSON.stringify(held[0].name)}`
      : 'was changed'
  throw new Problem('wrong-state', `This cannot be taken back: offcut ${key} ${why}.`)
}

/** @throws Problem `wrong-state` when another board has the name of the sawn one by now */
async function putBack(db: Db, { sawn, createdAt, ...board }: SawnBatch['boards'][number], at: string) {
  const now = await boardByKey(db, board.key)
  if (!now) return insertBoard(db, board, createdAt)
  const { count: _then, ...was } = board.file
  const { count: left, ...is } = now.file
  if (!isDeepStrictEqual(was, is))
    throw new Problem('wrong-state', `This cannot be taken back: board ${board.key} was changed since.`)
  if (left === null) return
  await updateBoard(db, { key: board.key, file: { ...now.file, count: Number(left ?? 1) + sawn } }, at)
}

/**
 * Takes back that a batch is sawn: its boards are on the rack again and reserved, its offcuts are not.
 * @throws Problem `not-found` when it is not sawn, `wrong-state` when an offcut or a board is not what it was
 */
export async function takeBackSawn(context: Context, id: string): Promise<void> {
  await jobOf(context, id)
  const batch = await inTransaction(context.db, async (db) => {
    const sawn = await sawnBatch(db, id)
    if (!sawn) throw new Problem('not-found', 'The blanks of this batch are not sawn.')
    for (const offcut of sawn.offcuts) await takeOffcutOff(db, offcut)
    for (const board of sawn.boards) await putBack(db, board, context.now())
    await reserveBoards(db, id, new Map(sawn.boards.map(({ key, sawn: count }) => [key, count])))
    await deleteSawn(db, id)
    return sawn
  })
  tellAll(context, id, answerOf(batch))
}
