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

/** What is left of a lathe: minutes of every day, and the days from and to which batches stay on it. */
interface LatheLeft {
  minutes: Float64Array
  held: (readonly [from: number, to: number])[]
}

/** What is left of every day: minutes of all people, and of each lathe. */
export interface Left {
  people: Float64Array
  lathes: ReadonlyMap<string, LatheLeft>
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
    lathes: new Map([...lathes].map((name) => [name, { minutes: each(hours.minutesPerDay), held: [] }])),
  }
}

/** Where the work of a job stands while it is fitted in. */
interface Hand {
  day: number
  /** Minutes that one person still has on that day. */
  own: number
}

/** Minutes of one link by day, and where its work stands after them; `todo` is what found no day. */
interface Taken {
  days: { day: number; minutes: number }[]
  hand: Hand
  todo: number
}

/** Takes all that is left of every day from `start` on until the work is done. */
function takenFrom(
  start: Hand,
  minutes: number,
  { hours, works }: Days,
  left: Left,
  lathe?: LatheLeft,
): Taken {
  const taken: Taken = { days: [], hand: { ...start }, todo: minutes }
  const { days, hand } = taken
  while (taken.todo > SHAVE && hand.day < works.length) {
    const free = lathe?.minutes[hand.day] ?? Number.POSITIVE_INFINITY
    const now = Math.min(taken.todo, hand.own, left.people[hand.day]!, free)
    if (now > SHAVE) {
      days.push({ day: hand.day, minutes: now })
      hand.own -= now
      taken.todo -= now
    }
    if (taken.todo > SHAVE) Object.assign(hand, { day: hand.day + 1, own: hours.minutesPerDay })
  }
  return taken
}

/**
 * The soonest work on a lathe that no other batch breaks up: from its first day to its last it has the lathe to
 * itself, but for the first and the last, on which another may end or begin.
 */
function takenWhole(start: Hand, minutes: number, days: Days, left: Left, lathe: LatheLeft): Taken {
  let hand = start
  for (;;) {
    const taken = takenFrom(hand, minutes, days, left, lathe)
    const [first, last] = [taken.days[0]?.day, taken.days.at(-1)?.day]
    if (first === undefined || last === undefined) return taken
    const between = lathe.held.filter(([from, to]) => last > from && to > first)
    if (between.length === 0) return taken
    hand = { day: Math.min(...between.map(([, to]) => to)), own: days.hours.minutesPerDay }
  }
}

/**
 * Fits one job into what others have left of the days; `left` loses what it takes. On a day a job has one person at
 * the most and, at the lathe, its lathe; people change over between jobs within a day as they like (McNaughton,
 * Management Science 6 (1959) 1-12, from memory: where no job is longer than the day and all together are no longer
 * than everybody’s day, it can be done). A batch set up on a lathe stays until its turning is done: no other comes
 * between. Waits run over nights and closed days. Less left of any day never makes a job sooner.
 */
export function fitIn({ key, chain, lathe, from }: OpenJob, days: Days, left: Left): Run {
  const { hours, works } = days
  const { minutesPerDay, today } = hours
  const run: Run = { key, bars: [], waits: [], start: 0, done: 0, ends: true }
  let hand: Hand = { day: Math.max(0, (from ?? today) - today), own: minutesPerDay }
  chain.forEach((link, i) => {
    if (link.kind === 'wait') {
      if (link.days <= 0) return
      run.waits.push({ link: i, from: today + hand.day, to: today + hand.day + link.days })
      hand = { day: hand.day + link.days, own: minutesPerDay }
      return
    }
    const bench = link.atLathe && lathe !== undefined ? left.lathes.get(lathe) : undefined
    const taken = bench
      ? takenWhole(hand, link.minutes, days, left, bench)
      : takenFrom(hand, link.minutes, days, left)
    for (const { day, minutes } of taken.days) {
      run.bars.push({ day: today + day, minutes, link: i })
      left.people[day]! -= minutes
      if (bench) bench.minutes[day]! -= minutes
    }
    if (taken.days.length > 0) bench?.held.push([taken.days[0]!.day, taken.days.at(-1)!.day])
    hand = taken.hand
    if (taken.todo > SHAVE) run.ends = false
  })
  let done = hand.day
  while (done < works.length - 1 && !works[done]) done++
  run.done = today + done
  run.start = run.bars[0]?.day ?? run.done
  return run
}

/** What is left, to be used up along another way. */
export const copied = ({ people, lathes }: Left): Left => ({
  people: people.slice(),
  lathes: new Map(
    [...lathes].map(([name, { minutes, held }]) => [name, { minutes: minutes.slice(), held: [...held] }]),
  ),
})

/** All jobs in an order: each takes what those before it leave. */
export function runsInOrder(jobs: readonly OpenJob[], days: Days): Run[] {
  const left = allLeft(days, jobs)
  return jobs.map((job) => fitIn(job, days, left))
}
