import { describe, expect, it } from 'vitest'
import { evenPlaces, topBetween, topPlaces } from '../../../shared/profile/top-between.ts'
import { near } from '../../near.ts'

describe('topBetween', () => {
  it('finds the top of a sine', () => {
    near(topBetween(Math.sin, 0, Math.PI), Math.PI / 2, 1e-6)
  })

  it('goes to an end where the function only grows', () => {
    near(
      topBetween((x) => x ** 3, 1, 5),
      5,
      1e-6,
    )
  })
})

describe('topPlaces', () => {
  it('adds every top between the looks', () => {
    const places = topPlaces((x) => Math.cos(x), evenPlaces(0.3, 4.5 * Math.PI, 20))
    for (const top of [2 * Math.PI, 4 * Math.PI])
      expect(Math.min(...places.map((x) => Math.abs(x - top)))).toBeLessThan(1e-6)
  })

  it('adds none to a level', () => {
    expect(topPlaces(() => 7, [0, 1, 2, 3])).toEqual([0, 1, 2, 3])
  })
})

describe('evenPlaces', () => {
  it('has both ends exactly', () => {
    const places = evenPlaces(0.1, 0.7, 3)
    expect([places[0], places.at(-1), places.length]).toEqual([0.1, 0.7, 4])
  })
})
