import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { defaultShop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { exampleJob } from '../../web/example-job.ts'
import { livePlan } from '../../web/live-plan.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]

it('the example can be planned as it stands, square top and mortise included', () => {
  const { plan, errors } = livePlan(exampleJob(), { shop: defaultShop, woods, onHand: [] })
  expect(errors).toEqual([])
  expect(plan?.part.length).toBeCloseTo(11 * 25.4, 9)
  expect(plan?.blank.side).toBeCloseTo(1.75 * 25.4, 9)
  expect(plan?.operations.map(({ kind }) => kind)).toEqual(
    expect.arrayContaining(['mortise', 'bead', 'cove', 'ovolo']),
  )
})
