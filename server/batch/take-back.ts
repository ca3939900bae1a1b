import { Problem } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import { type Db, inTransaction } from '../storage/database.ts'
import { type FloorTable, type Logged, type LoggedTable, loggedByKey } from '../storage/read/logged.ts'
import { markTakenBack } from '../storage/write/taken-back.ts'
import { jobOf, pieceOf } from './find.ts'
import { settleState } from './step.ts'

const words: Record<LoggedTable, string> = {
  steps: 'step',
  readings: 'reading',
  touch_ups: 'touch-up',
  weighings: 'weighing',
}

/** @throws Problem `not-found` when there is no such entry where it is looked for */
async function entryOf(
  db: Db,
  table: LoggedTable,
  key: string,
  belongs: (entry: Logged) => boolean,
): Promise<Logged> {
  const entry = await loggedByKey(db, table, key)
  if (entry && belongs(entry)) return entry
  const message = `There is no ${words[table]} ${JSON.stringify(key)} here.`
  throw new Problem('not-found', message, [{ path: 'key', message }])
}

/**
 * Takes back a step logged on a piece: it counts no more, and is kept with the time. One that was taken back
 * before stays so.
 * @throws Problem `not-found` when there is no such piece, or no such step on it
 */
export async function takeBackStep(context: Context, id: string, key: string): Promise<void> {
  const hand = await pieceOf(context, id)
  const isSettledAnew = await inTransaction(context.db, async (tx) => {
    const entry = await entryOf(tx, 'steps', key, ({ piece }) => piece === hand.piece.id)
    if (entry.takenBackAt !== undefined) return false
    const now = context.now()
    await markTakenBack(tx, 'steps', key, now)
    return settleState(tx, hand, now)
  })
  context.changes.tell('piece', hand.piece.id)
  if (isSettledAnew) context.changes.tell('job', hand.job.id)
}

/** Takes back an entry of a job, wherever in it; answers what it was. */
async function takeBackInJob({ db, now }: Context, table: LoggedTable, job: string, key: string) {
  return inTransaction(db, async (tx) => {
    const entry = await entryOf(tx, table, key, (found) => found.job === job)
    if (entry.takenBackAt === undefined) await markTakenBack(tx, table, key, now())
    return entry
  })
}

/**
 * Takes back a reading of a job's pieces: it counts no more, and is kept with the time. One that was taken back
 * before stays so.
 * @throws Problem `not-found` when there is no such job, or no such reading of it
 */
export async function takeBackReading(context: Context, id: string, key: string): Promise<void> {
  const job = await jobOf(context, id)
  const { piece = job.id } = await takeBackInJob(context, 'readings', job.id, key)
  context.changes.tell('check', piece)
}

/**
 * Takes back a touch-up or a weighing of a batch: it counts no more, and is kept with the time. One that was taken
 * back before stays so.
 * @throws Problem `not-found` when there is no such job, or no such entry of it
 */
export async function takeBackOfBatch(
  context: Context,
  table: FloorTable,
  id: string,
  key: string,
): Promise<void> {
  const job = await jobOf(context, id)
  await takeBackInJob(context, table, job.id, key)
  context.changes.tell('floor', job.id)
}
