import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chances } from '../../../../shared/cutting/improve.ts'
import { stripsIn } from '../../../../shared/cutting/one-width/demand.ts'
import { fewestStrips } from '../../../../shared/cutting/one-width/fewest-strips.ts'
import { allOf, demandOf, faultsOf, fewestByTrying, small } from './demands.ts'

const endless = () => ({ steps: 0, isSpent: () => false })
const spent = () => ({ steps: 0, isSpent: () => true })

/** Falkenauer 1996: strips of 1000, each filled exactly by three lengths of 250 and more; so n / 3 are the fewest. */
function triplets(strips: number, seed: number) {
  const chance = chances(seed)
  const whole = (least: number, most: number) => least + Math.floor(chance() * (most - least + 1))
  const all = Array.from({ length: strips }, () => {
    const first = whole(380, 490)
    const second = whole(250, Math.ceil((1000 - first) / 2) - 1)
    return [first, second, 1000 - first - second]
  })
  return demandOf(1000, all.flat())
}

describe('fewestStrips', () => {
  it('finds as few as trying everything does, with a bound no higher', () => {
    fc.assert(
      fc.property(small, (demand) => {
        const { cuts, bound } = fewestStrips(demand, 1, endless())
        const fewest = fewestByTrying(demand, allOf(demand))
        expect(faultsOf(demand, cuts)).toEqual([])
        expect(stripsIn(cuts)).toBe(fewest)
        expect(bound).toBeLessThanOrEqual(fewest)
      }),
      { seed: 3, numRuns: 400 },
    )
  })

  it.each([
    [20, 1],
    [20, 2],
    [20, 3],
    [40, 4],
    [40, 5],
    [83, 6],
  ])('fills all of %i strips of three lengths to the end (seed %i)', (strips, seed) => {
    const demand = triplets(strips, seed)
    const { cuts, bound } = fewestStrips(demand, 1, endless())
    expect(faultsOf(demand, cuts)).toEqual([])
    expect([stripsIn(cuts), bound]).toEqual([strips, strips])
  })

  it('counts whole boards: strips that fill a board up are of no matter', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: 2, max: 4 }), (demand, perBoard) => {
        const { cuts, bound } = fewestStrips(demand, perBoard, endless())
        const fewest = Math.ceil(fewestByTrying(demand, allOf(demand)) / perBoard)
        expect(faultsOf(demand, cuts)).toEqual([])
        expect(Math.ceil(stripsIn(cuts) / perBoard)).toBe(fewest)
        expect(Math.ceil(bound / perBoard)).toBeLessThanOrEqual(fewest)
      }),
      { seed: 4, numRuns: 200 },
    )
  })

  it('ends by itself where the lengths by parts fill fewer strips than whole ones do', () => {
    // Fieldhouse 1990 (from memory): 259 / 132 strips by parts, three in whole ones.
    const demand = demandOf(132, [44, 44, 33, 33, 33, 12, 12, 12, 12, 12, 12])
    const { cuts, bound } = fewestStrips(demand, 1, endless())
    expect(fewestByTrying(demand, allOf(demand))).toBe(3)
    expect(stripsIn(cuts)).toBe(3)
    expect([2, 3]).toContain(bound)
  })

  it('has a plan and a bound even when patience is over at once', () => {
    const demand = triplets(20, 7)
    const { cuts, bound } = fewestStrips(demand, 1, spent())
    expect(faultsOf(demand, cuts)).toEqual([])
    expect(bound).toBe(20)
    expect(stripsIn(cuts)).toBeGreaterThanOrEqual(20)
  })

  it('gives the same cuts for the same lengths', () => {
    const demand = triplets(40, 8)
    expect(fewestStrips(demand, 1, endless())).toEqual(fewestStrips(structuredClone(demand), 1, endless()))
  })

  it('works in strips so long that nothing can be tabled', () => {
    // Every length and the room a million times as long.
    const { counts, lengths } = triplets(30, 9)
    const demand = { room: 1e9, lengths: lengths.map((length) => length * 1e6), counts }
    const { cuts, bound } = fewestStrips(demand, 1, endless())
    expect(faultsOf(demand, cuts)).toEqual([])
    expect([stripsIn(cuts), bound]).toEqual([30, 30])
  })
})
