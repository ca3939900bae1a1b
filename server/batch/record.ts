import {
  type BatchTimes,
  type PlannedTimes,
  plannedAgainstActual,
  plannedSteps,
} from '../../shared/estimate/planned-actual.ts'
import { type ShopRecord, shopRecord } from '../../shared/estimate/record.ts'
import type { TimedBatch } from '../../shared/estimate/record-cells.ts'
import { partsOf } from '../../shared/plan.ts'
import { defaultShop, type Shop } from '../../shared/shop.ts'
import { type Context, shopOf } from '../context.ts'
import type { Db } from '../storage/database.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planAndInputs } from '../storage/read/plans.ts'
import { loggedSteps, loggedStepsByJob, markOfTimes } from '../storage/read/times.ts'
import { startedPlan } from './find.ts'

/** What was worked out of a database, as long as it holds. */
interface Known {
  /** What frozen plans say of times: they never change. */
  planned: Map<string, PlannedTimes>
  mark: string
  record?: Promise<ShopRecord>
}

const known = new WeakMap<Db, Known>()

function knownOf(db: Db): Known {
  const had = known.get(db)
  if (had) return had
  const made = { planned: new Map(), mark: '' }
  known.set(db, made)
  return made
}

/** What the frozen plan of a batch says of times; nothing while it is not started. */
async function plannedTimes(db: Db, job: string): Promise<PlannedTimes | undefined> {
  const { planned } = knownOf(db)
  const had = planned.get(job)
  if (had) return had
  const frozen = await planAndInputs(db, job)
  if (!frozen) return undefined
  const { plan, inputs } = frozen
  const shop = { ...defaultShop, ...(inputs.shop as Partial<Shop> | undefined) }
  const times: PlannedTimes = {
    operations: plan.operations.map(({ key, kind, name, minutesEach, learns, factor }) => ({
      key,
      kind,
      name,
      minutesEach,
      learns,
      ...(factor !== undefined && { factor }),
    })),
    perBlank: partsOf(plan) / plan.blank.count,
    learningRate: shop.learningRate,
    learningForm: shop.learningForm,
    minuteFactors: shop.minuteFactors,
  }
  planned.set(job, times)
  return times
}

async function timedBatches(db: Db): Promise<TimedBatch[]> {
  const batches: TimedBatch[] = []
  for (const [job, steps] of await loggedStepsByJob(db)) {
    const planned = await plannedTimes(db, job)
    if (planned) batches.push({ job, steps: plannedSteps(steps, planned) })
  }
  return batches
}

/**
 * What the times logged on the floor say of the shop as it is set now. Steps taken back and deleted jobs do not count.
 * Worked out anew only when something bears on it.
 */
export async function recordOf({ db }: Pick<Context, 'db'>): Promise<ShopRecord> {
  const { minuteFactors, timeSpread } = await shopOf({ db })
  const mark = `${await markOfTimes(db)} ${JSON.stringify([minuteFactors, timeSpread])}`
  const state = knownOf(db)
  if (state.record && state.mark === mark) return state.record
  const record = timedBatches(db).then((batches) => shopRecord(batches, { minuteFactors, timeSpread }))
  Object.assign(state, { mark, record })
  record.catch(() => delete state.record)
  return record
}

/**
 * Planned against actual of a started batch.
 * @throws Problem `wrong-state` while the batch is not started
 */
export async function batchTimes({ db }: Context, job: StoredJob): Promise<BatchTimes> {
  const planned = await plannedTimes(db, job.id)
  if (!planned) await startedPlan({ db }, job)
  return plannedAgainstActual(await loggedSteps(db, job.id), planned!)
}
