import { describe, expect, it } from 'vitest'
import type { OpenJob } from '../../../shared/schedule/chain.ts'
import { dayNumber } from '../../../shared/schedule/days.ts'
import type { ShopHours } from '../../../shared/schedule/hours.ts'
import { earliestDue, inThisOrder, leastLate } from '../../../shared/schedule/least-lateness.ts'
import { seeded } from '../route/random-profile.ts'

const today = dayNumber('2026-11-30')
const everyDay = { workDays: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const, closed: [] }
const bench: ShopHours = { ...everyDay, people: 1, minutesPerDay: 100, today }
const week: ShopHours = { ...bench, workDays: ['mon', 'tue', 'wed', 'thu', 'fri'], closed: ['2026-12-08'] }

const job = (key: string, days: number, due?: number): OpenJob => ({
  key,
  name: key,
  ...(due !== undefined && { due: today + due }),
  chain: [{ kind: 'work', name: 'turning', minutes: days * 100, atLathe: true }],
  lathe: 'Floor lathe',
})

/** Jobs of any shape: work at the lathe and away from it, waits, two lathes, some without a date. */
function randomJobs(seed: number, count: number): { jobs: OpenJob[]; hours: ShopHours } {
  const random = seeded(seed)
  const whole = (most: number): number => Math.floor(random() * (most + 1))
  const jobs = Array.from({ length: count }, (_, i): OpenJob => {
    const links = 1 + whole(3)
    return {
      key: `j${i}`,
      name: `Job ${i}`,
      ...(random() < 0.85 && { due: today + whole(14) }),
      chain: Array.from({ length: links }, () =>
        random() < 0.3
          ? ({ kind: 'wait', name: 'glue cures', days: whole(3) } as const)
          : ({ kind: 'work', name: 'work', minutes: whole(350), atLathe: random() < 0.6 } as const),
      ),
      ...(random() < 0.9 && { lathe: random() < 0.6 ? 'Floor lathe' : 'Small lathe' }),
    }
  })
  return { jobs, hours: { ...(random() < 0.5 ? week : bench), people: 1 + whole(2) } }
}

/** Every order of a list. */
function* orders<T>(of: readonly T[]): Generator<T[]> {
  if (of.length === 0) yield []
  for (const [i, one] of of.entries())
    for (const rest of orders([...of.slice(0, i), ...of.slice(i + 1)])) yield [one, ...rest]
}

/** Whether a shop works on a numbered day, by the calendar of the language. */
function isOpen({ workDays, closed }: ShopHours, day: number): boolean {
  const date = new Date(day * 86_400_000)
  const name = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][date.getUTCDay()] as 'mon'
  return workDays.includes(name) && !closed.includes(date.toISOString().slice(0, 10))
}

/**
 * Days late of an order, as the model says it in words, written apart from the program: each job in turn takes what
 * those before it left of people and lathes, and a batch keeps its lathe over every night between its first day and
 * its last. Who has a lathe is kept by nights, and every first day is tried.
 */
function lateByNights(jobs: readonly OpenJob[], hours: ShopHours): number {
  const { people, minutesPerDay } = hours
  const used = new Map<string, number>()
  const night = new Map<string, string>()
  const free = (who: string, day: number, of: number): number =>
    (isOpen(hours, day) ? of : 0) - (used.get(`${who} ${day}`) ?? 0)
  const use = (who: string, day: number, minutes: number) =>
    used.set(`${who} ${day}`, (used.get(`${who} ${day}`) ?? 0) + minutes)
  let total = 0
  for (const { key, chain, lathe, due } of jobs) {
    let [day, own] = [today, minutesPerDay]
    for (const [i, link] of chain.entries()) {
      if (link.kind === 'wait') {
        if (link.days > 0) [day, own] = [day + link.days, minutesPerDay]
        continue
      }
      const held = link.atLathe ? lathe : undefined
      for (let first = day; ; first++) {
        let [todo, at, mine] = [link.minutes, first, first === day ? own : minutesPerDay]
        const parts: [number, number][] = []
        let isFree = true
        while (todo > 1e-6 && isFree) {
          const most = Math.min(mine, free('people', at, people * minutesPerDay), todo)
          const part = held ? Math.min(most, free(held, at, minutesPerDay)) : most
          if (part > 1e-6) parts.push([at, part])
          todo -= part
          mine -= part
          if (todo <= 1e-6) break
          if (held && parts.length > 0 && night.has(`${held} ${at}`)) isFree = false
          at++
          mine = minutesPerDay
        }
        const [start, end] = [parts[0]?.[0] ?? at, parts.at(-1)?.[0] ?? at]
        const [before, after] = [night.get(`${held} ${start - 1}`), night.get(`${held} ${start}`)]
        // In the middle of another batch’s stay there is no place for a batch of one day either.
        if (parts.length > 0 && start === end && before !== undefined && before === after) isFree = false
        // Nor may a batch stay over a day on which another has had the lathe.
        for (let d = start + 1; d < end; d++) if (used.has(`${held} ${d}`)) isFree = false
        if (!isFree) continue
        for (const [when, minutes] of parts) {
          use('people', when, minutes)
          if (held) use(held, when, minutes)
        }
        if (held) for (let d = start; d < end; d++) night.set(`${held} ${d}`, `${key} ${i}`)
        ;[day, own] = [at, mine]
        break
      }
    }
    while (!isOpen(hours, day)) day++
    for (let late = (due ?? Number.POSITIVE_INFINITY) + 1; late <= day; late++)
      if (isOpen(hours, late)) total++
  }
  return total
}

describe('the order of open jobs', () => {
  it('is the one late by the fewest days of all orders, up to six jobs of any shape', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { jobs, hours } = randomJobs(seed, 2 + (seed % 5))
      const found = leastLate(jobs, hours)
      const least = Math.min(...[...orders(jobs)].map((order) => lateByNights(order, hours)))
      expect(found.proven).toBe(true)
      expect(found.totalLate, `seed ${seed}`).toBe(least)
      const order = found.order.map((key) => jobs.find((one) => one.key === key)!)
      expect(lateByNights(order, hours), `seed ${seed}`).toBe(least)
    }
  })

  it('is so where moving one job at a time does not lead there', () => {
    for (const seed of [70, 280, 409]) {
      const { jobs, hours } = randomJobs(seed, 6)
      const least = Math.min(...[...orders(jobs)].map((order) => lateByNights(order, hours)))
      expect(leastLate(jobs, hours).totalLate, `seed ${seed}`).toBe(least)
    }
  })

  it('is so with eight jobs too', () => {
    const { jobs, hours } = randomJobs(101, 8)
    const found = leastLate(jobs, hours)
    expect(found.proven).toBe(true)
    let least = Number.POSITIVE_INFINITY
    for (const order of orders(jobs)) least = Math.min(least, lateByNights(order, hours))
    expect(found.totalLate).toBe(least)
  })

  it('is that of the due dates where nothing need be late', () => {
    const jobs = [job('c', 2, 9), job('a', 1, 1), job('b', 3, 4)]
    const found = leastLate(jobs, bench)
    expect(found.totalLate).toBe(0)
    // the greatest lateness of one bench is least by due dates (Jackson 1955)
    expect(inThisOrder(earliestDue(jobs), bench).late).toEqual([0, 0, 0])
  })

  it('puts the shorter of two jobs that are both late first', () => {
    // one bench, no waits: 1 + 5 days either way, so the short one late by 1 costs less than the long one first
    const found = leastLate([job('long', 5, 0), job('short', 1, 0)], bench)
    expect(found.order).toEqual(['short', 'long'])
    expect(found.late).toEqual([0, 5])
  })

  it('is never later than by due dates, with twenty jobs', () => {
    for (let seed = 201; seed <= 206; seed++) {
      const { jobs, hours } = randomJobs(seed, 20)
      expect(leastLate(jobs, hours).totalLate).toBeLessThanOrEqual(
        inThisOrder(earliestDue(jobs), hours).totalLate,
      )
    }
  })

  it('lets one job go first and the others follow as well as they can', () => {
    const { jobs, hours } = randomJobs(7, 5)
    const found = leastLate(jobs, hours, 'j3')
    expect(found.order[0]).toBe('j3')
    const least = Math.min(
      ...[...orders(jobs)]
        .filter(([first]) => first!.key === 'j3')
        .map((order) => lateByNights(order, hours)),
    )
    expect(found.totalLate).toBe(least)
  })

  it('says the same for the same jobs, however often it is asked', () => {
    const { jobs, hours } = randomJobs(31, 7)
    expect(leastLate(jobs, hours)).toEqual(leastLate(jobs, hours))
  })
})

describe('the days of an order', () => {
  it('fill a wait of one job with work of another', () => {
    const glued: OpenJob = {
      ...job('glued', 0),
      chain: [
        { kind: 'work', name: 'glue', minutes: 50, atLathe: false },
        { kind: 'wait', name: 'glue cures', days: 1 },
        { kind: 'work', name: 'turning', minutes: 100, atLathe: true },
      ],
    }
    const [first, other] = inThisOrder([glued, job('other', 0.5)], bench).runs
    expect(first!.done - today).toBe(1)
    expect(other!.done - today).toBe(0)
  })

  it('keep a batch on its lathe until it is turned, whoever waits', () => {
    const cured: OpenJob = {
      ...job('cured', 2),
      chain: [
        { kind: 'wait', name: 'glue cures', days: 2 },
        { kind: 'work', name: 'turning', minutes: 200, atLathe: true },
      ],
    }
    // The lathe is free for two days, then taken for two: what takes three days begins behind them.
    const [first, three, two] = inThisOrder([cured, job('three', 3), job('two', 2)], bench).runs
    expect([first!.start, first!.done].map((day) => day - today)).toEqual([2, 3])
    expect([three!.start, three!.done].map((day) => day - today)).toEqual([4, 6])
    expect([two!.start, two!.done].map((day) => day - today)).toEqual([0, 1])
  })

  it('let no batch come between the days of another on the same lathe', () => {
    for (let seed = 401; seed < 440; seed++) {
      const { jobs, hours } = randomJobs(seed, 7)
      const stays = inThisOrder(jobs, hours).runs.flatMap(({ bars }, i) =>
        jobs[i]!.chain.flatMap((link, l) => {
          const days = bars.filter((bar) => bar.link === l).map(({ day }) => day)
          const isTurned = link.kind === 'work' && link.atLathe && jobs[i]!.lathe !== undefined
          return isTurned && days.length > 0 ? [{ lathe: jobs[i]!.lathe, days }] : []
        }),
      )
      for (const one of stays)
        for (const other of stays.filter((each) => each !== one && each.lathe === one.lathe))
          for (const day of other.days)
            expect(one.days.some((d) => d < day) && one.days.some((d) => d > day), `seed ${seed}`).toBe(false)
    }
  })

  it('are never sooner for a job that is put behind others', () => {
    for (let seed = 501; seed < 530; seed++) {
      const { jobs, hours } = randomJobs(seed, 6)
      const last = jobs.at(-1)!
      const doneBehind = (count: number): number =>
        inThisOrder([...jobs.slice(0, count), last], hours).runs.at(-1)!.done
      for (let count = 1; count < jobs.length; count++)
        expect(doneBehind(count), `seed ${seed}`).toBeGreaterThanOrEqual(doneBehind(count - 1))
    }
  })

  it('give no job more than one person and no lathe more than one day', () => {
    for (let seed = 301; seed < 330; seed++) {
      const { jobs, hours } = randomJobs(seed, 6)
      const used = new Map<string, number>()
      const use = (name: string, minutes: number) => used.set(name, (used.get(name) ?? 0) + minutes)
      for (const [i, run] of inThisOrder(jobs, hours).runs.entries())
        for (const { day, minutes, link } of run.bars) {
          use(`people ${day}`, minutes / hours.people)
          use(`job ${i} ${day}`, minutes)
          const work = jobs[i]!.chain[link]!
          if (work.kind === 'work' && work.atLathe && jobs[i]!.lathe) use(`${jobs[i]!.lathe} ${day}`, minutes)
        }
      for (const [name, minutes] of used)
        expect(minutes, name).toBeLessThanOrEqual(hours.minutesPerDay + 1e-6)
    }
  })

  it('do all the work that there is, on days the shop works', () => {
    const { jobs } = randomJobs(12, 6)
    for (const [i, run] of inThisOrder(jobs, week).runs.entries()) {
      const done = run.bars.reduce((sum, { minutes }) => sum + minutes, 0)
      const asked = jobs[i]!.chain.reduce((sum, link) => sum + (link.kind === 'work' ? link.minutes : 0), 0)
      expect(done).toBeCloseTo(asked, 3)
      for (const { day } of run.bars)
        expect([1, 2, 3, 4, 5]).toContain(new Date(day * 86_400_000).getUTCDay())
    }
  })
})
