import type { JobState } from './contract/job.ts'
import { Z90 } from './estimate/range.ts'
import { chanceBy } from './estimate/three-point.ts'
import type { Job } from './job.ts'
import { type Begun, chainOf } from './open-work.ts'
import type { Plan } from './plan.ts'
import { type OpenJob, workMinutes } from './schedule/chain.ts'
import { type Calendar, dayNumber, isoDay, workDaysLate, worksOn } from './schedule/days.ts'
import type { Run, ShopHours } from './schedule/hours.ts'
import { earliestDue, inThisOrder, leastLate, type Schedule } from './schedule/least-lateness.ts'
import type { Shop } from './shop.ts'

/** An open job with its plan; `begun` for a started batch. */
export interface ShipJob {
  id: string
  state: Exclude<JobState, 'done'>
  name: string
  customer?: string
  due?: string
  plan: Plan
  begun?: Begun
}

/** A row of the days: one job. Days ISO 8601, minutes of one person, `late` in working days. */
export interface ShipRow extends Pick<ShipJob, 'id' | 'state' | 'name' | 'customer' | 'due'> {
  lathe?: string
  minutes: number
  start: string
  done: string
  late: number
  /** False where it is not done within the days that can be planned. */
  ends: boolean
  /** The chance that it ships by its date, 0 to 1, where only the work strays; absent without a date. */
  chance?: number
  /** The same where the work and the waits of every job take as long as nine in ten do at most. */
  sure: { done: string; late: number }
  bars: { day: string; minutes: number; atLathe: boolean }[]
  waits: { name: string; from: string; to: string }[]
  /** For a job not started: the day it ships behind all others, so that none of them slips; and before all of them. */
  promise?: { behind: string; behindSure: string; first: string }
}

/** When every open job ships. */
export interface Ships {
  today: string
  people: number
  minutesPerDay: number
  /** Days the shop works. */
  calendar: Calendar
  rows: ShipRow[]
  /** Working days late, of all jobs together; and in the order of the due dates. */
  totalLate: number
  totalLateByDue: number
  /** No other order is late by fewer days in all. */
  proven: boolean
  by: 'least' | 'hand' | 'first'
  /** Where a job is put first: how many working days later than without that others ship. */
  slips: { id: string; name: string; days: number; done: string }[]
}

/** How the jobs are put in order: one of them first, or all as given by hand (others behind). */
export interface ShipWishes {
  first?: string | undefined
  order?: readonly string[] | undefined
}

const hoursOf = (shop: Shop, today: string): ShopHours => ({
  people: shop.people,
  minutesPerDay: shop.hoursPerDay * 60,
  today: dayNumber(today),
  workDays: shop.workDays,
  closed: shop.closed,
})

function openJob({ id, name, due, plan, begun }: ShipJob, shop: Shop): OpenJob {
  const lathe = plan.lathe?.name ?? plan.blank.lathes.find(({ fits }) => fits)?.name
  return {
    key: id,
    name,
    ...(due !== undefined && { due: dayNumber(due) }),
    ...(lathe !== undefined && { lathe }),
    chain: chainOf(plan, shop, begun),
  }
}

function scheduled(jobs: readonly OpenJob[], hours: ShopHours, { first, order }: ShipWishes): Schedule {
  if (order === undefined) return leastLate(jobs, hours, first)
  const place = (key: string): number => (order.includes(key) ? order.indexOf(key) : order.length)
  return inThisOrder(
    earliestDue(jobs).sort((a, b) => place(a.key) - place(b.key)),
    hours,
  )
}

/** Work that goes four times as fast or as slowly as planned is not looked at. */
const SLOWNESS: [number, number] = [0.25, 4]
/** Halvings in which the slowness is found that just ships in time: to a thousandth. */
const HALVINGS = 12

/** How much longer than planned all takes that nine in ten batches take at most. */
const slowness = ({ time }: Plan): number => (time.minutes > 0 ? Math.max(1, time.p90 / time.minutes) : 1)

/** The job where all its work takes so many times as long. */
const slowed = (job: OpenJob, factor: number): OpenJob => ({
  ...job,
  chain: job.chain.map((link) => (link.kind === 'work' ? { ...link, minutes: link.minutes * factor } : link)),
})

/** The job where all its work and every wait takes as long as nine in ten do at most. */
function slow(job: OpenJob, plan: Plan): OpenJob {
  const { chain, ...rest } = slowed(job, slowness(plan))
  return {
    ...rest,
    chain: chain.map((link) => (link.kind === 'wait' ? { ...link, days: link.slowDays ?? link.days } : link)),
  }
}

/**
 * The chance that the job in place `i` ships by its date: that all work before it and of it goes no slower than just
 * makes the date, by the lognormal range of its own plan. Taken as going slowly together, which is the cautious side.
 */
function chanceInTime(i: number, order: readonly OpenJob[], { time }: Plan, hours: ShopHours): number {
  const ahead = order.slice(0, i + 1)
  const works = worksOn(hours)
  const isInTime = (factor: number): boolean => {
    const { done, ends } = inThisOrder(
      ahead.map((job) => slowed(job, factor)),
      hours,
    ).runs[i]!
    return ends && workDaysLate(works, ahead[i]!.due!, done) === 0
  }
  const sd = Math.log(time.p90 / time.p50) / Z90
  let [met, missed] = SLOWNESS
  if (!isInTime(met)) return 0
  if (isInTime(missed)) return 1
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = Math.sqrt(met * missed)
    if (isInTime(middle)) met = middle
    else missed = middle
  }
  return chanceBy({ mean: Math.log(time.p50 / time.minutes), sd }, Math.log(met))
}

const doneOf = (runs: readonly Run[], key: string): string =>
  isoDay(runs.find((run) => run.key === key)!.done)

/** What can be promised for a job: behind all others and before them, and behind them where all goes slowly. */
function promiseOf(key: string, order: readonly OpenJob[], slowly: readonly OpenJob[], hours: ShopHours) {
  const own = (jobs: readonly OpenJob[]): OpenJob[] => jobs.filter((job) => job.key === key)
  const last = (jobs: readonly OpenJob[]): OpenJob[] => [
    ...jobs.filter((job) => job.key !== key),
    ...own(jobs),
  ]
  return {
    behind: doneOf(inThisOrder(last(order), hours).runs, key),
    behindSure: doneOf(inThisOrder(last(slowly), hours).runs, key),
    first: doneOf(inThisOrder(own(order), hours).runs, key),
  }
}

/**
 * When every open job ships: in the order that is late by the fewest working days in all, or in the one wished for.
 * Jobs without a date are late for nobody and take what others leave. `today` is an ISO day.
 */
export function shipsOf(jobs: readonly ShipJob[], shop: Shop, today: string, wishes: ShipWishes = {}): Ships {
  const hours = hoursOf(shop, today)
  const open = new Map(jobs.map((job) => [job.id, openJob(job, shop)]))
  const all = [...open.values()]
  const schedule = scheduled(all, hours, wishes)
  const order = schedule.order.map((key) => open.get(key)!)
  const slowly = order.map((job) => slow(job, jobs.find(({ id }) => id === job.key)!.plan))
  const sure = inThisOrder(slowly, hours)
  const rows = schedule.order.map((key, i): ShipRow => {
    const { plan, id, state, name, customer, due } = jobs.find((job) => job.id === key)!
    const [run, job] = [schedule.runs[i]!, open.get(key)!]
    const atLathe = (link: number): boolean => {
      const work = job.chain[link]!
      return work.kind === 'work' && work.atLathe
    }
    return {
      id,
      state,
      name,
      ...(customer !== undefined && { customer }),
      ...(due !== undefined && { due }),
      ...(job.lathe !== undefined && plan.operations.length > 0 && { lathe: job.lathe }),
      minutes: workMinutes(job.chain),
      start: isoDay(run.start),
      done: isoDay(run.done),
      late: schedule.late[i]!,
      ends: run.ends,
      ...(due !== undefined && { chance: chanceInTime(i, order, plan, hours) }),
      sure: { done: isoDay(sure.runs[i]!.done), late: sure.late[i]! },
      bars: run.bars.map(({ day, minutes, link }) => ({ day: isoDay(day), minutes, atLathe: atLathe(link) })),
      waits: run.waits.map(({ link, from, to }) => ({
        name: job.chain[link]!.name,
        from: isoDay(from),
        to: isoDay(to),
      })),
      ...(state === 'draft' && { promise: promiseOf(key, order, slowly, hours) }),
    }
  })
  return {
    today,
    people: shop.people,
    minutesPerDay: hours.minutesPerDay,
    calendar: { workDays: shop.workDays, closed: shop.closed },
    rows,
    totalLate: schedule.totalLate,
    totalLateByDue: inThisOrder(earliestDue(all), hours).totalLate,
    proven: schedule.proven,
    by: wishes.order ? 'hand' : wishes.first ? 'first' : 'least',
    slips:
      wishes.first && !wishes.order
        ? slipsOf(wishes.first, schedule, leastLate(all, hours), jobs, hours)
        : [],
  }
}

/** Which jobs ship later because one goes first, the one that slips most first. */
function slipsOf(
  first: string,
  withFirst: Schedule,
  without: Schedule,
  jobs: readonly (Pick<Job, 'name'> & { id: string })[],
  hours: ShopHours,
): Ships['slips'] {
  const works = worksOn(hours)
  return jobs
    .filter(({ id }) => id !== first)
    .flatMap(({ id, name }) => {
      const [before, now] = [without, withFirst].map(({ runs }) => runs.find(({ key }) => key === id)!.done)
      const days = workDaysLate(works, before!, now!)
      return days > 0 ? [{ id, name, days, done: isoDay(now!) }] : []
    })
    .sort((a, b) => b.days - a.days)
}
