import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { baseMinutes } from '../../../shared/estimate/base-minutes.ts'
import { sizeFactor, timedOperations, woodFactor } from '../../../shared/estimate/minutes.ts'
import { readJob } from '../../../shared/job.ts'
import { planJob } from '../../../shared/plan.ts'
import { type OperationKind, operationKinds } from '../../../shared/route/kinds.ts'
import type { OperationDraft, Work } from '../../../shared/route/operation.ts'
import { defaultShop } from '../../../shared/shop.ts'

const kinds = Object.keys(operationKinds) as OperationKind[]
const nothing: Work = { length: 0, surface: 0, removed: 0, count: 0, diameter: 0 }

const draft = (kind: OperationKind, work: Partial<Work>): OperationDraft => ({
  key: kind,
  kind,
  name: kind,
  ...operationKinds[kind],
  pass: 1,
  where: null,
  tool: 'tool',
  work: { ...nothing, ...work },
  after: [],
  why: '',
})
const timed = (kind: OperationKind, work: Partial<Work>, hardnessN?: number) =>
  timedOperations([draft(kind, work)], { hardnessN })[0]!

const works = fc.record({
  length: fc.double({ min: 0, max: 2000, noNaN: true }),
  surface: fc.double({ min: 0, max: 1e6, noNaN: true }),
  removed: fc.double({ min: 0, max: 1e7, noNaN: true }),
  count: fc.integer({ min: 0, max: 60 }),
  diameter: fc.double({ min: 0, max: 400, noNaN: true }),
})

describe('timedOperations', () => {
  it('gives every kind of operation minutes: none is done in no time', () => {
    for (const kind of kinds) {
      expect(timed(kind, nothing).minutesEach, kind).toBeGreaterThan(0)
      expect(timed(kind, nothing).minutesOnce, kind).toBeGreaterThanOrEqual(0)
    }
  })

  it('never takes less for more of any kind of work', () => {
    const kind = fc.constantFrom(...kinds)
    fc.assert(
      fc.property(kind, works, works, (k, a, b) => {
        const more = Object.fromEntries(
          Object.entries(a).map(([name, x]) => [name, Math.max(x, b[name as keyof Work])]),
        )
        for (const part of ['minutesOnce', 'minutesEach'] as const)
          expect(timed(k, more)[part]).toBeGreaterThanOrEqual(timed(k, a)[part])
      }),
      { numRuns: 1000 },
    )
  })

  it('takes more for more wood, more length and more cuts wherever an edge forms the part', () => {
    for (const kind of kinds.filter((k) => operationKinds[k].stage === 'turning')) {
      const little = { length: 20, surface: 2000, removed: 10_000, count: 1, diameter: 40 }
      const lot = { length: 200, surface: 20_000, removed: 100_000, count: 2, diameter: 60 }
      expect(timed(kind, lot).minutesEach, kind).toBeGreaterThan(timed(kind, little).minutesEach)
    }
  })

  it('never takes less in a harder wood', () => {
    const hardness = fc.double({ min: 50, max: 30_000, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...kinds), works, hardness, hardness, (kind, work, a, b) => {
        const [soft, hard] = a < b ? [a, b] : [b, a]
        expect(timed(kind, work, hard).minutesEach).toBeGreaterThanOrEqual(
          timed(kind, work, soft).minutesEach,
        )
      }),
    )
  })

  it('does not let the wood change what is not cut', () => {
    for (const kind of ['mount', 'story-stick', 'check-set', 'pack'] as const) {
      const work = { length: 700, count: 8, diameter: 50 }
      expect(timed(kind, work, 9000)).toEqual(timed(kind, work, 2000))
    }
  })

  it('goes by the shop’s own factor for a kind, once and each', () => {
    const drafts = [draft('bead', { length: 12, count: 2 }), draft('cove', { length: 12, count: 2 })]
    const [bead, cove] = timedOperations(drafts, {})
    const [slow, same] = timedOperations(drafts, { minuteFactors: { bead: 1.5 } })
    expect(slow!.minutesEach).toBeCloseTo(1.5 * bead!.minutesEach, 12)
    expect(slow!.minutesOnce).toBeCloseTo(1.5 * bead!.minutesOnce, 12)
    expect(same).toEqual(cove)
    expect([slow!.factor, same!.factor]).toEqual([1.5, 1])
  })

  it('leaves everything else about an operation as it was', () => {
    const { minutesOnce, minutesEach, factor, ...rest } = timed('rough', { length: 500 })
    expect(rest).toEqual(draft('rough', { length: 500 }))
    expect(minutesOnce + minutesEach).toBeGreaterThan(0)
    expect(factor).toBe(1)
  })

  it('has figures for every kind of operation', () => {
    expect(Object.keys(baseMinutes).sort()).toEqual([...kinds].sort())
  })
})

describe('woodFactor and sizeFactor', () => {
  it('take a wood without a hardness for a middling one', () => {
    expect(woodFactor(undefined)).toBe(woodFactor(4500))
  })

  it('stay within reason at the ends', () => {
    expect(woodFactor(1)).toBeGreaterThanOrEqual(0.5)
    expect(woodFactor(1e6)).toBeLessThanOrEqual(2)
    expect(sizeFactor(0)).toBeGreaterThanOrEqual(0.5)
    expect(sizeFactor(1e6)).toBeLessThanOrEqual(3)
  })
})

describe('the minutes of whole parts, against a turner’s own idea of them', () => {
  const woods = JSON.parse(readFileSync(new URL('../../../seed/species.json', import.meta.url), 'utf8'))
  const atTheLathe = new Set(['layout', 'set-up', 'turning', 'sanding'])
  const minutesOfPiece = (job: unknown): number => {
    const { operations, blank } = planJob(readJob(job), defaultShop, woods)
    const minutes = operations
      .filter((o) => atTheLathe.has(o.stage))
      .reduce((sum, o) => sum + o.minutesEach, 0)
    return minutes / blank.stock.perBlank
  }

  // The tenth piece in the hands of an experienced turner: common practice, no source.
  it('is 20 to 35 for a 28 in furniture leg with a few beads', () => {
    const stations = [
      { at: '0', diameter: '1 1/8' },
      { at: '1', diameter: '1 3/8', then: 'bead', rise: '1/8' },
      { at: '1 1/2', diameter: '1 3/8', then: 'cove', depth: '1/8' },
      { at: '2 1/4', diameter: '1 1/4' },
      { at: '18', diameter: '1 7/8', then: 'bead', rise: '1/8' },
      { at: '18 1/2', diameter: '1 3/4' },
      { at: '22', diameter: '1 3/4', then: 'square', side: '2 1/4' },
      { at: '28' },
    ]
    const leg = { name: 'Leg', units: 'in', species: 'walnut-black', quantity: 8, profile: { stations } }
    expect(minutesOfPiece(leg)).toBeGreaterThan(20)
    expect(minutesOfPiece(leg)).toBeLessThan(35)
  })

  it('is 12 to 20 for a plain baluster', () => {
    const stations = [
      { at: '0', then: 'square', side: '1 1/4' },
      { at: '6', diameter: '1 1/8', then: 'bead', rise: '1/16' },
      { at: '6 1/2', diameter: '3/4' },
      { at: '20', diameter: '1 1/8' },
      { at: '26', diameter: '1', then: 'square', side: '1 1/4' },
      { at: '32' },
    ]
    for (const species of ['yellow-poplar', 'maple-sugar']) {
      const baluster = { name: 'Baluster', units: 'in', species, quantity: 40, profile: { stations } }
      expect(minutesOfPiece(baluster)).toBeGreaterThan(12)
      expect(minutesOfPiece(baluster)).toBeLessThan(20)
    }
  })

  it('is 4 to 8 for a 1-1/2 in knob turned several to a stick', () => {
    const stations = [
      { at: '0', diameter: '3/4', then: 'cove' },
      { at: '1/2', diameter: '3/4' },
      { at: '5/8', diameter: '1 1/8', then: 'ovolo' },
      { at: '1', diameter: '1 1/2', then: 'cavetto' },
      { at: '1 3/8', diameter: '1/4' },
    ]
    const knob = {
      name: 'Knob',
      units: 'in',
      species: 'maple-sugar',
      quantity: 24,
      mount: 'chuck',
      perBlank: 'auto',
      profile: { stations },
    } // prettier-ignore
    expect(minutesOfPiece(knob)).toBeGreaterThan(4)
    expect(minutesOfPiece(knob)).toBeLessThan(8)
  })
})
