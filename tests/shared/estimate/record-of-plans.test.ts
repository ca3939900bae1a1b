import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type LoggedStep, plannedSteps } from '../../../shared/estimate/planned-actual.ts'
import { type ShopRecord, shopRecord } from '../../../shared/estimate/record.ts'
import type { TimedBatch } from '../../../shared/estimate/record-cells.ts'
import { readJob } from '../../../shared/job.ts'
import { pieceOperations } from '../../../shared/piece.ts'
import { type Plan, partsOf, planJob } from '../../../shared/plan.ts'
import { operationKinds } from '../../../shared/route/kinds.ts'
import { defaultShop } from '../../../shared/shop.ts'
import type { Species } from '../../../shared/wood/species.ts'
import { chance } from '../../chance.ts'
import { benchLeg, dowel, fortyStations, knob } from '../../jobs.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]
const jobs = [benchLeg(), knob(), fortyStations(), dowel(), { ...benchLeg(), quantity: 4 }].map(readJob)

/** What the pieces of a batch are logged with: each time is the plan of a shop with true factors, and chance. */
function logged(plan: Plan, truth: Map<string, number>, { uniform, normal }: ReturnType<typeof chance>) {
  const rate = defaultShop.learningRate
  const perBlank = partsOf(plan) / plan.blank.count
  const day = 0.05 * normal()
  return pieceOperations(plan.operations).flatMap((operation) => {
    const own = 0.05 * normal()
    return Array.from({ length: partsOf(plan) }, (_, i): LoggedStep => {
      // Unit form, the figures being those of the tenth piece.
      const place = operation.learns ? ((i + 1) / 10) ** Math.log2(rate) : 1
      const usual = (operation.minutesEach / operation.factor! / perBlank) * place
      const error = uniform() < 0.05 ? 4 : 1
      const minutes = usual * truth.get(operation.kind)! * Math.exp(day + own + 0.15 * normal()) * error
      return { piece: i + 1, operation: operation.key, minutes, at: String(i).padStart(4, '0') }
    })
  })
}

/** A shop that makes five batches, each planned by what it knows by then, and what it knows in the end. */
function afterFiveBatches(seed: number): { truth: Map<string, number>; record: ShopRecord } {
  const chances = chance(seed)
  const kinds = Object.keys(operationKinds)
  const truth = new Map(kinds.map((kind) => [kind, 0.6 * (1.7 / 0.6) ** chances.uniform()]))
  const batches: TimedBatch[] = []
  for (const [i, job] of jobs.entries()) {
    const plan = planJob(job, defaultShop, woods, { record: shopRecord(batches, defaultShop) })
    const planned = {
      operations: plan.operations,
      perBlank: partsOf(plan) / plan.blank.count,
      learningRate: defaultShop.learningRate,
      minuteFactors: {},
    }
    batches.push({ job: `${i}`, steps: plannedSteps(logged(plan, truth, chances), planned) })
  }
  return { truth, record: shopRecord(batches, defaultShop) }
}

describe('the record of a shop that plans by it', () => {
  it('brings the work of a piece within 10 % of the truth after five batches of its own kinds', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { truth, record } = afterFiveBatches(seed)
      const each = (plan: Plan) => plan.operations.reduce((sum, operation) => sum + operation.minutesEach, 0)
      for (const job of jobs.slice(0, 4)) {
        const learned = planJob(job, defaultShop, woods, { record })
        const byTruth = planJob(job, { ...defaultShop, minuteFactors: Object.fromEntries(truth) }, woods)
        expect(Math.abs(each(learned) / each(byTruth) - 1), `${seed} ${job.name}`).toBeLessThan(0.1)
      }
    }
  })
})
