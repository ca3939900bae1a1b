import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { quickCut } from '../../shared/cutting/quick.ts'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { readJob } from '../../shared/job.ts'
import { type LumberJob, lumberFor, poolsOf } from '../../shared/lumber.ts'
import { planJob } from '../../shared/plan.ts'
import { defaultShop, nominals, type Shop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { benchLeg, dowel } from '../jobs.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]
const shop: Shop = { ...defaultShop, name: 'Hill shop' }
const withYard: Shop = {
  ...shop,
  yards: [
    {
      ...usualTerms,
      name: 'Mill',
      prices: nominals.map((nominal) => ({ species: '*', nominal, grade: '*', pricePerBoardFoot: 10 })),
      minimumFeet: 500,
      minimumCharge: 5000,
    },
  ],
}
const lumberJob = (id: string, file: object, by = shop): LumberJob => ({
  id,
  plan: planJob(readJob({ ...benchLeg(), ...file }), by, woods),
})
const lumber = (jobs: LumberJob[], by = shop) =>
  lumberFor(jobs, by, woods, new Map(poolsOf(jobs, by).map(({ key, order }) => [key, quickCut(order)])))

describe('lumberFor', () => {
  it('asks once for the wood of jobs that want the same', () => {
    const [a, b] = [lumberJob('a', { name: 'Legs' }), lumberJob('b', { name: 'Posts', quantity: 4 })]
    const { asks, boardFeet } = lumber([a, b])
    expect(asks).toHaveLength(1)
    expect(asks[0]!.jobs.map(({ name }) => name)).toEqual(['Legs', 'Posts'])
    const net = a.plan.yard.boardFeet.net + b.plan.yard.boardFeet.net
    expect(asks[0]!.list.boardFeet.net).toBeCloseTo(net, 9)
    expect(boardFeet).toBe(asks[0]!.list.boardFeet.ask)
  })

  it('asks apart for other woods, thicknesses and wishes', () => {
    const jobs = [
      lumberJob('a', {}),
      lumberJob('b', { lumber: { grade: '1C' } }),
      lumberJob('c', { lumber: { sap: 'allowed' } }),
      lumberJob('d', { species: 'maple-sugar' }),
      { id: 'e', plan: planJob(readJob(dowel()), shop, woods) },
    ]
    const { asks, messages } = lumber(jobs)
    expect(asks).toHaveLength(5)
    expect(asks.map(({ list }) => list.grade)).toEqual(['FAS', '1C', 'FAS', 'FAS', 'FAS'])
    expect(messages.every((text) => text.length <= 320)).toBe(true)
  })

  it('says no sap where the heartwood is wanted, and nothing of it for woods that are pale throughout', () => {
    expect(lumber([lumberJob('a', {})]).messages[0]).toContain('no sap')
    expect(lumber([lumberJob('a', { species: 'maple-sugar' })]).messages[0]).not.toContain('no sap')
    const white = lumber([lumberJob('a', { species: 'maple-sugar', lumber: { sap: 'none' } })])
    expect(white.messages[0]).toContain('no sap')
  })

  it('compares what is bought together with each job alone, and is never dearer', () => {
    const jobs = [lumberJob('a', { quantity: 5 }), lumberJob('b', { quantity: 5, name: 'Posts' })]
    const [pool] = lumber(jobs).pooled
    expect(pool!.apart.cost).toBeCloseTo(jobs[0]!.plan.cut.cost + jobs[1]!.plan.cut.cost, 9)
    expect(pool!.together.cost).toBeLessThanOrEqual(pool!.apart.cost)
    expect(pool!.saved).toBeCloseTo(pool!.apart.cost - pool!.together.cost, 9)
    expect(pool!.together.lowerBound).toBeLessThanOrEqual(pool!.together.cost)
  })

  it('pools nothing where woods, dryness or grade differ', () => {
    expect(poolsOf([lumberJob('a', {}), lumberJob('b', { species: 'maple-sugar' })], shop)).toEqual([])
    expect(poolsOf([lumberJob('a', {}), lumberJob('b', { lumber: { dryness: 'air' } })], shop)).toEqual([])
    expect(poolsOf([lumberJob('a', {}), lumberJob('b', { lumber: { grade: '2A' } })], shop)).toEqual([])
  })

  it('never lets two jobs count on the same board on hand', () => {
    const { plan } = lumberJob('a', {})
    const { sawn, length, layerThickness } = plan.blank
    // Room for as many squares as one job takes, and no more.
    const board = {
      key: 'rack 1',
      species: 'walnut-black',
      width: sawn + 2 * shop.edgeTrim,
      length: plan.blank.count * plan.blank.layers * (length + shop.kerf) + 2 * shop.endTrim,
      thickness: layerThickness,
      count: 1,
    }
    const onRack = (id: string): LumberJob => ({
      id,
      plan: planJob(readJob(benchLeg()), shop, woods, { onHand: [board] }),
    })
    const jobs = [onRack('a'), onRack('b')]
    expect(jobs.map((job) => job.plan.yard.boardFeet.ask)).toEqual([0, 0])
    const { asks } = lumber(jobs)
    expect(asks).toHaveLength(1)
    expect(asks[0]!.list.boardFeet.net).toBeCloseTo(lumberJob('c', {}).plan.yard.boardFeet.net, 9)
  })

  it('uses up boards on hand where the plan for all leaves them lying', () => {
    const { plan } = lumberJob('a', {})
    const { sawn, length, layerThickness, count, layers } = plan.blank
    const board = {
      key: 'rack 1',
      species: 'walnut-black',
      width: sawn + 2 * shop.edgeTrim,
      length: count * layers * (length + shop.kerf) + 2 * shop.endTrim,
      thickness: layerThickness,
      count: 1,
    }
    const legs: LumberJob = {
      id: 'a',
      plan: planJob(readJob(benchLeg()), shop, woods, { onHand: [board] }),
    }
    const jobs = [legs, lumberJob('b', { name: 'Posts' })]
    // One plan for both that buys all of its wood.
    const bought = poolsOf(jobs, shop).map(({ key, order }) => {
      const boards = order.boards.filter(({ onHand }) => !onHand)
      return [key, quickCut({ ...order, boards })] as const
    })
    const { asks, onHand } = lumberFor(jobs, shop, woods, new Map(bought))
    expect(onHand.map(({ toBuy }) => toBuy)).toEqual([0, count * layers])
    expect(asks.map(({ jobs: of }) => of.map(({ id }) => id))).toEqual([['b']])
  })

  it('asks for nothing, and writes nothing, where the rack yields it all', () => {
    const answer = lumberFor([], shop, woods, new Map())
    expect(answer).toMatchObject({ asks: [], messages: [], boardFeet: 0, notes: [] })
  })

  it('reckons with the usual yard’s prices, and says what the yard sells from', () => {
    const { asks, cost, yard, notes } = lumber([lumberJob('a', {}, withYard)], withYard)
    expect(yard).toBe('Mill')
    expect(asks[0]!.cost).toBeCloseTo(asks[0]!.list.boardFeet.ask * 10, 9)
    expect(cost).toBeCloseTo(asks[0]!.cost!, 9)
    expect(notes.join(' ')).toContain('sells from 500 board feet on')
    expect(notes.join(' ')).toContain('5000 USD at least')
  })

  it('plans the cut at the usual yard’s prices too', () => {
    const { plan } = lumberJob('a', {}, withYard)
    const table: Shop = { ...shop, stock: shop.stock.map((row) => ({ ...row, pricePerBoardFoot: 10 })) }
    expect(plan.cut.cost).toBe(lumberJob('a', {}, table).plan.cut.cost)
    // By the gross tally 8 % more feet are billed.
    const gross: Shop = { ...withYard, yards: [{ ...withYard.yards[0]!, measure: 'gross' }] }
    expect(lumberJob('a', {}, gross).plan.cut.cost / plan.cut.cost).toBeCloseTo(1.08, 4)
  })

  it('tells what the yard does besides, and what that comes to where the feet tell it', () => {
    const yard = {
      ...withYard.yards[0]!,
      services: [
        { name: 'Surfacing', per: 'board-foot' as const, price: 0.5 },
        { name: 'Straight-line', per: 'foot' as const, price: 0.3 },
        { name: 'Delivery', per: 'order' as const, price: 40 },
      ],
    }
    const { services, boardFeet } = lumber([lumberJob('a', {})], { ...withYard, yards: [yard] })
    expect(services.map(({ cost }) => cost)).toEqual([boardFeet * 0.5, undefined, 40])
  })

  it('says that a gross tally bills more than is loaded', () => {
    const gross: Shop = { ...withYard, yards: [{ ...withYard.yards[0]!, measure: 'gross' }] }
    expect(lumber([lumberJob('a', {}, gross)], gross).notes.join(' ')).toContain('gross tally, 8 %')
  })

  it('weighs what is bought where its density is known', () => {
    const { mass, asks } = lumber([lumberJob('a', {})])
    // Black walnut at 8 %: some 590 kg/m³, 1.4 kg a board foot.
    expect(mass! / asks[0]!.list.boardFeet.ask / 1000).toBeGreaterThan(1.2)
    expect(mass! / asks[0]!.list.boardFeet.ask / 1000).toBeLessThan(1.6)
    const perFoot = (species: string, dryness: string) => {
      const answer = lumber([lumberJob('a', { species, lumber: { dryness } })])
      return answer.mass && answer.mass / answer.boardFeet
    }
    expect(perFoot('sapele', 'green')).toBeUndefined()
    // Green cherry holds 58 % (Wood Handbook table 4-1) at 0.47 on green volume: 742.6 kg/m³, a board foot 2,359.737 cm³.
    expect(perFoot('cherry-black', 'green')! / (0.47 * 1.58 * 2359.737216)).toBeCloseTo(1, 9)
  })
})
