import type { YardTerms } from '../shared/cutting/yard-terms.ts'
import type { Plan } from '../shared/plan.ts'
import type { Units } from '../shared/units/length.ts'
import { jobs, planOf, Refusal, shop, species } from './api.ts'
import type { StoredJob } from './job-file.ts'
import { keepEntry, keptEntry } from './kept-entry.ts'
import type { YardNeed, YardTally } from './yard-tally.ts'

/** What the shop needs from a yard and what yards sell by, kept on this device for where there is no signal. */
export interface YardGround {
  units: Units
  currency: string
  grade?: string
  yards: YardTerms[]
  /** Every wood with what it is called. */
  woods: { key: string; name: string }[]
  /** Of every job that is not done, those in the writing first. */
  needs: YardNeed[]
  /** When it was fetched, ISO 8601; empty before the first time. */
  at: string
}

const PLACE = 'setwright.yard-ground'

/** Jobs whose plans are fetched, so that a shop of many years does not wait. */
const JOBS_MOST = 60

/** What was fetched last. */
export const keptGround = (): YardGround =>
  keptEntry<YardGround>(PLACE, { units: 'in', currency: 'USD', yards: [], woods: [], needs: [], at: '' })

/** What a job needs from the yard, from its plan. */
export function needOf({ id, state }: Pick<StoredJob, 'id' | 'state'>, plan: Plan, wood: string): YardNeed {
  const { job, blank, cutOrder } = plan
  return {
    job: id,
    name: job.name,
    ...(state === 'started' && { started: true }),
    species: job.species,
    wood,
    ...(blank.nominal !== undefined && { nominal: blank.nominal }),
    ...(blank.surfaced && { surfaced: true }),
    thickness: blank.thickness,
    // Plans frozen before lumber had its own fields do not say.
    sap: job.lumber?.sap ?? 'none',
    ...(blank.spares > 0 && { spares: blank.spares * blank.layers }),
    order: { ...cutOrder, boards: cutOrder.boards.filter(({ onHand }) => onHand) },
  }
}

/**
 * The plan of a job; nothing where it cannot be planned, `later` where the server has too much to do.
 * @throws Refusal when the server went out of reach: what is kept must not shrink by it
 */
async function planNow(job: string): Promise<Plan | 'later' | undefined> {
  try {
    return await planOf(job)
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.status === 0) throw failure
    return failure.status === 429 || failure.status >= 500 ? 'later' : undefined
  }
}

/** Asks the server what is needed, and keeps the answer. @throws Refusal when it is out of reach */
export async function fetchGround(at: string): Promise<YardGround> {
  const [all, settings, woods] = await Promise.all([jobs(), shop(), species()])
  const named = woods.map(({ key, name }) => ({ key, name }))
  const woodName = (key: string) => woods.find((wood) => wood.key === key)?.name ?? key
  const open = all
    .filter(({ state }) => state !== 'done')
    .sort((a, b) => a.state.localeCompare(b.state) || b.updatedAt.localeCompare(a.updatedAt))
    .slice(0, JOBS_MOST)
  const known = keptGround().needs
  const needs: YardNeed[] = []
  for (const job of open) {
    const plan = await planNow(job.id)
    const before = known.find((need) => need.job === job.id)
    if (plan === 'later') needs.push(...(before ? [before] : []))
    else if (plan) needs.push(needOf(job, plan, woodName(plan.job.species)))
  }
  const { units, currency, grade, yards } = settings
  const ground: YardGround = { units, currency, grade, yards, woods: named, needs, at }
  keepEntry(PLACE, ground)
  return ground
}

/** A tally with what its jobs need now; a job that is not among them keeps what was known of it. */
export function withGround(tally: YardTally, { needs, yards }: YardGround): YardTally {
  const now = tally.needs.map((need) => needs.find(({ job }) => job === need.job) ?? need)
  const terms = yards.find(({ name }) => name === tally.terms?.name) ?? tally.terms
  return { ...tally, needs: now, ...(terms && { terms }) }
}
