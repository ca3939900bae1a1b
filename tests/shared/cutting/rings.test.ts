import { describe, expect, it } from 'vitest'
import { heartOf, ringAngle, ringText, sawnWords } from '../../../shared/cutting/rings.ts'
import { board } from './orders.ts'

describe('ringAngle', () => {
  it('is the slope of the circle about the heart that runs through the place', () => {
    // Independent of the closed form: the ring is followed a little way, and its rise over its run is the slope.
    for (const [across, below] of [
      [30, 80],
      [120, 60],
      [200, -15],
      [-90, 140],
    ] as const) {
      const at = { across: 55, below: 22 }
      const [x, y] = [at.across - across, at.below - below]
      const radius = Math.hypot(x, y)
      const turn = Math.atan2(y, x)
      const along = (angle: number) => [radius * Math.cos(angle), radius * Math.sin(angle)] as const
      const [[x0, y0], [x1, y1]] = [along(turn - 1e-6), along(turn + 1e-6)]
      const slope = (Math.atan2(Math.abs(y1 - y0), Math.abs(x1 - x0)) * 180) / Math.PI
      expect(Math.abs(ringAngle({ across, below }, at) - slope)).toBeLessThan(1e-4)
    }
  })

  it('grows from the middle of a flat-sawn board to its edges', () => {
    const heart = { across: 100, below: 80 }
    const angles = [100, 120, 150, 190].map((across) => ringAngle(heart, { across, below: 26 }))
    expect(angles).toEqual([...angles].sort((a, b) => a - b))
    expect(angles[0]).toBe(0)
  })

  it('is 45° where the heart lies as far aside as below', () => {
    expect(ringAngle({ across: 0, below: 96 }, { across: 70, below: 26 })).toBeCloseTo(45, 12)
  })

  it('is called flat-sawn, rift or quarter-sawn', () => {
    expect([0, 29.9, 30, 60, 60.1, 90].map(sawnWords)).toEqual([
      'flat-sawn',
      'flat-sawn',
      'rift',
      'rift',
      'quarter-sawn',
      'quarter-sawn',
    ])
  })
})

describe('heartOf', () => {
  it('takes the heart as measured before a stripe of pith, and a stripe of pith before nothing', () => {
    const pith = { from: 0, to: 2000, across: [90, 110] as [number, number], kind: 'pith' }
    const heart = { across: 40, below: 200 }
    expect(heartOf({ thickness: 52, heart, defects: [pith] })).toEqual(heart)
    expect(heartOf({ thickness: 52, defects: [pith] })).toEqual({ across: 100, below: 26 })
    expect(heartOf(board('plain', 8, 96))).toBeUndefined()
  })
})

describe('ringText', () => {
  it('says nothing where the heart is not known', () => {
    expect(ringText({ thickness: 50 }, [[0, 50]])).toBeUndefined()
  })
})
