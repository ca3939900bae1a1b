import { describe, expect, it } from 'vitest'
import { jointAngle, jointReach } from '../../../shared/profile/joint-reach.ts'
import { spansOf } from '../../../shared/profile/profile.ts'

const spans = spansOf({
  stations: [
    { at: 0, diameter: 40, then: 'straight' },
    { at: 400, diameter: 40, then: 'straight' },
  ],
  split: false,
})

describe('jointReach', () => {
  it('lays the second size of a mortise along the part, about its middle', () => {
    expect(jointReach({ kind: 'mortise', at: 100, size: [10, 60], depth: 25 }, spans)).toEqual({
      from: 70,
      to: 130,
    })
    expect(jointReach({ kind: 'mortise', at: 100, size: [60, 10], depth: 25 }, spans)).toEqual({
      from: 95,
      to: 105,
    })
  })
  it('gives a hole its diameter', () => {
    expect(jointReach({ kind: 'hole', at: 100, size: [12], depth: 25 }, spans)).toEqual({ from: 94, to: 106 })
  })
  it('takes a tenon to its end of the part, given by end, middle or shoulder', () => {
    for (const at of [0, 15, 30])
      expect(jointReach({ kind: 'tenon', at, size: [20], depth: 30 }, spans)).toEqual({ from: 0, to: 30 })
    for (const at of [370, 385, 400])
      expect(jointReach({ kind: 'tenon', at, size: [20], depth: 30 }, spans)).toEqual({ from: 370, to: 400 })
  })
  it('looks from face A towards B', () => {
    expect([jointAngle({}), jointAngle({ face: 'B' }), jointAngle({ angle: 45 })]).toEqual([0, 90, 45])
  })
})
