import type { NewTouchUp, NewWeighing } from '../../shared/contract/floor.ts'
import type { TouchUp, Weighing } from '../../shared/piece.ts'
import { badInput } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import { pieceList } from '../storage/read/pieces.ts'
import { insertTouchUp } from '../storage/write/touch-ups.ts'
import { insertWeighing } from '../storage/write/weighings.ts'
import { jobOf, startedPlan } from './find.ts'
import { inUtc, loggedOnce } from './step.ts'

/**
 * Logs an edge as brought back during a batch, once for its key.
 * @throws Problem when there is no such job or tool, the batch is not started, the entry was taken back, or the key
 * was used otherwise
 */
export async function logTouchUp(context: Context, id: string, entry: NewTouchUp): Promise<TouchUp> {
  const job = await jobOf(context, id)
  const { plan } = await startedPlan(context, job)
  const allowed = plan.grinding.map(({ tool }) => tool)
  if (!allowed.includes(entry.tool)) {
    const message = `cuts nothing in this plan; allowed: ${allowed.join(', ') || 'none'}; read ${JSON.stringify(entry.tool)}`
    throw badInput([{ path: 'tool', message }])
  }
  const now = context.now()
  const touchUp: TouchUp = { ...entry, job: job.id, at: inUtc(entry.at ?? now) }
  const request = { noun: 'touch-up' as const, key: entry.key, body: { job: job.id, ...entry } }
  const answer = await loggedOnce(context, 'touch_ups', request, now, async (tx) => {
    await insertTouchUp(tx, touchUp, now)
    return touchUp
  })
  context.changes.tell('floor', job.id)
  return answer
}

/**
 * Logs what a piece weighs, or what the meter says of it, once for its key.
 * @throws Problem when there is no such job or piece, the batch is not started, the entry was taken back, or the key
 * was used otherwise
 */
export async function logWeighing(context: Context, id: string, entry: NewWeighing): Promise<Weighing> {
  const job = await jobOf(context, id)
  await startedPlan(context, job)
  const numbers = (await pieceList(context.db, job.id)).map(({ number }) => number)
  if (!numbers.includes(entry.number)) {
    const message = `is no piece of this batch; its pieces are ${numbers[0]} to ${numbers.at(-1)}; read ${entry.number}`
    throw badInput([{ path: 'number', message }])
  }
  const now = context.now()
  const weighing: Weighing = { ...entry, job: job.id, at: inUtc(entry.at ?? now) }
  const request = { noun: 'weighing' as const, key: entry.key, body: { job: job.id, ...entry } }
  const answer = await loggedOnce(context, 'weighings', request, now, async (tx) => {
    await insertWeighing(tx, weighing, now)
    return weighing
  })
  context.changes.tell('floor', job.id)
  return answer
}
