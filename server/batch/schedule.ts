import { readJob } from '../../shared/job.ts'
import type { Begun } from '../../shared/open-work.ts'
import { badInput } from '../../shared/problem.ts'
import { dayNumber } from '../../shared/schedule/days.ts'
import { type ShipJob, type Ships, shipsOf } from '../../shared/ships.ts'
import { type Context, shopOf } from '../context.ts'
import { jobList, type StoredJob } from '../storage/read/jobs.ts'
import { loggedSteps } from '../storage/read/times.ts'
import { piecesOf } from './pieces.ts'
import { plansTogether } from './plan.ts'

/** What is asked of the days: from which on, with which undated drafts, who goes first, the order by hand. */
export interface ScheduleAsked {
  from?: string | undefined
  with?: string | undefined
  first?: string | undefined
  order?: string | undefined
}

/** Jobs that are put in order at once. */
const JOBS_MOST = 60

const idsIn = (text: string | undefined): string[] =>
  (text ?? '')
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '')

/** A started batch as far as it has come by what was logged. */
async function begunOf(context: Context, job: StoredJob, today: number): Promise<Begun> {
  const lastDone = new Map<string, number>()
  for (const { operation, at } of await loggedSteps(context.db, job.id))
    lastDone.set(operation, Math.max(lastDone.get(operation) ?? 0, dayNumber(at)))
  return { pieces: await piecesOf(context, job), lastDone, today }
}

function refuseUnknown(path: keyof ScheduleAsked, ids: readonly string[], known: ReadonlySet<string>): void {
  const unknown = ids.filter((id) => !known.has(id))
  if (unknown.length === 0) return
  const message = `must be ids of open jobs (drafts and started batches); read ${unknown.map((id) => JSON.stringify(id)).join(', ')}`
  throw badInput([{ path, message }])
}

/** Drafts nobody waits for: they are told of, not planned. */
export interface Aside {
  id: string
  name: string
}

/**
 * When every open job ships: started batches by what is left of them, drafts with a due date, and drafts without one
 * that are asked for.
 * @throws Problem `bad-input` for ids of no open job, or too many jobs
 */
export async function scheduleOf(
  context: Context,
  asked: ScheduleAsked,
): Promise<Ships & { aside: Aside[] }> {
  const today = asked.from ?? context.now().slice(0, 10)
  const open = (await jobList(context.db)).filter(({ state }) => state !== 'done')
  const known = new Set(open.map(({ id }) => id))
  const [also, first, order] = [idsIn(asked.with), idsIn(asked.first), idsIn(asked.order)]
  refuseUnknown('with', also, known)
  refuseUnknown('first', first, known)
  refuseUnknown('order', order, known)
  if (first.length > 1)
    throw badInput([{ path: 'first', message: `must be the id of one open job; read ${first.length} ids` }])
  if (first.length > 0 && order.length > 0)
    throw badInput([{ path: 'first', message: 'must be left out where an order is given; read both' }])
  const named = new Set([...also, ...first, ...order])
  const files = open.map((job) => ({ job, file: readJob(job.file) }))
  const isIn = ({ job, file }: (typeof files)[number]): boolean =>
    job.state === 'started' || file.due !== undefined || named.has(job.id)
  const chosen = files.filter(isIn)
  if (chosen.length > JOBS_MOST) {
    const message = `must leave at most ${JOBS_MOST} open jobs to put in order; read ${chosen.length}`
    throw badInput([{ path: 'with', message }])
  }
  const shop = await shopOf(context)
  const plans = await plansTogether(
    context,
    chosen.map(({ job }) => job),
    shop,
  )
  const jobs: ShipJob[] = []
  for (const [i, { job, file }] of chosen.entries()) {
    const { name, customer, due } = file
    const begun = job.state === 'started' ? await begunOf(context, job, dayNumber(today)) : undefined
    jobs.push({
      id: job.id,
      state: job.state as ShipJob['state'],
      name,
      ...(customer !== undefined && { customer }),
      ...(due !== undefined && { due }),
      plan: plans[i]!,
      ...(begun && { begun }),
    })
  }
  const aside = files.filter((each) => !isIn(each)).map(({ job, file }) => ({ id: job.id, name: file.name }))
  const wishes = { first: first[0], ...(order.length > 0 && { order }) }
  return { ...shipsOf(jobs, shop, today, wishes), aside }
}
