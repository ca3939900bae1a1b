import { describe, expect, it } from 'vitest'
import { glueChoices } from '../../shared/glue-choices.ts'
import { readJob } from '../../shared/job.ts'
import { planJob } from '../../shared/plan.ts'
import { defaultShop, type Shop } from '../../shared/shop.ts'
import { benchLeg } from '../jobs.ts'
import { woods } from './wood/woods.ts'

const at = (nominal: Shop['stock'][number]['nominal'], pricePerBoardFoot?: number) => ({
  species: '*',
  nominal,
  ...(pricePerBoardFoot !== undefined && { pricePerBoardFoot }),
})

const shopWith = (...stock: Shop['stock']): Shop => ({ ...defaultShop, stock })

function choicesIn(shop: Shop, job: object = benchLeg()) {
  const read = readJob(job)
  return glueChoices(planJob(read, shop, woods), shop, woods)
}

/** Each with its nominal and layers, thin names first. */
const sizesOf = (choices: ReturnType<typeof choicesIn>) =>
  choices.map(({ nominal, layers }) => [nominal, layers] as const).sort(([a], [b]) => (a < b ? -1 : 1))

const of = (choices: ReturnType<typeof choicesIn>, nominal: string) =>
  choices.find((choice) => choice.nominal === nominal)!

describe('solid against glued side by side', () => {
  // The square is 2-1/4 in: with 1/4 in planing just 10/4. Layers by n·(t − 1/16) ≥ 2-1/4, odd: 4/4 and 8/4 three.
  const shop = shopWith(at('4/4', 8), at('8/4', 10), at('10/4', 15))
  const choices = choicesIn(shop)

  it('has each thickness of the shop’s table once, with its layers', () => {
    expect(sizesOf(choices)).toEqual([
      ['10/4', 1],
      ['4/4', 3],
      ['8/4', 3],
    ])
    expect(choices.every(({ listed }) => listed)).toBe(true)
  })

  it('marks the plan’s own way', () => {
    expect(choices.filter(({ chosen }) => chosen).map(({ nominal }) => nominal)).toEqual(['10/4'])
    const plan = planJob(readJob(benchLeg()), shop, woods)
    expect(of(choices, '10/4').boardFeet.bought).toBe(plan.boardFeet.bought)
  })

  it('asks gluing, its minutes and its day of curing of the glued ones only', () => {
    expect(of(choices, '10/4').gluing).toEqual({ minutes: 0, cost: 0 })
    for (const nominal of ['4/4', '8/4']) {
      const { gluing, waitDays } = of(choices, nominal)
      expect(gluing.minutes).toBeGreaterThan(0)
      // 45 an hour with 10 % for rest
      expect(gluing.cost).toBeCloseTo((gluing.minutes / 60) * 45 * 1.1, 9)
      expect(waitDays).toBe(of(choices, '10/4').waitDays + 1)
    }
  })

  it('adds up wood with the shop’s extra and work with its rest', () => {
    for (const { wood, work, cost, boardFeet } of choices) {
      expect(cost).toBeCloseTo(wood! + (work.minutes / 60) * 45 * 1.1, 9)
      expect(boardFeet.bought).toBeGreaterThan(0)
    }
    // billed by tally, 20 % extra
    expect(of(choices, '8/4').wood).toBeCloseTo(of(choices, '8/4').boardFeet.tallied * 10 * 1.2, 6)
  })

  it('puts the cheapest first', () => {
    const costs = choices.map(({ cost }) => cost!)
    expect(costs).toEqual([...costs].sort((a, b) => a - b))
  })
})

describe('thick stock the shop does not list', () => {
  const shop = shopWith(at('4/4', 8), at('8/4', 10))
  const choices = choicesIn(shop)
  const solid = of(choices, '10/4')

  it('is looked at where nothing listed does in one piece, the thinnest that does', () => {
    expect(choices.map(({ nominal }) => nominal).sort()).toEqual(['10/4', '4/4', '8/4'])
    expect(solid).toMatchObject({ layers: 1, listed: false, chosen: false })
    expect(solid.wood).toBeUndefined()
    expect(solid.cost).toBeUndefined()
  })

  it('pays up to the price at which it costs what the plan’s own way does', () => {
    const own = choices.find(({ chosen }) => chosen)!
    const priced = (price: number) =>
      of(choicesIn(shopWith(at('4/4', 8), at('8/4', 10), at('10/4', price))), '10/4').cost!
    expect(priced(solid.paysTo!)).toBeLessThanOrEqual(own.cost! + 1e-6)
    expect(priced(solid.paysTo! + 0.01)).toBeGreaterThan(own.cost!)
  })

  it('has no such price where the plan’s own wood has none', () => {
    const unpriced = choicesIn(shopWith(at('4/4'), at('8/4')))
    expect(unpriced.every(({ cost, paysTo }) => cost === undefined && paysTo === undefined)).toBe(true)
  })
})

it('leaves boards on hand out of it', () => {
  const shop = shopWith(at('8/4', 10))
  const board = { key: 'b1', species: 'walnut-black', width: 200, length: 2400, thickness: 50.8, count: 3 }
  const plan = planJob(readJob(benchLeg()), shop, woods, { onHand: [board] })
  expect(plan.boardFeet.onHand).toBeGreaterThan(0)
  const [choice] = glueChoices(plan, shop, woods).filter(({ nominal }) => nominal === '8/4')
  expect(choice!.boardFeet.bought).toBe(of(choicesIn(shop), '8/4').boardFeet.bought)
})

it('compares the halves of a split pair by their stock too', () => {
  const split = {
    name: 'Half columns',
    units: 'in',
    species: 'maple-sugar',
    quantity: 4,
    profile: {
      split: true,
      stations: [
        { at: 0, diameter: '2 in' },
        { at: '12', diameter: '2 in' },
      ],
    },
  }
  const choices = choicesIn(shopWith(at('5/4', 6), at('8/4', 9)), split)
  expect(sizesOf(choices)).toEqual([
    ['5/4', 2],
    ['8/4', 2],
  ])
})
