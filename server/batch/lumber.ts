import { setImmediate } from 'node:timers/promises'
import type { CutPlan } from '../../shared/cutting/board.ts'
import { blanksMissing } from '../../shared/cutting/cut-blanks.ts'
import { quickCut } from '../../shared/cutting/quick.ts'
import type { StockBoard } from '../../shared/cutting/stock-board.ts'
import { readJob } from '../../shared/job.ts'
import { type Lumber, type LumberJob, lumberFor, type Pool, poolsOf } from '../../shared/lumber.ts'
import { type CountedTwice, countedTwice, type PlannedAlone } from '../../shared/lumber-on-hand.ts'
import { speciesOf } from '../../shared/plan.ts'
import { badInput, Problem } from '../../shared/problem.ts'
import type { Shop } from '../../shared/shop.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import { jobById, jobList, type StoredJob } from '../storage/read/jobs.ts'
import { freeOnRack } from './board.ts'
import { plansTogether } from './plan.ts'

/** Jobs that lumber is asked for at once. */
const JOBS_MOST = 40

/** How long boards are looked for that serve several jobs, ms. */
const SEARCH_MS = 1500
/** The same for all woods and grades of a question. */
const SEARCH_ALL_MS = 6000

/** What is asked for: jobs by their ids with commas between, the yard by its name. */
export interface LumberAsked {
  jobs: string
  yard?: string | undefined
  style?: LengthStyle | undefined
}

function idsOf(jobs: string): string[] {
  const ids = [...new Set(jobs.split(',').map((id) => id.trim()))].filter((id) => id !== '')
  if (ids.length > 0 && ids.length <= JOBS_MOST) return ids
  const message = `must be the ids of 1 to ${JOBS_MOST} jobs with commas between; read ${ids.length}`
  throw badInput([{ path: 'jobs', message }])
}

/** The shop with the yard asked for as its usual one. */
function withYard(shop: Shop, name: string | undefined): Shop {
  if (name === undefined) return shop
  const yard = shop.yards.find((each) => each.name === name)
  if (yard) return { ...shop, yards: [yard, ...shop.yards.filter((each) => each !== yard)] }
  const known = shop.yards.map((each) => each.name).join(', ') || 'none'
  throw badInput([
    { path: 'yard', message: `must be one of the shop’s yards (${known}); read ${JSON.stringify(name)}` },
  ])
}

/** The jobs of these ids. @throws Problem `not-found` that names those there are not */
async function storedJobs({ db }: Context, ids: string[]): Promise<StoredJob[]> {
  const found: StoredJob[] = []
  const unknown: string[] = []
  for (const id of ids) {
    const job = await jobById(db, id)
    if (job) found.push(job)
    else unknown.push(JSON.stringify(id))
  }
  if (unknown.length === 0) return found
  const message = `must be ids of jobs that are kept, as GET /api/jobs lists them, with commas between; read ${unknown.join(', ')}`
  throw new Problem('not-found', 'Lumber is asked for a job that is not kept.', [{ path: 'jobs', message }])
}

/** Jobs with their plans; one frozen before a job had wishes for its lumber has those of its file. */
async function lumberJobs(context: Context, ids: string[], shop: Shop): Promise<LumberJob[]> {
  const stored = await storedJobs(context, ids)
  const plans = await plansTogether(context, stored, shop)
  return stored.map(({ id, file }, i) => {
    const plan = plans[i]!
    return { id, plan: { ...plan, job: { ...plan.job, lumber: readJob(file).lumber } } }
  })
}

/** The draft as it is planned by itself from all of the rack; nothing where its file or its wood does not allow it. */
async function plannedAlone(
  { woods }: Context,
  { id, file }: StoredJob,
  { shop, onHand, species }: { shop: Shop; onHand: StockBoard[]; species: ReadonlySet<string> | undefined },
): Promise<PlannedAlone[]> {
  try {
    const job = readJob(file)
    if (!job.lumber.fromRack || species?.has(speciesOf(job, shop, woods).key) === false) return []
    return [{ id, plan: await planApart({ job, shop, woods, onHand }) }]
  } catch (failure) {
    // What is wrong with a draft is told where it is opened, not where lumber is asked for another.
    if (failure instanceof Problem) return []
    throw failure
  }
}

/** Boards on hand that drafts in the woods of these jobs, each by itself, cannot all have. */
async function twiceAmong(context: Context, jobs: readonly LumberJob[], shop: Shop): Promise<CountedTwice[]> {
  const onHand = await freeOnRack(context)
  if (onHand.length === 0) return []
  // A board of which nobody wrote down the wood may be counted on by any.
  const isAnyWood = onHand.some((board) => board.species === undefined)
  const species = isAnyWood ? undefined : new Set(jobs.map(({ plan }) => plan.job.species))
  const drafts = (await jobList(context.db)).filter(({ state }) => state === 'draft')
  const alone: PlannedAlone[] = []
  for (const draft of drafts.slice(-JOBS_MOST)) {
    alone.push(...(await plannedAlone(context, draft, { shop, onHand, species })))
    // Others are served between two plans.
    await setImmediate()
  }
  return countedTwice(alone, onHand)
}

/** A plan for a pool of jobs; the quick one where the search had no time to place what each job by itself can. */
async function pooledCut(context: Context, { order, jobs }: Pool, milliseconds: number): Promise<CutPlan> {
  const found = await context.exactCut(order, milliseconds)
  const apart = jobs.reduce((sum, { plan }) => sum + blanksMissing(plan.cut), 0)
  return blanksMissing(found) > apart ? quickCut(order) : found
}

/**
 * What to ask the yard for these jobs together, with a search for boards that serve several of them.
 * @throws Problem `not-found` for a job there is not, `bad-input` for no job, too many, or a yard there is not
 */
export async function lumberOf(
  context: Context,
  { jobs: asked, yard, style }: LumberAsked,
): Promise<{ lumber: Lumber; jobs: LumberJob[]; shop: Shop }> {
  const ids = idsOf(asked)
  const shop = withYard(await shopOf(context), yard)
  const jobs = await lumberJobs(context, ids, shop)
  const cuts = new Map<string, CutPlan>()
  const pools = poolsOf(jobs, shop)
  const each = Math.min(SEARCH_MS, SEARCH_ALL_MS / pools.length)
  for (const pool of pools) cuts.set(pool.key, await pooledCut(context, pool, each))
  const twice = await twiceAmong(context, jobs, shop)
  return {
    lumber: lumberFor(jobs, shop, context.woods, cuts, { ...(style && { style }), twice }),
    jobs,
    shop,
  }
}
