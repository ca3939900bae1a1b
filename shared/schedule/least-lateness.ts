import { type OpenJob, workMinutes } from './chain.ts'
import { workDaysLate, worksOn } from './days.ts'
import {
  allLeft,
  copied,
  type Days,
  daysFor,
  fitIn,
  type Left,
  type Run,
  runsInOrder,
  type ShopHours,
} from './hours.ts'

/** Open jobs in an order, with what comes of it. */
export interface Schedule {
  order: string[]
  runs: Run[]
  /** Working days late, by job, in the order; and of all together. */
  late: number[]
  totalLate: number
  /** No order of these jobs is late by fewer days in all. */
  proven: boolean
}

/** Working days late; a job that never ends counts as late by all days that are planned. */
type Lateness = (job: OpenJob, run: Run) => number

function latenessOf({ hours, works }: Days): Lateness {
  const worksAt = worksOn(hours)
  return ({ due }, { done, ends }) => {
    if (due === undefined) return 0
    return ends ? workDaysLate(worksAt, due, done) : works.length
  }
}

const NEVER = Number.POSITIVE_INFINITY

/** What an order comes to: days late in all, then days until each is done, then how long jobs lie. */
interface Worth {
  late: number
  done: number
}

const isBetter = (a: Worth, b: Worth): boolean => a.late < b.late || (a.late === b.late && a.done < b.done)

/** What an order comes to; left off, and worth nothing, as soon as it is later than `known`. */
function worthOf(jobs: readonly OpenJob[], days: Days, lateness: Lateness, known?: Worth): Worth {
  const left = allLeft(days, jobs)
  const worth = { late: 0, done: 0 }
  for (const job of jobs) {
    const run = fitIn(job, days, left)
    worth.late += lateness(job, run)
    worth.done += run.done - days.hours.today
    if (known && !isBetter(worth, known)) return { late: NEVER, done: NEVER }
  }
  return worth
}

/** Jobs by their due dates, those of nobody last (Jackson 1955: the greatest lateness is least so on one machine). */
export const earliestDue = (jobs: readonly OpenJob[]): OpenJob[] =>
  [...jobs].sort(
    (a, b) =>
      (a.due ?? NEVER) - (b.due ?? NEVER) ||
      workMinutes(a.chain) - workMinutes(b.chain) ||
      (a.key < b.key ? -1 : 1),
  )

/**
 * Jobs by the modified due date: next always the one whose due date, or the day it could be done if it went next
 * where that is later, comes first (Baker & Bertrand, Journal of Operations Management 3 (1982) 37-42, from memory).
 */
function modifiedDue(jobs: readonly OpenJob[], days: Days): OpenJob[] {
  const left = allLeft(days, jobs)
  const open = earliestDue(jobs)
  const order: OpenJob[] = []
  while (open.length > 0) {
    const dues = open.map((job) => Math.max(job.due ?? NEVER, fitIn(job, days, copied(left)).done))
    const [next] = open.splice(dues.indexOf(Math.min(...dues)), 1)
    fitIn(next!, days, left)
    order.push(next!)
  }
  return order
}

function moved(order: readonly OpenJob[], from: number, to: number): OpenJob[] {
  const others = order.filter((_, i) => i !== from)
  return [...others.slice(0, to), order[from]!, ...others.slice(to)]
}

/** Puts each job but the leading ones in each other place while that helps. */
function exchanged(
  start: Tried,
  lead: number,
  most: number,
  worthOfOrder: (order: readonly OpenJob[], known: Worth) => Worth,
): Tried {
  let [best, again, left] = [start, true, most]
  while (again) {
    again = false
    for (let from = lead; from < best.order.length; from++)
      for (let to = lead; to < best.order.length && left-- > 0; to++) {
        const order = moved(best.order, from, to)
        const worth = worthOfOrder(order, best.worth)
        if (isBetter(worth, best.worth)) [best, again] = [{ order, worth }, true]
      }
  }
  return best
}

/** Up to so many jobs every order is gone through. */
const ALL_ORDERS = 8
/**
 * Days gone through at the most where there are more jobs, by beginnings of orders, and by exchanges before them,
 * which find more where there are many: about a second in all. Then the best order found has to do.
 */
const DAYS_TRIED = 2e7
const DAYS_EXCHANGED = 8e7

/** An order with what it comes to. */
interface Tried {
  order: OpenJob[]
  worth: Worth
}

interface Search {
  jobs: readonly OpenJob[]
  days: Days
  lateness: Lateness
  best: Tried
  tries: number
  most: number
}

/**
 * Goes through all beginnings of an order; leaves one as soon as what it has come to, and what the others come to at
 * best, each put next, is no better than the best order known. A job put next is done no later than behind others.
 */
function branch(search: Search, order: OpenJob[], so: Worth, left: Left): void {
  const { jobs, days, lateness } = search
  const rest = jobs.filter((job) => !order.includes(job))
  if (rest.length === 0) {
    if (isBetter(so, search.best.worth)) search.best = { order: [...order], worth: so }
    return
  }
  const next = rest.map((job) => {
    const after = copied(left)
    const run = fitIn(job, days, after)
    return { job, after, late: lateness(job, run), done: run.done - days.hours.today }
  })
  search.tries += next.length
  const bound = next.reduce((sum, { late, done }) => ({ late: sum.late + late, done: sum.done + done }), so)
  if (!isBetter(bound, search.best.worth) || search.tries > search.most) return
  next.sort((a, b) => (a.job.due ?? NEVER) - (b.job.due ?? NEVER) || a.done - b.done)
  for (const { job, after, late, done } of next)
    branch(search, [...order, job], { late: so.late + late, done: so.done + done }, after)
}

/** The order as it comes, in one piece. */
function scheduleOf(jobs: readonly OpenJob[], days: Days, proven: boolean): Schedule {
  const lateness = latenessOf(days)
  const runs = runsInOrder(jobs, days)
  const late = jobs.map((job, i) => lateness(job, runs[i]!))
  return { order: jobs.map(({ key }) => key), runs, late, totalLate: late.reduce((a, b) => a + b, 0), proven }
}

/** What comes of the jobs in the order they stand in; nothing is claimed of it. */
export const inThisOrder = (jobs: readonly OpenJob[], hours: ShopHours): Schedule =>
  scheduleOf(jobs, daysFor(jobs, hours), false)

/**
 * The order in which the jobs are late by the fewest working days in all; among such orders, the one that has each
 * done soonest. Total lateness on one bench is the problem of Emmons (Operations Research 17 (1969) 701-715, from
 * memory); with waits between and several people his rules do not hold, so every order is gone through by branch and
 * bound, begun from the better of earliest due date and modified due date. Where that takes too many steps, the best
 * order found so far stands and is not called proven. `first` goes before all others.
 */
export function leastLate(jobs: readonly OpenJob[], hours: ShopHours, first?: string): Schedule {
  const days = daysFor(jobs, hours)
  const lateness = latenessOf(days)
  const lead = jobs.filter(({ key }) => key === first)
  const others = jobs.filter(({ key }) => key !== first)
  const tried = (order: OpenJob[]): Tried => ({ order, worth: worthOf(order, days, lateness) })
  const [byDue, byModified] = [earliestDue(others), modifiedDue(others, days)].map((order) =>
    tried([...lead, ...order]),
  ) as [Tried, Tried]
  const start = isBetter(byModified.worth, byDue.worth) ? byModified : byDue
  const count = days.works.length
  const best = exchanged(start, lead.length, DAYS_EXCHANGED / (count * jobs.length), (order, known) =>
    worthOf(order, days, lateness, known),
  )
  const most = jobs.length <= ALL_ORDERS ? Number.POSITIVE_INFINITY : DAYS_TRIED / count
  const search: Search = { jobs, days, lateness, best, tries: 0, most }
  const left = allLeft(days, jobs)
  const led = lead.map((job) => ({ job, run: fitIn(job, days, left) }))
  const so = led.reduce(
    (sum, { job, run }) => ({ late: sum.late + lateness(job, run), done: sum.done + run.done - hours.today }),
    { late: 0, done: 0 },
  )
  branch(search, lead, so, left)
  return scheduleOf(search.best.order, days, search.tries <= search.most)
}
