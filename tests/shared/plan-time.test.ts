import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Job, readJob } from '../../shared/job.ts'
import { planJob } from '../../shared/plan.ts'
import { defaultShop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { benchLeg, dowel, fortyStations, knob } from '../jobs.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]
const jobs = [benchLeg(), knob(), dowel(), fortyStations()].map(readJob)
const timeOf = (job: Job, shop = defaultShop, among = woods) => planJob(job, shop, among).time

describe('the time of a whole plan', () => {
  it.each(['unit', 'average'] as const)(
    'never falls for more pieces, spares, passes and sharpening among it: %s form',
    (learningForm) => {
      for (const job of jobs) {
        let before = 0
        for (let quantity = 1; quantity <= 40; quantity++) {
          const { minutes } = timeOf({ ...job, quantity }, { ...defaultShop, learningForm })
          expect(minutes, `${job.name} × ${quantity}`).toBeGreaterThanOrEqual(before)
          before = minutes
        }
      }
    },
  )

  it('is never less in a harder wood that is the same otherwise', () => {
    for (const job of jobs) {
      let before = 0
      for (let factor = 0.3; factor < 3; factor *= 1.1) {
        const harder = woods.map((wood) => ({ ...wood, hardnessN: (wood.hardnessN ?? 4500) * factor }))
        const { minutes } = timeOf(job, defaultShop, harder)
        expect(minutes, `${job.name} at ${factor}`).toBeGreaterThanOrEqual(before)
        before = minutes
      }
    }
  })

  it('has its days in order, dry or wet, and more of them where the wood must dry first', () => {
    for (const job of jobs) {
      const dry = timeOf(job).elapsed
      const wet = timeOf({ ...job, moisture: 40 }).elapsed
      for (const { p10, p50, p90 } of [dry, wet]) {
        expect(p10).toBeLessThanOrEqual(p50!)
        expect(p50).toBeLessThanOrEqual(p90!)
      }
      expect(wet.p10).toBeGreaterThan(dry.p90!)
    }
  })
})
