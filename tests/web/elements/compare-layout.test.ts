import { describe, expect, it } from 'vitest'
import { compareLayout } from '../../../web/elements/compare-layout.ts'

const long = [
  { x: 0, r: 20 },
  { x: 800, r: 10 },
]
const short = [
  { x: 0, r: 15 },
  { x: 600, r: 30 },
]

describe('compareLayout', () => {
  it('lays both feet on one place, in one scale', () => {
    const { layout, feet, along } = compareLayout([long, short], 'foot', 1000)
    expect(feet).toEqual([0, 0])
    expect(layout.length / layout.scale).toBeCloseTo(800, 9)
    expect(layout.radius / layout.scale).toBeCloseTo(30, 9)
    expect(along(600) / layout.scale).toBeCloseTo(600, 9)
  })

  it('lays both tops on one place: the shorter part starts where the longer is 200 mm on', () => {
    const { layout, feet, along } = compareLayout([long, short], 'top', 1000)
    expect(feet[0]).toBe(0)
    expect(feet[1] / layout.scale).toBeCloseTo(200, 9)
    expect(along(0)).toBeCloseTo(layout.length, 9)
    expect(along(150) / layout.scale).toBeCloseTo(650, 9)
  })

  it('stands the parts upright on a narrow screen and stays within it', () => {
    const { layout } = compareLayout([long, short], 'foot', 320)
    expect(layout.vertical).toBe(true)
    expect(layout.width).toBeLessThanOrEqual(320)
  })
})
