import { describe, expect, it } from 'vitest'
import { learnedFactors, shopRecord } from '../../../shared/estimate/record.ts'
import type { TimedBatch, TimedStep } from '../../../shared/estimate/record-cells.ts'
import type { OperationKind } from '../../../shared/route/kinds.ts'
import { chance } from '../../chance.ts'

const kinds: OperationKind[] = ['rough', 'size', 'bead', 'cove', 'taper', 'sand', 'nub', 'finish']
const shop = { minuteFactors: {}, timeSpread: 0.15 }

interface Simulated {
  batches: number
  pieces: number
  /** Standard deviations of logarithms: from piece to piece, of a kind in a batch, of a batch. */
  each: number
  kind: number
  common: number
  /** Share of times that are gross errors: a watch not stopped, a slip of the decimal point. */
  errors: number
}

/** A shop with true factors from 0.6 to 1.7, and what it logs. */
function simulatedShop(seed: number, how: Simulated) {
  const { uniform, normal } = chance(seed)
  const truth = new Map(kinds.map((kind) => [kind, 0.6 * (1.7 / 0.6) ** uniform()]))
  const erred = (): number => (uniform() < 0.7 ? 3 + 7 * uniform() : 0.1 + 0.2 * uniform())
  const batches: TimedBatch[] = Array.from({ length: how.batches }, (_, b) => {
    const day = how.common * normal()
    const steps = kinds.flatMap((kind) => {
      const own = how.kind * normal()
      const usual = 1 + 8 * uniform()
      return Array.from({ length: how.pieces }, (_, n): TimedStep => {
        const minutes = usual * truth.get(kind)! * Math.exp(day + own + how.each * normal())
        const isError = uniform() < how.errors
        return {
          operation: `${kind}-s1`,
          kind,
          usual,
          minutes: minutes * (isError ? erred() : 1),
          at: `${b} ${n}`,
        }
      })
    })
    return { job: `job ${b}`, steps }
  })
  return { truth, record: shopRecord(batches, shop) }
}

/** How far each factor of each of a hundred shops is from the truth, as a fraction of it. */
const misses = (how: Simulated): number[] =>
  Array.from({ length: 100 }, (_, i) => simulatedShop(i + 1, how)).flatMap(({ truth, record }) =>
    kinds.map((kind) => Math.abs(record.kinds[kind]!.factor / truth.get(kind)! - 1)),
  )
const shareWithin = (all: readonly number[], most: number): number =>
  all.filter((miss) => miss <= most).length / all.length

/** Chance of a standard normal figure below z, by Simpson from nine below the middle. */
function chanceBelow(z: number): number {
  const density = (t: number): number => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI)
  const h = (z + 9) / 1000
  let sum = density(-9) + density(z)
  for (let i = 1; i < 1000; i++) sum += density(-9 + i * h) * (i % 2 ? 4 : 2)
  return (sum * h) / 3
}

/**
 * The share of factors to be looked for within 10 %, by the normal law: chance itself strays √((common² + kind² +
 * each²/n)/batches) with the n times that are no errors, a robust mean a little more (95 % efficient, Huber 1964),
 * and the pull towards the default, bounded at 1.05 · 1.345 standard deviations of one time, leaves that much over.
 * The usual spreads of times stand for what the shop cannot know yet: 0.1 of a kind, 0.2 from piece to piece.
 */
function promised({ batches, pieces, each, kind, common, errors }: Simulated): number {
  const byChance = Math.sqrt((common ** 2 + kind ** 2 + each ** 2 / (pieces * (1 - errors))) / batches / 0.95)
  const left = ((1.05 * 1.345) / Math.hypot(0.1, 0.2)) * ((0.1 ** 2 + 0.2 ** 2 / pieces) / batches)
  return chanceBelow((Math.log(1.1) - left) / byChance)
}

const oneTime = (minutes: number): TimedBatch => ({
  job: 'a',
  steps: [{ operation: 'rough', kind: 'rough', usual: 3, minutes, at: '1' }],
})

describe('shopRecord', () => {
  it('recovers every true factor within 10 % after five batches of a dozen, a tenth of the times grossly wrong', () => {
    const all = misses({ batches: 5, pieces: 12, each: 0.15, kind: 0, common: 0, errors: 0.1 })
    expect(Math.max(...all)).toBeLessThanOrEqual(0.1)
  })

  it('recovers them as often as chance allows where a tenth of the times is grossly wrong and batches are small', () => {
    for (const pieces of [4, 8])
      for (const batchStrays of [0, 0.05]) {
        const how = { batches: 5, pieces, each: 0.15, kind: batchStrays, common: batchStrays, errors: 0.1 }
        expect(shareWithin(misses(how), 0.1), JSON.stringify(how)).toBeGreaterThanOrEqual(promised(how))
      }
  })

  it('comes nearer with every batch', () => {
    const how = { pieces: 6, each: 0.2, kind: 0.05, common: 0.05, errors: 0.1 }
    const mean = (batches: number): number => {
      const all = misses({ ...how, batches })
      return all.reduce((sum, miss) => sum + miss, 0) / all.length
    }
    const [one, five, twenty] = [mean(1), mean(5), mean(20)]
    expect(five).toBeLessThan(one / 1.5)
    expect(twenty).toBeLessThan(five / 1.5)
  })

  it('stays within 5 % of the default with one time, whatever it is', () => {
    for (const minutes of [1e-6, 0.01, 1, 2.9, 3, 3.1, 4, 8, 30, 3e3, 1e4]) {
      const { overall, kinds: known } = shopRecord([oneTime(minutes)], shop)
      expect(known.rough!.factor).toBeGreaterThan(1 / 1.05)
      expect(known.rough!.factor).toBeLessThan(1.05)
      expect(Math.abs(Math.log(overall))).toBeLessThan(Math.log(1.05))
    }
  })

  it('stays within 5 % of a setting of the shop too, with one time', () => {
    const {
      factor,
      own,
      default: setting,
    } = shopRecord([oneTime(30)], {
      ...shop,
      minuteFactors: { rough: 1.4 },
    }).kinds.rough!
    expect(setting).toBe(1.4)
    expect(factor).toBeGreaterThan(1.4)
    expect(factor).toBeLessThan(1.4 * 1.05)
    expect(own).toBeCloseTo(10, 9)
  })

  it('stays within 5 % where one wrong entry stands for a whole batch', () => {
    const steps = Array.from({ length: 8 }, () => oneTime(30).steps[0]!)
    expect(shopRecord([{ job: 'a', steps }], shop).kinds.rough!.factor).toBeLessThan(1.05)
  })

  it('counts batches and times, and those set aside; times of no minutes say nothing', () => {
    const steps = [3.1, 2.9, 3, 3.2, 60, 0].map((minutes, i) => ({
      ...oneTime(minutes).steps[0]!,
      at: String(i),
    }))
    const record = shopRecord([{ job: 'a', steps }, oneTime(3.05), { job: 'c', steps: [] }], shop)
    expect(record).toMatchObject({ times: 6, setAside: 1 })
    expect(record.kinds.rough).toMatchObject({ batches: 2, times: 6, setAside: 1 })
  })

  it('leaves aside a kind of operation that there is no more', () => {
    const old = { ...oneTime(3), steps: [{ ...oneTime(3).steps[0]!, kind: 'whittle' as OperationKind }] }
    expect(shopRecord([old], shop)).toMatchObject({ times: 0, kinds: {} })
  })

  it('leaves everything at its default without a time', () => {
    expect(shopRecord([], shop)).toEqual({
      batches: 0,
      times: 0,
      setAside: 0,
      overall: 1,
      kinds: {},
      spread: { batches: 0, common: 0.15, kind: 0.1, each: 0.2 },
    })
  })

  it('says how far this shop strays once there are batches enough', () => {
    const how = { batches: 60, pieces: 8, each: 0.1, kind: 0.06, common: 0.2, errors: 0 }
    const { spread } = simulatedShop(3, how).record
    // A standard deviation from 60 batches is itself known to 1/√(2·59) = 9 %; twice that, and a little for the defaults.
    expect(spread.common).toBeGreaterThan(0.2 * 0.78)
    expect(spread.common).toBeLessThan(0.2 * 1.22)
    expect(spread.each).toBeGreaterThan(0.1 * 0.9)
    expect(spread.each).toBeLessThan(0.1 * 1.1)
    expect(spread.kind).toBeGreaterThan(0.06 * 0.8)
    expect(spread.kind).toBeLessThan(0.06 * 1.2)
  })
})

describe('learnedFactors', () => {
  it('are the settings as they are until something was timed', () => {
    expect(learnedFactors({ sand: 1.3 })).toEqual({ sand: 1.3 })
    expect(learnedFactors({ sand: 1.3 }, shopRecord([], shop))).toEqual({ sand: 1.3 })
  })

  it('are the record’s for what was timed; what was not goes with the shop as a whole', () => {
    const factors = learnedFactors(
      { sand: 1.3 },
      {
        times: 9,
        overall: 0.9,
        kinds: { rough: { factor: 0.8, default: 1, own: 0.78, batches: 3, times: 9, setAside: 0 } },
      },
    )
    expect(factors.rough).toBe(0.8)
    expect(factors.sand).toBeCloseTo(1.17, 12)
    expect(factors.bead).toBeCloseTo(0.9, 12)
  })
})
