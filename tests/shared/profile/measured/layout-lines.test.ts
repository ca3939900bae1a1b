import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Problem } from '../../../../shared/problem.ts'
import { layoutLines } from '../../../../shared/profile/measured/layout-lines.ts'
import { inches, nm } from '../../../../shared/units/length.ts'
import './measuring.ts'

describe('layout lines', () => {
  it('stand every two inches up a taper, short of its end', () => {
    // a taper from 3 in to 12-1/2 in: lines at 5, 7, 9, 11
    const lines = layoutLines(inches(3), inches(12.5), inches(2))
    expect(lines).toEqual([127, 177.8, 228.6, 279.4])
  })

  it('leave out the end where the pitch goes up exactly', () => {
    expect(layoutLines(0, 127, 25.4)).toEqual([25.4, 50.8, 76.2, 101.6])
    expect(layoutLines(0, 0.3, 0.1)).toEqual([0.1, 0.2])
    expect(layoutLines(0, 20, 50)).toEqual([])
  })

  it('are exact multiples of the pitch, every one that fits', () => {
    const any = fc.record({
      from: fc.integer({ min: 0, max: 1e9 }),
      length: fc.integer({ min: 1, max: 1e9 }),
      pitch: fc.integer({ min: 1e6, max: 1e8 }),
    })
    fc.assert(
      fc.property(any, ({ from, length, pitch }) => {
        const lines = layoutLines(from / 1e6, (from + length) / 1e6, pitch / 1e6).map(nm)
        expect(lines.every((at) => at > from && at < from + length)).toBe(true)
        // counted up by the pitch itself rather than by a division
        let at = from + pitch
        for (const line of lines) {
          expect(line).toBe(at)
          at += pitch
        }
        expect(at).toBeGreaterThanOrEqual(from + length)
      }),
    )
  })

  it.each([
    ['pitch', 0, 100, 0],
    ['pitch', 0, 100, -5],
    ['pitch', 0, 100, Number.NaN],
    ['to', 100, 100, 10],
    ['to', 100, 50, 10],
    ['pitch', 0, 20_000, 0.001],
  ])('refuse a wrong %s, saying what was read', (path, from, to, pitch) => {
    const refused = (() => {
      try {
        return layoutLines(from, to, pitch)
      } catch (problem) {
        return problem
      }
    })()
    expect(refused).toBeInstanceOf(Problem)
    expect((refused as Problem).errors[0]!.path).toBe(path)
  })
})
