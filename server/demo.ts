import { type Demo, type DemoJob, demo } from '../seed/demo.ts'
import type { DemoProfile } from '../seed/demo-library.ts'
import { readJobFile } from '../shared/contract/job.ts'
import { readProfileFile } from '../shared/contract/profile.ts'
import { readNewReadings } from '../shared/contract/reading.ts'
import { quickCut } from '../shared/cutting/quick.ts'
import { pieceOperations } from '../shared/piece.ts'
import { type Plan, partsOf } from '../shared/plan.ts'
import type { Operation } from '../shared/route/operation.ts'
import { addBoard } from './batch/board.ts'
import { jobOf, startedPlan } from './batch/find.ts'
import { addJob } from './batch/job.ts'
import { pieceId } from './batch/pieces.ts'
import { addProfile, changeProfile } from './batch/profile.ts'
import { logReadings } from './batch/reading.ts'
import { sawBatch } from './batch/sawn.ts'
import { saveSettings } from './batch/shop.ts'
import { startBatch } from './batch/start.ts'
import { settleState, spoilPiece } from './batch/step.ts'
import type { Context } from './context.ts'
import { inTransaction } from './storage/database.ts'
import { jobList } from './storage/read/jobs.ts'
import { profileList } from './storage/read/profiles.ts'
import { storedShop } from './storage/read/shop.ts'
import { insertStep } from './storage/write/pieces.ts'
import { insertTouchUp } from './storage/write/touch-ups.ts'

type Batch = NonNullable<DemoJob['batch']>

/** How many of a plan’s piece operations are done on each piece that was begun. */
function begun(
  { finished, underWay }: Batch,
  operations: Operation[],
): { number: number; done: Operation[] }[] {
  const whole = Array.from({ length: finished }, (_, i) => ({ number: i + 1, done: operations }))
  const partly = underWay.map(({ number, done }) => ({
    number,
    done: operations.slice(0, Math.round(done * operations.length)),
  }))
  return [...whole, ...partly]
}

/** A key of its own for each step of the demo, the same at every start. */
const stepKey = (job: string, number: number, step: number): string =>
  `${job.slice(0, 8)}-${String(number).padStart(4, '0')}-4000-8${job.slice(-3)}-${String(step).padStart(12, '0')}`

/** Minutes of a piece that was timed: at this shop's pace, wandering an eighth about it by a fixed rule. */
function minutesTaken({ paces }: Batch, plan: Plan, operation: Operation, number: number, place: number) {
  if (!paces) return undefined
  const wanders = 1 + (((number * 7 + place * 5) % 11) - 5) / 40
  const planned = (operation.minutesEach * plan.blank.count) / partsOf(plan)
  return Math.round(planned * (paces[operation.kind] ?? 1) * wanders * 100) / 100
}

async function logWork(context: Context, job: string, batch: Batch, plan: Plan): Promise<void> {
  for (const { number, done } of begun(batch, pieceOperations(plan.operations)))
    for (const [i, operation] of done.entries()) {
      const minutes = minutesTaken(batch, plan, operation, number, i)
      const step = {
        key: stepKey(job, number, i),
        piece: pieceId(job, number),
        operation: operation.key,
        ...(minutes !== undefined && { minutes }),
        by: 'Wren',
        at: batch.workedAt,
      }
      await insertStep(context.db, job, step, batch.workedAt)
    }
}

/** Every edge brought back once the work was done, but that which is due most often: it waits for the next piece. */
async function touchUpEdges(context: Context, job: string, { workedAt }: Batch, plan: Plan): Promise<void> {
  const [, ...sharp] = [...plan.grinding].sort((a, b) => a.piecesBetween - b.piecesBetween)
  const at = new Date(Date.parse(workedAt) + 60_000).toISOString()
  for (const [i, { tool }] of sharp.entries()) {
    const touchUp = { key: stepKey(job, 0, i), job, tool, kind: 'touch-up' as const, by: 'Wren', at }
    await insertTouchUp(context.db, touchUp, at)
  }
}

async function runBatch(context: Context, { id, batch }: DemoJob): Promise<void> {
  if (!batch) return
  await startBatch({ ...context, now: () => batch.startedAt }, id, batch.key)
  await sawBatch({ ...context, now: () => batch.startedAt }, id, batch.sawnKey)
  const later = { ...context, now: () => batch.workedAt }
  const job = await jobOf(later, id)
  const frozen = await startedPlan(later, job)
  await logWork(later, id, batch, frozen.plan)
  await touchUpEdges(later, id, batch, frozen.plan)
  const entries = batch.readings.map(({ number, ...reading }) => ({ ...reading, piece: pieceId(id, number) }))
  await logReadings(later, job, readNewReadings(entries, 'mm'), true)
  for (const { number, ...spoiled } of batch.spoiled) await spoilPiece(later, pieceId(id, number), spoiled)
  await settleState(later.db, { job: await jobOf(later, id), frozen }, batch.workedAt)
}

async function keepProfile(context: Context, { id, versions }: DemoProfile): Promise<void> {
  for (const [i, { at, file }] of versions.entries()) {
    const then = { ...context, now: () => at }
    if (i === 0) await addProfile(then, { key: id, ...readProfileFile(file) })
    else await changeProfile(then, { id, revision: i }, readProfileFile(file))
  }
}

async function store(context: Context, { shop, boards, jobs, profiles }: Demo): Promise<void> {
  await saveSettings(context, shop)
  for (const { file, enteredAt } of boards) await addBoard({ ...context, now: () => enteredAt }, file)
  for (const profile of profiles) await keepProfile(context, profile)
  for (const job of jobs) {
    const entered = { key: job.id, ...readJobFile(job.file) }
    await addJob({ ...context, now: () => job.enteredAt }, entered)
    await runBatch(context, job)
  }
}

/** Fills an empty database with the demo, whole or not at all; answers whether it did. */
export async function seedDemo(context: Context): Promise<boolean> {
  return inTransaction(context.db, async (tx) => {
    if ((await storedShop(tx)) || (await jobList(tx)).length > 0 || (await profileList(tx)).length > 0)
      return false
    const exactCut: Context['exactCut'] = (order) => Promise.resolve(quickCut(order))
    await store({ ...context, db: tx, exactCut }, demo(context.now()))
    return true
  })
}
