import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bringDown, type Readings } from '../../../shared/matching/bring-down.ts'
import { verdictOf } from '../../../shared/matching/reading.ts'

const neck = { key: 'neck', target: 30, plus: 0.4, minus: 0.4 }
const tenon = { key: 'tenon', target: 25, plus: 0.2, minus: 0.2, fixed: true }
const read = (byStation: Record<string, number[]>): Readings =>
  new Map(
    Object.entries(byStation).map(([key, values]) => [
      key,
      values.map((value, i) => ({ piece: `P${i + 1}`, value })),
    ]),
  )

describe('bringDown', () => {
  it('changes nothing in a set that is in', () => {
    expect(bringDown([neck, tenon], read({ neck: [30, 30.4, 29.6], tenon: [25, 25.1, 24.9] }))).toEqual({
      targets: {},
      cuts: [],
      spoiled: [],
    })
  })

  it('cuts a piece that is over to the target, without a new target', () => {
    const found = bringDown([neck], read({ neck: [30, 30.9] }))
    expect(found.targets).toEqual({})
    expect(found.cuts).toEqual([{ piece: 'P2', station: 'neck', remove: expect.closeTo(0.9, 9) }])
  })

  it('brings the others down to the smallest when one is under', () => {
    // the smallest is 29.2; in is then 28.8 to 29.6
    const found = bringDown([neck], read({ neck: [29.2, 29.6, 29.7, 30.3] }))
    expect(found.targets).toEqual({ neck: 29.2 })
    expect(found.cuts).toEqual([
      { piece: 'P3', station: 'neck', remove: expect.closeTo(0.5, 9) },
      { piece: 'P4', station: 'neck', remove: expect.closeTo(1.1, 9) },
    ])
    expect(found.spoiled).toEqual([])
  })

  it('never brings a fixed station down: the piece is spoiled', () => {
    const found = bringDown([tenon], read({ tenon: [24.7, 25, 25.3] }))
    expect(found.targets).toEqual({})
    expect(found.spoiled).toEqual([{ piece: 'P1', station: 'tenon', why: expect.stringContaining('fit') }])
    expect(found.cuts).toEqual([{ piece: 'P3', station: 'tenon', remove: expect.closeTo(0.3, 9) }])
  })

  it('passes over a station without readings', () => {
    expect(bringDown([neck], new Map())).toEqual({ targets: {}, cuts: [], spoiled: [] })
  })

  it('leaves no piece under and none over once the cuts are made, wood only coming off', () => {
    const values = fc.array(fc.double({ min: 28, max: 32, noNaN: true }), { minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(values, fc.boolean(), (xs, fixed) => {
        const station = { ...neck, fixed }
        const found = bringDown([station], read({ neck: xs }))
        const target = found.targets.neck ?? station.target
        expect(target).toBeLessThanOrEqual(station.target)
        const spoiled = new Set(found.spoiled.map((s) => s.piece))
        xs.forEach((x, i) => {
          const piece = `P${i + 1}`
          const cut = found.cuts.find((c) => c.piece === piece)
          if (cut) expect(cut.remove).toBeGreaterThan(0)
          const after = x - (cut?.remove ?? 0)
          expect(verdictOf(after, { ...station, target })).toBe(spoiled.has(piece) ? 'under' : 'in')
        })
      }),
    )
  })
})
