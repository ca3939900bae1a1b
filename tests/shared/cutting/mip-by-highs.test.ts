import { beforeAll, describe, expect, it } from 'vitest'
import { highsSolver } from '../../../server/jobs/highs.ts'
import type { MipModel, MipSolver } from '../../../shared/cutting/mip.ts'
import { type HighsModule, mipBy } from '../../../shared/cutting/mip-by-highs.ts'

let mip: MipSolver
beforeAll(async () => {
  mip = await highsSolver()
})

/** A model from dense rows: `[coefficients, least, most]`. */
function modelOf(cost: number[], rows: [number[], number, number][], upper?: number[]): MipModel {
  const entries = cost.map((_, j) => rows.flatMap(([of], r) => (of[j] === 0 ? [] : [[r, of[j]!] as const])))
  let at = 0
  return {
    cost: Float64Array.from(cost),
    upper: Float64Array.from(upper ?? cost.map(() => Number.POSITIVE_INFINITY)),
    starts: Int32Array.from([0, ...entries.map((column) => (at += column.length))]),
    rows: Int32Array.from(entries.flat(), ([row]) => row),
    values: Float64Array.from(entries.flat(), ([, value]) => value),
    rowLower: Float64Array.from(rows, ([, least]) => least),
    rowUpper: Float64Array.from(rows, ([, , most]) => most),
  }
}

const endless = Number.POSITIVE_INFINITY
/** Coins of 4 and 7 that make at least 17, at 3 and 5 a coin: 4+4+4+7 = 19 for 14; 7+7+4 = 18 for 13. */
const coins = modelOf([3, 5], [[[4, 7], 17, endless]])

describe('the whole-number solver', () => {
  it('finds the least, in whole numbers, and its bound meets it', () => {
    const answer = mip(coins, { seconds: 10 })
    expect(answer.status).toBe('optimal')
    expect([...answer.columns!]).toEqual([1, 2])
    expect(answer.bound).toBeCloseTo(13, 6)
  })

  it('keeps columns under their most', () => {
    // With a single 7 at most: 4+4+4+7 for 14.
    const answer = mip(modelOf([3, 5], [[[4, 7], 17, endless]], [endless, 1]), { seconds: 10 })
    expect([...answer.columns!]).toEqual([3, 1])
  })

  it('tells of what it finds on the way', () => {
    const heard: number[] = []
    mip(coins, { seconds: 10, onBetter: (columns) => heard.push(3 * columns[0]! + 5 * columns[1]!) })
    expect(Math.min(...heard)).toBe(13)
  })

  it('says when there is no solution, or none below', () => {
    expect(mip(modelOf([1], [[[2], 3, 3]]), { seconds: 10 })).toMatchObject({ status: 'infeasible' })
    const none = mip(coins, { seconds: 10, below: 12.5 })
    expect(none).toEqual({ status: 'infeasible', bound: 12.5 })
    expect([...mip(coins, { seconds: 10, below: 13.5 }).columns!]).toEqual([1, 2])
  })

  it('gives every model back, also when solving fails', () => {
    let given = 0
    const broken: HighsModule = {
      createModel: () => ({
        options: { set: () => {} },
        info: { get: () => 0 },
        run: () => {
          throw new Error('out of memory')
        },
        getModelStatus: () => 0,
        getSolution: () => ({ colValue: new Float64Array(0) }),
        dispose: () => {
          given++
        },
      }),
    }
    expect(() => mipBy(broken)(coins, { seconds: 1 })).toThrow('out of memory')
    expect(given).toBe(1)
  })
})
