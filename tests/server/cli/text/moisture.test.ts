import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planText } from '../../../../server/cli/text/plan.ts'
import { readJob } from '../../../../shared/job.ts'
import { planJob } from '../../../../shared/plan.ts'
import { defaultShop } from '../../../../shared/shop.ts'
import { benchLeg, dowel } from '../../../jobs.ts'

const woods = JSON.parse(readFileSync(new URL('../../../../seed/species.json', import.meta.url), 'utf8'))
const textOf = (job: object): string =>
  planText(planJob(readJob(job), defaultShop, woods), { style: 'mm' }).replace(/\s+/g, ' ')

describe('the blank of a plan in text', () => {
  it('says how much larger it is sawn where the wood has still to dry', () => {
    // sugar maple, 9.9 % along the rings: 33 mm at 8 % measures 33 × 0.967/0.9274 = 34.41 mm at 20 % (eq. 4-9)
    expect(textOf({ ...dowel(), lumber: { moisture: 20 } })).toMatch(
      /sawn 1\.41\d? mm larger each way, from 20 to 8 % moisture/,
    )
    expect(textOf(dowel())).not.toMatch(/larger each way/)
  })

  it('says where the glue lines lie', () => {
    // 2-1/4 in of three layers alike: 3/8 in off the axis
    expect(textOf(benchLeg())).toMatch(/9\.5 mm off the axis; no feather edges/)
    expect(textOf(dowel())).not.toMatch(/off the axis/)
  })
})
