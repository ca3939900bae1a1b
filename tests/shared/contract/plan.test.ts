import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planSchema } from '../../../shared/contract/plan.ts'
import { readJob } from '../../../shared/job.ts'
import { planJob } from '../../../shared/plan.ts'
import { defaultShop, type Shop } from '../../../shared/shop.ts'
import type { Species } from '../../../shared/wood/species.ts'
import { benchLeg, dowel } from '../../jobs.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]

/** As it goes over the line. */
const sent = (file: object, shop: Shop = defaultShop): unknown =>
  JSON.parse(JSON.stringify(planJob(readJob(file), shop, woods)))

describe('the schema of a plan', () => {
  it('keeps every figure of stair parts', () => {
    const plan = sent({ ...dowel(), use: 'stair', stair: { run: 1200 } })
    expect(planSchema.parse(plan)).toEqual(plan)
    expect(plan).toMatchObject({
      stair: { run: { count: expect.any(Number) }, bending: { at: expect.any(Number) } },
    })
  })

  it('keeps where the rest goes and what the lot weighs', () => {
    const slender = {
      ...dowel(),
      lot: 'May maple',
      profile: {
        stations: [
          { at: 0, diameter: 20 },
          { at: 800, diameter: 20 },
        ],
      },
    }
    const lots = [{ name: 'May maple', species: 'maple-sugar', weighings: [] }]
    const plan = sent(slender, { ...defaultShop, lots })
    expect(planSchema.parse(plan)).toEqual(plan)
    expect(plan).toMatchObject({ part: { whip: { restAt: expect.any(Number) }, lot: { name: 'May maple' } } })
  })

  it('takes a plan without any of them', () => {
    const plan = sent(benchLeg())
    expect(planSchema.parse(plan)).toEqual(plan)
  })
})
