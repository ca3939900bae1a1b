import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cornerAngle,
  faceArea,
  halfFlat,
  overlap,
  roundSection,
  type Section,
  secondMoment,
  sectionArea,
  squareSection,
} from '../../../shared/profile/section.ts'
import { near } from '../../near.ts'

/** Area ∫R²/2 dθ and polar moment ∫R⁴/4 dθ of the boundary R(θ), by the midpoint rule on an eighth. */
function byHand({ half, radius }: Section) {
  const n = 40_000
  const sums = [0, 0]
  for (let i = 0; i < n; i++) {
    const R = Math.min(radius, half / Math.cos(((i + 0.5) / n) * (Math.PI / 4)))
    sums[0]! += (8 * (Math.PI / 4 / n) * R ** 2) / 2
    sums[1]! += (8 * (Math.PI / 4 / n) * R ** 4) / 4
  }
  return { area: sums[0]!, secondMoment: sums[1]! / 2 }
}

describe('a section', () => {
  it('round: πr² and πr⁴/4', () => {
    near(sectionArea(roundSection(7)), Math.PI * 49, { rel: 1e-15 })
    near(secondMoment(roundSection(7)), (Math.PI * 7 ** 4) / 4, { rel: 1e-15 })
  })

  it('square: side² and side⁴/12', () => {
    near(sectionArea(squareSection(30)), 900, { rel: 1e-15 })
    near(secondMoment(squareSection(30)), 30 ** 4 / 12, { rel: 1e-15 })
  })

  it('a square with rounded corners: as polar integration of its boundary has it', () => {
    for (const radius of [20, 20.1, 22, 25, 28, 28.2, 28.3]) {
      const section = { half: 20, radius }
      const by = byHand(section)
      near(sectionArea(section), by.area, { rel: 1e-8 }, `area ${radius}`)
      near(secondMoment(section), by.secondMoment, { rel: 1e-8 }, `second moment ${radius}`)
    }
  })

  it('has flats and corners that make up the whole turn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: 0.9, max: 1.5, noNaN: true }),
        (half, share) => {
          const section = { half, radius: half * share }
          expect(4 * cornerAngle(section) + 8 * Math.atan2(halfFlat(section), half)).toBeCloseTo(
            2 * Math.PI,
            9,
          )
        },
      ),
    )
  })
})

describe('the face between two sections', () => {
  it('is nothing between equal ones, a ring between rounds', () => {
    expect(faceArea(squareSection(30), squareSection(30))).toBe(0)
    near(faceArea(roundSection(10), roundSection(16)), Math.PI * (256 - 100), { rel: 1e-14 })
  })

  it('counts what stands out on either side', () => {
    // a round of 15 about a square of half side 12: corners reach 16.97, so both stand out
    const [square, round] = [squareSection(24), roundSection(15)]
    const both = sectionArea(overlap(square, round))
    expect(both).toBeLessThan(Math.min(sectionArea(square), sectionArea(round)))
    near(both, byHand({ half: 12, radius: 15 }).area, { rel: 1e-8 })
    near(faceArea(square, round), sectionArea(square) + sectionArea(round) - 2 * both, { rel: 1e-15 })
  })
})
