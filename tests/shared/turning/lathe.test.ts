import { describe, expect, it } from 'vitest'
import { fastestRpm, slowestRpm, speedNotAbove } from '../../../shared/turning/lathe.ts'

const steps = { steps: [1200, 400, 3000, 600] }
const dial = { least: 55, most: 3200 }

describe('speedNotAbove', () => {
  it('takes the highest belt step that is not above, in whatever order they are listed', () => {
    expect(speedNotAbove(steps, 1199.9)).toBe(600)
    expect(speedNotAbove(steps, 1200)).toBe(1200)
    expect(speedNotAbove(steps, 9999)).toBe(3000)
  })

  it('sets a dial down to a whole ten, but never below its least', () => {
    expect(speedNotAbove(dial, 628.5)).toBe(620)
    expect(speedNotAbove(dial, 630)).toBe(630)
    expect(speedNotAbove(dial, 57)).toBe(55)
    expect(speedNotAbove(dial, 5000)).toBe(3200)
  })

  it('has nothing to offer under the slowest speed', () => {
    expect(speedNotAbove(steps, 399)).toBeUndefined()
    expect(speedNotAbove(dial, 54)).toBeUndefined()
  })
})

describe('the ends of a lathe’s range', () => {
  it('are its slowest and fastest, by steps or by dial', () => {
    expect([slowestRpm(steps), fastestRpm(steps)]).toEqual([400, 3000])
    expect([slowestRpm(dial), fastestRpm(dial)]).toEqual([55, 3200])
  })
})
