import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Candidate, chosenOf } from '../../../shared/matching/choose.ts'
import type { SetStation } from '../../../shared/matching/set.ts'
import { Problem } from '../../../shared/problem.ts'

const stationsOf = (count: number): SetStation[] =>
  Array.from({ length: count }, (_, i) => ({ key: `s${i}`, target: 40, plus: 0.25 + i / 8, minus: 0.25 }))
const piecesOf = (rows: readonly (readonly (number | undefined)[])[]): Candidate[] =>
  rows.map((values, i) => ({ key: `P${i + 1}`, values }))

/** Every set of pieces tried, the first of the best kept: score as the largest range over its tolerance. */
function byTrying(
  rows: number[][],
  stations: SetStation[],
  choose: number,
): { set: number[]; score: number } {
  let best = { set: [] as number[], score: Number.POSITIVE_INFINITY }
  const visit = (from: number, set: number[]): void => {
    if (set.length === choose) {
      const score = Math.max(
        ...stations.map((s, j) => {
          const here = set.map((i) => rows[i]![j]!)
          return (Math.max(...here) - Math.min(...here)) / (s.plus + s.minus)
        }),
      )
      if (score < best.score) best = { set, score }
      return
    }
    for (let i = from; i <= rows.length - (choose - set.length); i++) visit(i + 1, [...set, i])
  }
  visit(0, [])
  return best
}

/** Readings on eighths of a millimetre are exact in binary: equal scores are equal. */
const gridded = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 4 })).chain(([n, s]) =>
  fc.array(
    fc.array(
      fc.integer({ min: 316, max: 324 }).map((x) => x / 8),
      { minLength: s, maxLength: s },
    ),
    {
      minLength: n,
      maxLength: n,
    },
  ),
)

/** The set that is chosen where at least one station has a tolerance. */
const setOf = (...given: Parameters<typeof chosenOf>) => chosenOf(...given)!

describe('chosenOf', () => {
  it('takes the very set that trying them all takes, the first among equals', () => {
    fc.assert(
      fc.property(gridded, fc.nat(8), (rows, k) => {
        const choose = 1 + (k % rows.length)
        const stations = stationsOf(rows[0]!.length)
        const { set, score } = byTrying(rows, stations, choose)
        const chosen = setOf(piecesOf(rows), stations, choose)
        expect(chosen).toEqual({ pieces: set.map((i) => `P${i + 1}`), spread: score, proven: true })
      }),
      { numRuns: 300 },
    )
  })

  it('scores as little as trying them all on readings as they come', () => {
    const row = fc.array(fc.double({ min: 39, max: 41, noNaN: true }), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 9 }), fc.nat(8), (rows, k) => {
        const choose = 1 + (k % rows.length)
        const chosen = setOf(piecesOf(rows), stationsOf(3), choose)
        expect(chosen.pieces).toHaveLength(choose)
        expect(chosen.proven).toBe(true)
        // Readings are compared on nanometres: one may be off by half of one, against a tolerance of 0.5 mm.
        expect(Math.abs(chosen.spread - byTrying(rows, stationsOf(3), choose).score)).toBeLessThan(4e-6)
      }),
      { numRuns: 300 },
    )
  })

  it('is never worse than pieces taken at random, in a set too large to try', () => {
    const row = fc.array(fc.double({ min: 39, max: 41, noNaN: true }), { minLength: 8, maxLength: 8 })
    const sets = fc.array(row, { minLength: 60, maxLength: 60 })
    const orders = fc.array(fc.shuffledSubarray([...Array(60).keys()], { minLength: 30, maxLength: 30 }), {
      minLength: 20,
      maxLength: 20,
    })
    fc.assert(
      fc.property(sets, orders, (rows, others) => {
        const stations = stationsOf(8)
        const chosen = setOf(piecesOf(rows), stations, 30)
        expect(chosen.proven).toBe(true)
        for (const other of others) {
          const score = byTrying(
            other.map((i) => rows[i]!),
            stations,
            30,
          ).score // prettier-ignore
          expect(chosen.spread).toBeLessThanOrEqual(score + 4e-6)
        }
      }),
      { numRuns: 6 },
    )
  })

  it('never scores less when one more piece is wanted', () => {
    fc.assert(
      fc.property(gridded, (rows) => {
        const stations = stationsOf(rows[0]!.length)
        let before = 0
        for (let choose = 1; choose <= rows.length; choose++) {
          const { spread } = setOf(piecesOf(rows), stations, choose)
          expect(spread).toBeGreaterThanOrEqual(before)
          before = spread
        }
      }),
      { numRuns: 100 },
    )
  })

  it('passes over pieces that lack a reading', () => {
    const pieces = piecesOf([
      [40, 40],
      [40, undefined],
      [41, 40],
      [40.1, 40],
    ]) // prettier-ignore
    expect(setOf(pieces, stationsOf(2), 2).pieces).toEqual(['P1', 'P4'])
  })

  it('refuses to choose more than are read, and names what is lacking', () => {
    const pieces = piecesOf([
      [40, 40],
      [40, undefined],
      [undefined, 40],
    ]) // prettier-ignore
    try {
      chosenOf(pieces, stationsOf(2), 2)
      expect.unreachable()
    } catch (problem) {
      expect(problem).toBeInstanceOf(Problem)
      expect((problem as Problem).code).toBe('bad-input')
      const [breach] = (problem as Problem).errors
      expect(breach!.path).toBe('choose')
      expect(breach!.message).toContain('at most 1')
      expect(breach!.message).toContain('P2 at s1, P3 at s0')
      expect(breach!.message).toContain('read 2')
    }
  })

  it('says so when a set is too large to prove', () => {
    const rows = Array.from({ length: 9000 }, (_, i) => [
      40 + ((i * 7919) % 1000) / 1000,
      40 + ((i * 104729) % 997) / 997,
    ])
    const chosen = setOf(piecesOf(rows), stationsOf(2), 4500)
    expect(chosen.pieces).toHaveLength(4500)
    expect(chosen.proven).toBe(false)
    expect(chosen.spread).toBeLessThan(2)
  })

  it('proves one station of thousands of pieces', () => {
    const rows = Array.from({ length: 9000 }, (_, i) => [40 + ((i * 7919) % 9000) / 1000])
    const chosen = setOf(piecesOf(rows), stationsOf(1), 4500)
    expect(chosen.proven).toBe(true)
    // readings are 40.000, 40.001 … each once: 4500 neighbours span 4.499 mm over a tolerance of 0.5 mm
    expect(chosen.spread).toBeCloseTo(4.499 / 0.5, 9)
  })

  it('leaves stations without a tolerance out of the score, and takes the same set as without them', () => {
    fc.assert(
      fc.property(gridded, fc.nat(8), fc.nat(4), (rows, k, at) => {
        const choose = 1 + (k % rows.length)
        const stations = stationsOf(rows[0]!.length)
        const exact: SetStation = { key: 'fit', target: 25, plus: 0, minus: 0 }
        const place = at % (stations.length + 1)
        const more = stations.toSpliced(place, 0, exact)
        const wider = rows.map((row, i) => row.toSpliced(place, 0, 20 + (i % 3)))
        expect(chosenOf(piecesOf(wider), more, choose)).toEqual(chosenOf(piecesOf(rows), stations, choose))
      }),
      { numRuns: 100 },
    )
  })

  it('still needs a reading where there is no tolerance', () => {
    const stations = [...stationsOf(1), { key: 'fit', target: 25, plus: 0, minus: 0 }]
    const pieces = piecesOf([
      [40, undefined],
      [41, 25],
      [42, 25],
    ]) // prettier-ignore
    expect(setOf(pieces, stations, 2).pieces).toEqual(['P2', 'P3'])
  })

  it('chooses none where nothing measures one set against another', () => {
    const stations = stationsOf(2).map((s) => ({ ...s, plus: 0, minus: 0 }))
    expect(
      chosenOf(
        piecesOf([
          [40, 40],
          [41, 41],
        ]),
        stations,
        1,
      ),
    ).toBeUndefined() // prettier-ignore
  })
})
