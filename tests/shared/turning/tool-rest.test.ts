import { describe, expect, it } from 'vitest'
import {
  positionsFor,
  type Reach,
  toolRestFor,
  toolRestPositions,
} from '../../../shared/turning/tool-rest.ts'
import { seeded } from '../route/random-profile.ts'

/** Reaches in a row with gaps between, none longer than `most`. */
function randomReaches(random: () => number, most: number): Reach[] {
  let at = 0
  return Array.from({ length: 1 + Math.floor(random() * 9) }, () => {
    const from = at + (random() < 0.5 ? 0 : Math.round(random() * 200))
    at = from + 1 + Math.round(random() * (most - 1))
    return [from, at] as const
  })
}

/** The least number of positions by trying every way to break the row: 2 to the power of the gaps. */
function fewestByTrying(reaches: Reach[], rest: number): number {
  let fewest = Number.POSITIVE_INFINITY
  for (let breaks = 0; breaks < 2 ** (reaches.length - 1); breaks++) {
    let start = reaches[0]![0]
    let count = 1
    let fits = true
    reaches.forEach(([from, to], i) => {
      if (i > 0 && breaks & (1 << (i - 1))) [start, count] = [from, count + 1]
      if (to - start > rest) fits = false
    })
    if (fits) fewest = Math.min(fewest, count)
  }
  return fewest
}

describe('toolRestFor', () => {
  it('is the longest that does not reach past the blank', () => {
    expect(toolRestFor({ restLength: 300, rests: [150, 600] }, 600)).toBe(600)
    expect(toolRestFor({ restLength: 300, rests: [150, 600] }, 599)).toBe(300)
  })

  it('is the shortest where all reach past it', () => {
    expect(toolRestFor({ restLength: 300, rests: [150, 600] }, 100)).toBe(150)
    expect(toolRestFor({ restLength: 300 }, 100)).toBe(300)
  })
})

describe('toolRestPositions', () => {
  it('are as few as trying every way to break the row finds, each reach within one of them', () => {
    const random = seeded(7)
    for (let i = 0; i < 2000; i++) {
      const rest = 50 + Math.round(random() * 250)
      const reaches = randomReaches(random, rest)
      const positions = toolRestPositions(reaches, rest)
      expect(positions.length, JSON.stringify({ reaches, rest })).toBe(fewestByTrying(reaches, rest))
      for (const [from, to] of reaches)
        expect(positions.some(([start, end]) => start <= from && to <= end)).toBe(true)
    }
  })

  it('follow each other along a reach longer than the rest, and leave nothing of it out', () => {
    const random = seeded(11)
    for (let i = 0; i < 2000; i++) {
      const rest = 50 + Math.round(random() * 250)
      const reaches = randomReaches(random, 4 * rest)
      const positions = toolRestPositions(reaches, rest)
      for (const [from, to] of reaches) {
        const [first, last] = positionsFor(positions, [from, to])
        const served = positions.slice(first - 1, last)
        expect(served[0]![0]).toBeLessThanOrEqual(from)
        expect(served.at(-1)![1]).toBeGreaterThanOrEqual(to)
        served.slice(1).forEach(([start], k) => {
          expect(start).toBeLessThanOrEqual(served[k]![1])
        })
      }
    }
  })

  it('are three of a 12 in rest on a leg turned over 30 in', () => {
    expect(toolRestPositions([[0, 762]], 304.8)).toHaveLength(3)
  })
})
