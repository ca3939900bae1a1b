import { describe, it } from 'vitest'
import { radii } from './radii.ts'

describe('a bead', () => {
  it('is a half round without a rise', () => {
    // circle of radius 10 on a cylinder of radius 15: 15 + √(100 − u²)
    radii(['bead', 20, 30, 30], { 0: 15, 2: 21, 4: 23, 10: 25, 16: 23, 18: 21, 20: 15 })
  })

  it('with a rise is the arc of that sagitta over its width', () => {
    // chord 24, rise 8: R = 13, centre 5 below the chord
    radii(['bead', 24, 30, 30, { rise: 8 }], { 0: 15, 7: 22, 12: 23, 17: 22, 24: 15 })
  })

  it('on a slope stands on the line between its ends', () => {
    radii(['bead', 24, 30, 54, { rise: 8 }], { 0: 15, 7: 25.5, 12: 29, 17: 30.5, 24: 27 })
  })

  it('with no rise is that line', () => radii(['bead', 24, 30, 54, { rise: 0 }], { 0: 15, 12: 21, 24: 27 }))

  it('with a very small rise is a parabola to a millionth', () => {
    // sagitta 1e-6: height 4·s·t(1−t), 3/4 s at a quarter
    radii(['bead', 100, 30, 30, { rise: 1e-6 }], { 25: 15 + 0.75e-6, 50: 15 + 1e-6 })
  })
})
