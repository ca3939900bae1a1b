import { type OpenJob, workMinutes } from './chain.ts'
import { type Calendar, worksOn } from './days.ts'

/** The shop’s time: people, the minutes of each a day, the days. */
export interface ShopHours extends Calendar {
  people: number
  minutesPerDay: number
  /** The day from which work can be given out, as a number of days. */
  today: number
}

/** The days ahead, counted from today: whether the shop works on each. */
export interface Days {
  hours: ShopHours
  works: Uint8Array
}

/** Work of one job on one day. Minutes; `link` is the place in its chain. */
export interface Bar {
  day: number
  minutes: number
  link: number
}

/** How one job runs through the days; all days as numbers of days. */
export interface Run {
  key: string
  bars: Bar[]
  /** What is waited for: begun on day `from`, over on day `to`, when the work can go on. */
  waits: { link: number; from: number; to: number }[]
  /** The first day it is worked on. */
  start: number
  /** The day it is packed; the last day that is planned where it is not done by then. */
  done: number
  /** False where it is not done within the days that are planned. */
  ends: boolean
}

/** What is left of every day: minutes of all people, and of each lathe. */
export interface Left {
  people: Float64Array
  lathes: ReadonlyMap<string, Float64Array>
}

/** Days planned ahead at the most: fifteen years. */
const DAYS_MOST = 5500
/** A shave of binary noise is no work left. */
const SHAVE = 1e-6

/** Days enough for all jobs one after the other on whichever days the shop works. */
export function daysFor(jobs: readonly OpenJob[], hours: ShopHours): Days {
  const worked = jobs.reduce(
    (sum, { chain }) => sum + Math.ceil(workMinutes(chain) / hours.minutesPerDay) + 1,
    0,
  )
  const waited = jobs
    .flatMap(({ chain }) => chain)
    .reduce((sum, link) => sum + (link.kind === 'wait' ? link.days : 0), 0)
  const latest = Math.max(0, ...jobs.map(({ from = hours.today }) => from - hours.today))
  const weeks = Math.ceil(worked / hours.workDays.length) + 1
  const count = Math.min(DAYS_MOST, latest + 7 * weeks + waited + hours.closed.length + jobs.length * 7)
  const worksAt = worksOn(hours)
  return { hours, works: Uint8Array.from({ length: count }, (_, i) => (worksAt(hours.today + i) ? 1 : 0)) }
}

/** All the time of the shop, before any job is fitted in. */
export function allLeft({ hours, works }: Days, jobs: readonly OpenJob[]): Left {
  const each = (minutes: number): Float64Array => Float64Array.from(works, (open) => open * minutes)
  const lathes = new Set(jobs.flatMap(({ lathe }) => lathe ?? []))
  return {
    people: each(hours.people * hours.minutesPerDay),
    lathes: new Map([...lathes].map((name) => [name, each(hours.minutesPerDay)])),
  }
}

/** Where the work of a job stands while it is fitted in. */
interface Hand {
  day: number
  /** Minutes that one person still has on that day. */
  own: number
}

/**
 * Fits one job into what others have left of the days; `left` loses what it takes. On a day a job has one person at
 * the most and, at the lathe, its lathe; people change over between jobs within a day as they like (McNaughton,
 * Management Science 6 (1959) 1-12, from memory: where no job is longer than the day and all together are no longer
 * than everybody’s day, it can be done). Waits run over nights and closed days. Less left of any day never makes a
 * job sooner.
 */
export function fitIn({ key, chain, lathe, from }: OpenJob, { hours, works }: Days, left: Left): Run {
  const { minutesPerDay, today } = hours
  const bench = lathe === undefined ? undefined : left.lathes.get(lathe)
  const run: Run = { key, bars: [], waits: [], start: 0, done: 0, ends: true }
  const hand: Hand = { day: Math.max(0, (from ?? today) - today), own: minutesPerDay }
  const goTo = (day: number): void => {
    if (day > hand.day) Object.assign(hand, { day, own: minutesPerDay })
  }
  chain.forEach((link, i) => {
    if (link.kind === 'wait') {
      if (link.days <= 0) return
      run.waits.push({ link: i, from: today + hand.day, to: today + hand.day + link.days })
      goTo(hand.day + link.days)
      return
    }
    let todo = link.minutes
    while (todo > SHAVE && hand.day < works.length) {
      const machine = link.atLathe && bench ? bench[hand.day]! : Number.POSITIVE_INFINITY
      const minutes = Math.min(todo, hand.own, left.people[hand.day]!, machine)
      if (minutes > SHAVE) {
        run.bars.push({ day: today + hand.day, minutes, link: i })
        left.people[hand.day]! -= minutes
        if (link.atLathe && bench) bench[hand.day]! -= minutes
        hand.own -= minutes
        todo -= minutes
      }
      if (todo > SHAVE) goTo(hand.day + 1)
    }
    if (todo > SHAVE) run.ends = false
  })
  while (hand.day < works.length - 1 && !works[hand.day]) hand.day++
  run.done = today + hand.day
  run.start = run.bars[0]?.day ?? run.done
  return run
}

/** What is left, to be used up along another way. */
export const copied = ({ people, lathes }: Left): Left => ({
  people: people.slice(),
  lathes: new Map([...lathes].map(([name, days]) => [name, days.slice()])),
})

/** All jobs in an order: each takes what those before it leave. */
export function runsInOrder(jobs: readonly OpenJob[], days: Days): Run[] {
  const left = allLeft(days, jobs)
  return jobs.map((job) => fitIn(job, days, left))
}
