import { describe, expect, it } from 'vitest'
import { alike, numbered, runsOf } from '../../../../server/cli/text/runs.ts'

const laid = (says: string, from: number, to: number) => ({ says, from, to })

describe('runsOf', () => {
  it('takes like neighbours a kerf apart together', () => {
    const runs = runsOf([laid('leg', 25, 225), laid('leg', 228, 428), laid('leg', 431, 631)])
    expect(runs).toEqual([{ says: 'leg', from: 25, to: 631, each: 200, numbers: [1, 2, 3] }])
  })

  it('begins anew after a wider gap, at another kind and at another length', () => {
    const runs = runsOf([
      laid('leg', 0, 100),
      laid('leg', 150, 250),
      laid('leg', 253, 353),
      laid('rail', 356, 456),
      laid('rail', 459, 509),
    ])
    expect(runs.map(({ says, from, to, numbers }) => [says, from, to, numbers.length])).toEqual([
      ['leg', 0, 100, 1],
      ['leg', 150, 353, 2],
      ['rail', 356, 456, 1],
      ['rail', 459, 509, 1],
    ])
  })

  it('tells by its ends where each of a run lies', () => {
    let end = 10
    const all = [0, 3, 3, 40, 3, 3, 3, 12].map((gap) => {
      const from = end + gap
      end = from + 60
      return laid('leg', from, end)
    })
    const again = runsOf(all).flatMap(({ from, to, each, numbers: { length } }) => {
      const step = length === 1 ? 0 : (to - from - each) / (length - 1)
      return Array.from({ length }, (_, i) => laid('leg', from + i * step, from + i * step + each))
    })
    expect(again).toEqual(all)
  })

  it('takes nothing and one for what they are', () => {
    expect(runsOf([])).toEqual([])
    expect(runsOf([laid('leg', 5, 9)])[0]).toMatchObject({ each: 4, numbers: [1] })
  })
})

it('numbers are told as ranges', () => {
  expect(numbered('strip', [1])).toBe('strip 1')
  expect(numbered('strip', [1, 2, 3, 5, 7, 8])).toBe('strips 1–3, 5, 7–8')
})

it('alike texts are told with every place', () => {
  expect([...alike(['a', 'b', 'a'])]).toEqual([
    ['a', [0, 2]],
    ['b', [1]],
  ])
})
