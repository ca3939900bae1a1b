import { describe, expect, it } from 'vitest'
import { readSetFile } from '../../../shared/matching/set-file.ts'
import { Problem } from '../../../shared/problem.ts'

const legs = () => ({
  units: 'in',
  stations: [
    { key: 'foot', target: '1 1/4', plus: '1/32', minus: '1/32' },
    { key: 'tenon', target: 25.4, plus: 0, minus: '1/64', fixed: true },
  ] as Record<string, unknown>[],
  pieces: [
    { key: 'A', readings: { foot: '1 17/64', tenon: ['1', '63/64 in', 25.3] } },
    { key: 'B', readings: {} },
  ] as Record<string, unknown>[],
})

function refusal(input: unknown): Record<string, string> {
  try {
    readSetFile(input)
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    expect(problem.code).toBe('bad-input')
    return Object.fromEntries(problem.errors.map((e) => [e.path, e.message]))
  }
  throw new Error('it was read')
}

describe('readSetFile', () => {
  it('reads lengths as written into mm', () => {
    const file = readSetFile({ ...legs(), choose: 2 })
    expect(file.stations[0]).toEqual({ key: 'foot', target: 31.75, plus: 0.79375, minus: 0.79375 })
    expect(file.stations[1]).toMatchObject({ target: 25.4, plus: 0, fixed: true })
    expect(file.pieces[0]!.readings.foot).toBeCloseTo(32.146875, 9)
    expect(file.pieces[0]!.readings.tenon).toEqual([25.4, expect.closeTo(25.003125, 9), 25.3])
    expect(file.pieces[1]).toEqual({ key: 'B', readings: {} })
    expect(file.choose).toBe(2)
  })

  it('takes text without a unit in the units of the file', () => {
    const one = {
      stations: [{ key: 's', target: '2', plus: '0,5', minus: 0 }],
      pieces: [{ key: 'a', readings: { s: '2.25' } }],
    }
    expect(readSetFile({ units: 'mm', ...one }).stations[0]).toMatchObject({ target: 2, plus: 0.5 })
    expect(readSetFile({ units: 'in', ...one }).pieces[0]!.readings.s).toBeCloseTo(57.15, 9)
  })

  it('serves gauge data of any size', () => {
    const gauge = (target: number, value: number) => ({
      units: 'mm',
      stations: [{ key: 'g', target, plus: target / 10, minus: 0 }],
      pieces: [{ key: 'p', readings: { g: value } }],
    })
    expect(readSetFile(gauge(1e7, 10000000.2)).pieces[0]!.readings.g).toBe(10000000.2)
    expect(readSetFile(gauge(1e-4, 2e-4)).pieces[0]!.readings.g).toBe(2e-4)
  })

  it('takes whole numbers as keys of pieces, as people number them', () => {
    const file = readSetFile({
      ...legs(),
      pieces: [
        { key: 1, readings: {} },
        { key: 12, readings: {} },
      ],
    }) // prettier-ignore
    expect(file.pieces.map((p) => p.key)).toEqual(['1', '12'])
  })

  it('says what is wrong with each field', () => {
    const found = refusal({
      units: 'in',
      stations: [
        { key: 'foot', target: '1 1/4', plus: 0, minus: 0 },
        { key: '', target: 0, plus: -1, minus: 1 },
        { key: 'neck', plus: 1, minus: 1 },
      ],
      pieces: [
        { key: 'A', readings: { foot: 'wide' } },
        { key: 'B', readings: { foot: [] } },
        { key: 'C', readings: { foot: [12, -3] } },
        { key: 'D' },
      ],
      choose: 1.5,
    })
    expect(found['stations[0]']).toContain('plus and minus together must be more than 0')
    expect(found['stations[1].key']).toContain('1 to 80 characters')
    expect(found['stations[1].target']).toContain('more than 0; read 0')
    expect(found['stations[1].plus']).toContain('at least 0; read -1')
    expect(found['stations[2].target']).toBeDefined()
    expect(found['pieces[0].readings.foot']).toMatch(/no length that can be read.*"wide"/s)
    expect(found['pieces[1].readings.foot']).toContain('at least one value')
    expect(found['pieces[2].readings.foot[1]']).toContain('more than 0; read -3')
    expect(found['pieces[3].readings']).toContain('missing')
    expect(found.choose).toContain('whole number')
  })

  it('refuses readings that are no number at all', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, null, true, {}]) {
      const found = refusal({ ...legs(), pieces: [{ key: 'A', readings: { foot: value } }] })
      expect(Object.keys(found)).toEqual(['pieces[0].readings.foot'])
      expect(found['pieces[0].readings.foot']).toContain('; read ')
    }
  })

  it('names a reading of a station that the set does not have, and the stations it has', () => {
    const found = refusal({ ...legs(), pieces: [{ key: 'A', readings: { fot: 31 } }] })
    expect(found['pieces[0].readings.fot']).toContain('foot, tenon')
  })

  it('refuses a key used twice, for stations and for pieces', () => {
    const twice = legs()
    twice.stations.push({ ...twice.stations[0] })
    twice.pieces.push({ key: 'B', readings: {} })
    const found = refusal(twice)
    expect(found['stations[2].key']).toContain('as in stations[0]')
    expect(found['pieces[2].key']).toContain('as in pieces[1]')
  })

  it('needs units, stations and pieces', () => {
    expect(Object.keys(refusal({}))).toEqual(['units', 'stations', 'pieces'])
    expect(Object.keys(refusal({ ...legs(), stations: [] }))).toContain('stations')
    expect(Object.keys(refusal({ ...legs(), pieces: [] }))).toEqual(['pieces'])
    expect(refusal({ ...legs(), units: 'cm' }).units).toContain('"in" or "mm"; read "cm"')
    for (const nothing of [null, [], 'set', 7]) expect(refusal(nothing)['']).toContain('must be an object')
  })

  it('refuses too many stations, pieces or values before it looks at them', () => {
    const many = (n: number, of: unknown) => Array<unknown>(n).fill(of)
    expect(refusal({ ...legs(), stations: many(501, 0) }).stations).toContain('at most 500')
    expect(refusal({ ...legs(), pieces: many(10_001, 0) }).pieces).toContain('at most 10000')
    const long = { ...legs(), pieces: [{ key: 'A', readings: { foot: many(1001, 31) } }] }
    expect(refusal(long)['pieces[0].readings.foot']).toContain('at most 1000')
  })

  it('refuses to choose none', () => {
    expect(refusal({ ...legs(), choose: 0 }).choose).toContain('at least 1; read 0')
  })

  it('is not taken in by the names that objects carry of themselves', () => {
    const odd = legs()
    odd.stations.push({ key: 'constructor', target: 10, plus: 1, minus: 1 })
    expect(readSetFile(odd).stations).toHaveLength(3)
    expect(
      refusal(
        JSON.parse(
          '{"units":"mm","stations":[{"key":"__proto__","target":1,"plus":1,"minus":1}],"pieces":[{"key":"a","readings":{}}]}',
        ),
      )['stations[0].key'],
    ).toBeDefined()
  })
})
