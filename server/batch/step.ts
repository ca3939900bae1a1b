import type { z } from 'zod'
import type { JobState } from '../../shared/contract/job.ts'
import type { newStepSchema, spoilSchema } from '../../shared/contract/piece.ts'
import type { Piece, Step } from '../../shared/piece.ts'
import { badInput, Problem } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import { type Db, inTransaction } from '../storage/database.ts'
import { jobById } from '../storage/read/jobs.ts'
import { type LoggedTable, loggedByKey } from '../storage/read/logged.ts'
import { pieceById, pieceList } from '../storage/read/pieces.ts'
import { setJobState } from '../storage/write/jobs.ts'
import { insertStep, markSpoiled } from '../storage/write/pieces.ts'
import { type KeyedRequest, once } from '../storage/write/used-keys.ts'
import { type PieceInHand, pieceOf } from './find.ts'
import { pieceWithProgress } from './pieces.ts'

/** A moment as it is stored: ISO 8601 in UTC, so that moments sort as text. */
export const inUtc = (at: string): string => new Date(at).toISOString()

/**
 * Moves the job to done when as many good pieces are finished as were ordered, or back when one is spoiled or a
 * step is taken back; answers whether it moved.
 */
export async function settleState(
  db: Db,
  { job, frozen }: Pick<PieceInHand, 'job' | 'frozen'>,
  at: string,
): Promise<boolean> {
  const pieces = (await pieceList(db, job.id)).map((piece) => pieceWithProgress(piece, frozen.plan))
  const finished = pieces.filter((piece) => !piece.spoiled && piece.progress === 1)
  const state: JobState = finished.length >= frozen.plan.job.quantity ? 'done' : 'started'
  const isOther = state !== (await jobById(db, job.id))?.state
  if (isOther) await setJobState(db, job.id, state, at)
  return isOther
}

/**
 * An entry that was taken back is not logged again under its key.
 * @throws Problem `wrong-state`
 */
export async function refuseTakenBack(db: Db, table: LoggedTable, key: string): Promise<void> {
  const entry = await loggedByKey(db, table, key)
  if (entry?.takenBackAt === undefined) return
  const message = `was taken back at ${entry.takenBackAt}; log it anew under a new key. Read ${JSON.stringify(key)}`
  throw new Problem('wrong-state', `The entry ${message}`, [{ path: 'key', message }])
}

/**
 * Stores an entry of the floor once for its key; one that was taken back is refused.
 * @throws Problem `wrong-state`, or when the key was used otherwise
 */
export const loggedOnce = <T>(
  { db }: Pick<Context, 'db'>,
  table: LoggedTable,
  request: KeyedRequest,
  now: string,
  store: (tx: Db) => Promise<T>,
): Promise<T> =>
  inTransaction(db, async (tx) => {
    await refuseTakenBack(tx, table, request.key)
    return once(tx, request, now, store)
  })

function checkOperation({ plan }: PieceInHand['frozen'], operation: string): void {
  const allowed = plan.operations.map((known) => known.key)
  if (allowed.includes(operation)) return
  const message = `is no operation of this plan; allowed: ${allowed.join(', ')}; read ${JSON.stringify(operation)}`
  throw badInput([{ path: 'operation', message }])
}

/** @throws Problem `wrong-state` */
async function refuseSpoiled(db: Db, id: string): Promise<void> {
  const piece = await pieceById(db, id)
  if (piece?.spoiled)
    throw new Problem(
      'wrong-state',
      `Piece ${piece.number} is spoiled (${piece.spoiled.reason}): no work is logged on it.`,
    )
}

/**
 * Logs an operation as done on a piece, once for its key.
 * @throws Problem when there is no such piece or operation, the piece is spoiled, the step was taken back, or the
 * key was used otherwise
 */
export async function logStep(
  context: Context,
  id: string,
  entry: z.output<typeof newStepSchema>,
): Promise<Step> {
  const hand = await pieceOf(context, id)
  checkOperation(hand.frozen, entry.operation)
  const now = context.now()
  const step: Step = { ...entry, piece: id, at: inUtc(entry.at ?? now) }
  const request = { noun: 'step' as const, key: entry.key, body: { piece: id, ...entry } }
  let isSettledAnew = false
  const answer = await loggedOnce(context, 'steps', request, now, async (tx) => {
    await refuseSpoiled(tx, id)
    await insertStep(tx, hand.job.id, step, now)
    isSettledAnew = await settleState(tx, hand, now)
    return step
  })
  context.changes.tell('piece', id)
  if (isSettledAnew) context.changes.tell('job', hand.job.id)
  return answer
}

/**
 * Marks a piece as spoiled, once for its key.
 * @throws Problem when there is no such piece, it is spoiled already, or the key was used otherwise
 */
export async function spoilPiece(
  context: Context,
  id: string,
  entry: z.output<typeof spoilSchema>,
): Promise<Piece> {
  const hand = await pieceOf(context, id)
  const now = context.now()
  const request = { noun: 'spoil' as const, key: entry.key, body: { piece: id, ...entry } }
  let isSettledAnew = false
  const answer = await once(context.db, request, now, async (tx) => {
    const before = await pieceById(tx, id)
    if (before?.spoiled)
      throw new Problem('wrong-state', `Piece ${before.number} is spoiled already: ${before.spoiled.reason}`)
    await markSpoiled(tx, id, entry.reason, inUtc(entry.at ?? now))
    isSettledAnew = await settleState(tx, hand, now)
    return pieceWithProgress((await pieceById(tx, id))!, hand.frozen.plan)
  })
  context.changes.tell('piece', id)
  if (isSettledAnew) context.changes.tell('job', hand.job.id)
  return answer
}
