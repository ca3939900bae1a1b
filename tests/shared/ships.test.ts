import { describe, expect, it } from 'vitest'
import { handbookWoods } from '../../server/woods.ts'
import { readJob } from '../../shared/job.ts'
import { chainOf } from '../../shared/open-work.ts'
import type { Piece } from '../../shared/piece.ts'
import { partsOf, planJob } from '../../shared/plan.ts'
import { workMinutes } from '../../shared/schedule/chain.ts'
import { type ShipJob, shipsOf } from '../../shared/ships.ts'
import { defaultShop, type Shop } from '../../shared/shop.ts'
import { benchLeg, dowel } from '../jobs.ts'

const shop: Shop = { ...defaultShop, workDays: ['mon', 'tue', 'wed', 'thu', 'fri'] }
const monday = '2026-11-30'
const plan = (file: object) => planJob(readJob(file), shop, handbookWoods)
const open = (id: string, file: object, due?: string): ShipJob => ({
  id,
  state: 'draft',
  name: id,
  ...(due !== undefined && { due }),
  plan: plan(file),
})

describe('what is left of a job', () => {
  it('has all paid minutes of its plan, with rest, and every wait in its place', () => {
    const legs = plan(benchLeg())
    const chain = chainOf(legs, shop)
    expect(workMinutes(chain)).toBeCloseTo(legs.time.minutes * (1 + shop.restAllowance), 6)
    const waits = chain.flatMap((link, i) => (link.kind === 'wait' ? [{ ...link, i }] : []))
    expect(waits.map(({ name }) => name)).toEqual(['ripped strips rest', 'glue cures', 'finish dries'])
    // strips rest and glue cures before anything is turned; the finish dries behind all turning
    const turned = chain.findIndex((link) => link.kind === 'work' && link.atLathe)
    expect(waits[1]!.i).toBeLessThan(turned)
    expect(waits[2]!.i).toBeGreaterThan(chain.findLastIndex((link) => link.kind === 'work' && link.atLathe))
  })

  it('grows shorter with every operation logged, to nothing', () => {
    const legs = plan(benchLeg())
    const pieces = (done: string[]): Piece[] =>
      Array.from({ length: partsOf(legs) }, (_, i) => ({
        id: `p${i}`,
        job: 'j',
        number: i + 1,
        spare: false,
        done,
        progress: 0,
      }))
    const left = (done: string[]): number =>
      workMinutes(chainOf(legs, shop, { pieces: pieces(done), lastDone: new Map(), today: 0 }))
    const keys = legs.operations.map(({ key }) => key)
    let before = Number.POSITIVE_INFINITY
    for (let n = 0; n <= keys.length; n++) {
      const now = left(keys.slice(0, n))
      expect(now).toBeLessThanOrEqual(before + 1e-9)
      before = now
    }
    expect(before).toBe(0)
  })

  it('waits no longer for glue or a finish that was done days ago', () => {
    const legs = plan(benchLeg())
    const last = legs.operations.findLastIndex(({ kind }) => kind === 'finish' || kind === 'finish-on-lathe')
    const done = legs.operations.slice(0, last + 1).map(({ key }) => key)
    const pieces: Piece[] = [{ id: 'p', job: 'j', number: 1, spare: false, done, progress: 0 }]
    const waits = (today: number) =>
      chainOf(legs, shop, { pieces, lastDone: new Map([[legs.operations[last]!.key, 100]]), today }).filter(
        ({ kind }) => kind === 'wait',
      )
    expect(waits(100)).toHaveLength(1)
    expect(waits(110)).toEqual([])
  })
})

describe('a batch at the lathe', () => {
  const isTurned = (link: ReturnType<typeof chainOf>[number]) => link.kind === 'work' && link.atLathe

  it('stays on it while a piece is labelled between two cuts, and leaves it for what is done at the bench', () => {
    const legs = plan(benchLeg())
    const [first, last] = [
      legs.operations.findIndex(({ kind }) => kind === 'mount'),
      legs.operations.findLastIndex(({ kind, pass }) => kind === 'sand' && pass === 1),
    ]
    expect(legs.operations.slice(first, last).some(({ rpm, rpmCeiling }) => !rpm && !rpmCeiling)).toBe(true)
    const turned = legs.operations.slice(first, last + 1).reduce((sum, o) => sum + o.minutesEach, 0)
    const links = chainOf(legs, shop).filter(isTurned)
    // Blanks are turned one each here, and learning takes the first ones longer.
    const [longest] = links.map((link) => (link.kind === 'work' ? link.minutes : 0)).sort((a, b) => b - a)
    expect(longest).toBeGreaterThanOrEqual(turned * partsOf(legs))
  })

  it('waits for the coats of the pieces that have none yet, however many are packed', () => {
    const legs = plan(benchLeg())
    const all = legs.operations.map(({ key }) => key)
    const coat = legs.operations.findLastIndex(({ kind }) => kind === 'finish' || kind === 'finish-on-lathe')
    const piece = (number: number, done: string[]): Piece => ({
      id: `p${number}`,
      job: 'j',
      number,
      spare: false,
      done,
      progress: 0,
    })
    const waits = (second: string[]) =>
      chainOf(legs, shop, {
        pieces: [piece(1, all), piece(2, second)],
        lastDone: new Map([[all[coat]!, 100]]),
        today: 110,
      }).filter(({ kind }) => kind === 'wait')
    expect(waits(all.slice(0, coat))).toMatchObject([{ name: 'finish dries' }])
    expect(waits(all.slice(0, coat + 1))).toEqual([])
  })
})

describe('when jobs ship', () => {
  it('reckons with slow waits where nine in ten must be sure', () => {
    const one = open('dowels', { ...dowel(), finish: 'film' })
    const dries = (most: number): ShipJob => ({
      ...one,
      plan: {
        ...one.plan,
        waits: [{ name: 'finish dries', hours: 48, reach: { least: 48, usual: 48, most } }],
      },
    })
    const [fixed, slow] = [48, 192].map((most) => shipsOf([dries(most)], shop, monday).rows[0]!)
    expect(slow!.done).toBe(fixed!.done)
    // mean (48 + 4 · 48 + 192) / 6 = 72 h and sd 24 h: nine in ten take at most 72 + 1.2816 · 24 = 102.8 h, 5 days
    expect(slow!.sure.done > fixed!.sure.done).toBe(true)
    const chain = chainOf(dries(192).plan, shop)
    expect(chain.filter(({ kind }) => kind === 'wait')).toMatchObject([{ days: 2, slowDays: 5 }])
  })

  it('gives a job a better chance the later it is due', () => {
    const chances = ['2026-12-01', '2026-12-02', '2026-12-03', '2026-12-04', '2026-12-07', '2027-02-01'].map(
      (due) => shipsOf([open('legs', benchLeg(), due)], shop, monday).rows[0]!.chance!,
    )
    expect(chances[0]).toBeLessThan(0.05)
    expect(chances.at(-1)).toBeGreaterThan(0.999)
    for (const [i, chance] of chances.entries())
      if (i > 0) expect(chance).toBeGreaterThanOrEqual(chances[i - 1]!)
  })

  it('says half a chance of a date that the usual run just makes', () => {
    // A day so long that the work is done within it or not: the date is made when the work takes no longer.
    const one = open('dowels', { ...dowel(), finish: 'none' })
    const minutes = workMinutes(chainOf(one.plan, shop).filter((link) => link.kind === 'work'))
    const { p50, minutes: mean } = one.plan.time
    const day = { ...shop, hoursPerDay: (minutes * (p50 / mean)) / 60 }
    const noWaits = { ...one, plan: { ...one.plan, waits: [] }, due: monday }
    expect(shipsOf([noWaits], day, monday).rows[0]!.chance).toBeCloseTo(0.5, 1)
  })

  it('takes two jobs at once where two people work and each has its lathe', () => {
    const [a, b] = ['a', 'b'].map((id) => open(id, { ...benchLeg(), quantity: 40 })) as [ShipJob, ShipJob]
    const alone = shipsOf([a], shop, monday).rows[0]!.done
    const other = { ...b, plan: { ...b.plan, lathe: { ...b.plan.lathe!, name: 'Other lathe' } } }
    const rows = shipsOf([a, other], { ...shop, people: 2 }, monday).rows
    expect(rows.map(({ done }) => done)).toEqual([alone, alone])
    // one lathe for both: the second waits for it
    const shared = shipsOf([a, b], { ...shop, people: 2 }, monday).rows
    expect(shared[1]!.done > alone).toBe(true)
  })

  it('names who slips and by how much when another goes first', () => {
    const jobs = [
      open('soon', benchLeg(), '2026-12-07'),
      open('big', { ...benchLeg(), quantity: 60 }, '2027-06-01'),
    ]
    const { rows, slips, by } = shipsOf(jobs, shop, monday, { first: 'big' })
    expect(by).toBe('first')
    expect(rows[0]!.id).toBe('big')
    expect(slips).toMatchObject([{ id: 'soon' }])
    expect(slips[0]!.days).toBeGreaterThan(1)
  })
})
