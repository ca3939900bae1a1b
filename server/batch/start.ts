import type { CutPlan } from '../../shared/cutting/board.ts'
import { blanksMissing } from '../../shared/cutting/cut-blanks.ts'
import type { ShopRecord } from '../../shared/estimate/record.ts'
import { type Job, readJob } from '../../shared/job.ts'
import type { Piece } from '../../shared/piece.ts'
import { type Plan, speciesOf } from '../../shared/plan.ts'
import { Problem } from '../../shared/problem.ts'
import type { Shop } from '../../shared/shop.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import { version } from '../package-root.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import type { FrozenPlan } from '../storage/read/plans.ts'
import { setJobState } from '../storage/write/jobs.ts'
import { insertBatch } from '../storage/write/pieces.ts'
import { insertPlan } from '../storage/write/plans.ts'
import { answerBefore, type KeyedRequest, once } from '../storage/write/used-keys.ts'
import { freeOnRack } from './board.ts'
import { jobOf } from './find.ts'
import { piecesFor, pieceWithProgress } from './pieces.ts'
import { recordOf } from './record.ts'
import { reserveFor } from './reserve.ts'

/** Longest search for a better cut before a batch is started, ms. */
const START_SEARCH_MS = 2000

/** Whether a cut is no worse than another: no more blanks missing, and no dearer. */
const isNoWorse = (cut: CutPlan, than: CutPlan): boolean =>
  blanksMissing(cut) < blanksMissing(than) ||
  (blanksMissing(cut) === blanksMissing(than) && cut.cost <= than.cost)

/** The plan with the best cut that can be found in a short while. */
async function bestPlan(context: Context, job: Job, shop: Shop, record: ShopRecord): Promise<Plan> {
  const { exactCut, woods } = context
  const task = { job, shop, woods, onHand: await freeOnRack(context), record }
  const quick = await planApart(task)
  const cut = await exactCut(quick.cutOrder, START_SEARCH_MS)
  return isNoWorse(cut, quick.cut) ? planApart({ ...task, better: cut }) : quick
}

async function freeze(context: Context, key: string, { id, file, revision }: StoredJob) {
  const shop = await shopOf(context)
  const record = await recordOf(context)
  const plan = await bestPlan(context, readJob(file), shop, record)
  const wood = speciesOf(plan.job, shop, context.woods)
  const frozen: FrozenPlan = { id: key, job: id, jobRevision: revision, madeAt: context.now(), version, plan }
  return { frozen, inputs: { job: file, shop, wood, record, version } }
}

/**
 * Starts the batch of a job, once for its key: freezes the plan with all it was made from, reserves the boards on
 * hand that it cuts and makes the numbered pieces, in one transaction.
 * @throws Problem `wrong-state` when the batch was started under another key, or a board went meanwhile
 */
export async function startBatch(context: Context, id: string, key: string): Promise<Piece[]> {
  const job = await jobOf(context, id)
  const request: KeyedRequest = { noun: 'start', key, body: { job: id } }
  const before = await answerBefore<Piece[]>(context.db, request)
  if (before) return before
  if (job.state !== 'draft') throw startedAlready(job)
  const { frozen, inputs } = await freeze(context, key, job)
  let taken: string[] = []
  const answer = await once(context.db, request, frozen.madeAt, async (tx) => {
    const present = await jobOf({ db: tx }, id)
    if (present.state !== 'draft') throw startedAlready(present)
    if (present.revision !== job.revision)
      throw new Problem('wrong-state', 'The job was changed meanwhile; start it again.')
    const pieces = piecesFor(id, frozen.plan)
    await insertPlan(tx, frozen, inputs)
    await insertBatch(tx, { id: key, job: id, plan: frozen.id, at: frozen.madeAt }, pieces)
    await setJobState(tx, id, 'started', frozen.madeAt)
    taken = await reserveFor(tx, id, frozen.plan)
    return pieces.map((piece) => pieceWithProgress(piece, frozen.plan))
  })
  context.changes.tell('job', id)
  for (const board of taken) context.changes.tell('board', board)
  return answer
}

const startedAlready = ({ file }: StoredJob): Problem =>
  new Problem('wrong-state', `The batch of ${JSON.stringify(file.name)} is started already.`)
