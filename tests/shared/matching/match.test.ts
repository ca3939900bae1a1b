import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { matchSet } from '../../../shared/matching/match.ts'
import type { SetFile } from '../../../shared/matching/set.ts'

const legs: SetFile = {
  units: 'mm',
  stations: [
    { key: 'foot', target: 30, plus: 0.4, minus: 0.4 },
    { key: 'neck', target: 20, plus: 0.2, minus: 0.2 },
    { key: 'tenon', target: 25, plus: 0.1, minus: 0.1, fixed: true },
  ],
  pieces: [
    { key: 'A', readings: { foot: 30.1, neck: 20.1, tenon: 25 } },
    { key: 'B', readings: { foot: 30.5, neck: 19.7, tenon: 25 } },
    { key: 'C', readings: { foot: [30, 30.2, 30.4], neck: 20 } },
    { key: 'D', readings: { foot: 30, neck: 20, tenon: 24.8 } },
    { key: 'E', readings: {} },
  ],
}

describe('matchSet', () => {
  const match = matchSet(legs)

  it('judges a piece by its gravest station: under before over before in', () => {
    expect(match.pieces.map((p) => p.verdict)).toEqual(['in', 'under', 'in', 'under', undefined])
  })

  it('names the station farthest out, in tolerances', () => {
    // A: 0.1 of 0.4 at the foot, 0.1 of 0.2 at the neck. B: 0.1 over by 0.8 wide, 0.1 under by 0.4 wide.
    expect(match.pieces.map((p) => p.worst)).toEqual(['neck', 'neck', 'foot', 'tenon', undefined])
  })

  it('says why a piece has no verdict', () => {
    expect(match.pieces[4]).toEqual({ key: 'E', why: 'no reading yet' })
  })

  it('takes the mean of several values and their range as the out-of-round', () => {
    expect(match.pieces[2]!.outOfRound!.foot).toBeCloseTo(0.4, 9)
    expect(match.stations[0]!.max).toBe(30.5)
    expect(match.stations[0]!.mean).toBeCloseTo(30.2, 9)
    expect(match.pieces[0]!.outOfRound).toBeUndefined()
  })

  it('counts at each station the pieces read there', () => {
    expect(match.stations.map((s) => s.n)).toEqual([4, 4, 3])
  })

  it('brings the neck down, spares the tenon and names who is spoiled', () => {
    expect(match.bringDown.targets).toEqual({ neck: 19.7 })
    expect(match.bringDown.cuts.map((c) => [c.piece, c.station, Number(c.remove.toFixed(6))])).toEqual([
      ['B', 'foot', 0.5],
      ['A', 'neck', 0.4],
      ['C', 'neck', 0.3],
      ['D', 'neck', 0.3],
    ])
    expect(match.bringDown.spoiled.map((s) => [s.piece, s.station])).toEqual([['D', 'tenon']])
  })

  it('chooses only when asked', () => {
    expect(match.chosen).toBeUndefined()
    const chosen = matchSet({ ...legs, choose: 2 }).chosen!
    // A, B and D are read everywhere: A–D 0.2/0.2 at the tenon, A–B 0.4/0.4 at the neck, B–D 1 at the tenon
    expect(chosen.pieces).toEqual(['A', 'B'])
    expect(chosen.spread).toBeCloseTo(1, 9)
  })

  it('answers a set without any reading', () => {
    const empty = matchSet({ ...legs, pieces: [{ key: 'A', readings: {} }] })
    expect(empty.stations.every((s) => s.n === 0 && s.why !== undefined)).toBe(true)
    expect(empty.bringDown).toEqual({ targets: {}, cuts: [], spoiled: [] })
  })

  it('does not depend on the unit of the readings: spread, cp and choice stay', () => {
    const values = fc.array(fc.array(fc.integer({ min: 1900, max: 2100 }), { minLength: 2, maxLength: 2 }), {
      minLength: 3,
      maxLength: 8,
    })
    const file = (rows: number[][], scale: number): SetFile => ({
      units: 'mm',
      stations: ['a', 'b'].map((key) => ({
        key,
        target: 20 * scale,
        plus: 0.5 * scale,
        minus: 0.25 * scale,
      })),
      pieces: rows.map(([a, b], i) => ({
        key: `P${i}`,
        readings: { a: (a! / 100) * scale, b: (b! / 100) * scale },
      })),
      choose: 2,
    })
    fc.assert(
      fc.property(values, (rows) => {
        const one = matchSet(file(rows, 1))
        const thousand = matchSet(file(rows, 1000))
        expect(thousand.chosen!.pieces).toEqual(one.chosen!.pieces)
        expect(thousand.chosen!.spread).toBeCloseTo(one.chosen!.spread, 9)
        expect(thousand.pieces).toEqual(one.pieces)
        one.stations.forEach((s, i) => {
          if (s.cp !== undefined) expect(thousand.stations[i]!.cp! / s.cp).toBeCloseTo(1, 9)
          expect(thousand.stations[i]!.mean! / 1000).toBeCloseTo(s.mean!, 9)
        })
      }),
    )
  })

  it('judges to the nanometre where the tolerance is 0', () => {
    const exact: SetFile = {
      units: 'mm',
      stations: [
        { key: 'foot', target: 30, plus: 0.4, minus: 0.4 },
        { key: 'spigot', target: 12.7, plus: 0, minus: 0 },
      ],
      pieces: [
        { key: 'A', readings: { foot: 30.1, spigot: 12.7 } },
        { key: 'B', readings: { foot: 30.2, spigot: 12.700001 } },
        { key: 'C', readings: { foot: 30.9, spigot: 12.699999 } },
      ],
      choose: 2,
    }
    const match = matchSet(exact)
    expect(match.pieces.map((p) => p.verdict)).toEqual(['in', 'over', 'under'])
    // 0.1 of 0.8 between A and B; the spigot, that only A gets right, is not scored
    expect(match.chosen).toMatchObject({ pieces: ['A', 'B'], proven: true })
    expect(match.chosen!.spread).toBeCloseTo(0.125, 9)
    expect(match.bringDown.targets).toEqual({ spigot: 12.699999 })
    expect(match.bringDown.cuts.map((c) => [c.piece, c.station])).toEqual([
      ['C', 'foot'],
      ['A', 'spigot'],
      ['B', 'spigot'],
    ])
  })

  it('says why no set is chosen where every tolerance is 0', () => {
    const stations = legs.stations.map((s) => ({ ...s, plus: 0, minus: 0 }))
    const match = matchSet({ ...legs, stations, choose: 2 })
    expect(match.chosen).toBeUndefined()
    expect(match.why).toContain('every tolerance is 0')
    expect(matchSet({ ...legs, stations }).why).toBeUndefined()
  })

  it('never puts a number that is none into its answer', () => {
    const value = fc.oneof(
      fc.double({ min: 1e-9, max: 1e12, noNaN: true }),
      fc.double({ min: Number.MIN_VALUE, max: 1e100, noNaN: true }),
    )
    const plus = fc.oneof(fc.constant(0), value)
    const numbers = (part: unknown): number[] =>
      typeof part === 'number'
        ? [part]
        : typeof part === 'object' && part !== null
          ? Object.values(part).flatMap(numbers)
          : []
    const row = fc.tuple(value, value)
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), value, plus, plus, (rows, target, p, q) => {
        const file: SetFile = {
          units: 'mm',
          stations: [
            { key: 's', target, plus: p, minus: 0 },
            { key: 't', target, plus: 0, minus: q },
          ],
          pieces: rows.map(([s, t], i) => ({ key: `P${i}`, readings: { s, t: [t, s] } })),
          choose: Math.ceil(rows.length / 2),
        }
        const match = matchSet(file)
        expect(numbers(match).filter((n) => !Number.isFinite(n))).toEqual([])
        expect(JSON.stringify(match)).not.toMatch(/null|NaN|Infinity/)
      }),
      { numRuns: 1000 },
    )
  })
})
