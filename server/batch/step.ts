import type { z } from 'zod'
import type { JobState } from '../../shared/contract/job.ts'
import type { newStepSchema, spoilSchema } from '../../shared/contract/piece.ts'
import type { Piece, Step } from '../../shared/piece.ts'
import { badInput, Problem } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import type { Db } from '../storage/database.ts'
import { pieceById, pieceList } from '../storage/read/pieces.ts'
import { setJobState } from '../storage/write/jobs.ts'
import { insertStep, markSpoiled } from '../storage/write/pieces.ts'
import { once } from '../storage/write/used-keys.ts'
import { type PieceInHand, pieceOf } from './find.ts'
import { pieceWithProgress } from './pieces.ts'

/** A moment as it is stored: ISO 8601 in UTC, so that moments sort as text. */
export const inUtc = (at: string): string => new Date(at).toISOString()

/** Moves the job to done when as many good pieces are finished as were ordered, or back when one is spoiled. */
export async function settleState(
  db: Db,
  { job, frozen }: Pick<PieceInHand, 'job' | 'frozen'>,
  at: string,
): Promise<void> {
  const pieces = (await pieceList(db, job.id)).map((piece) => pieceWithProgress(piece, frozen.plan))
  const finished = pieces.filter((piece) => !piece.spoiled && piece.progress === 1)
  const state: JobState = finished.length >= frozen.plan.job.quantity ? 'done' : 'started'
  if (state !== job.state) await setJobState(db, job.id, state, at)
}

function checkOperation({ plan }: PieceInHand['frozen'], operation: string): void {
  const allowed = plan.operations.map((known) => known.key)
  if (allowed.includes(operation)) return
  const message = `is no operation of this plan; allowed: ${allowed.join(', ')}; read ${JSON.stringify(operation)}`
  throw badInput([{ path: 'operation', message }])
}

/**
 * Logs an operation as done on a piece, once for its key.
 * @throws Problem when there is no such piece or operation, or the key was used otherwise
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
  const answer = await once(context.db, request, now, async (tx) => {
    await insertStep(tx, hand.job.id, step, now)
    await settleState(tx, hand, now)
    return step
  })
  context.changes.tell('piece', id)
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
  const answer = await once(context.db, request, now, async (tx) => {
    const before = await pieceById(tx, id)
    if (before?.spoiled)
      throw new Problem('wrong-state', `Piece ${before.number} is spoiled already: ${before.spoiled.reason}`)
    await markSpoiled(tx, id, entry.reason, inUtc(entry.at ?? now))
    await settleState(tx, hand, now)
    return pieceWithProgress((await pieceById(tx, id))!, hand.frozen.plan)
  })
  context.changes.tell('piece', id)
  return answer
}
