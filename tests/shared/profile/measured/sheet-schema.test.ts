import { describe, expect, it } from 'vitest'
import { type Breach, Problem } from '../../../../shared/problem.ts'
import { readSheet } from '../../../../shared/profile/measured/sheet-schema.ts'

const breachesOf = (input: unknown, path?: string): Breach[] => {
  try {
    readSheet(input, path)
  } catch (problem) {
    if (problem instanceof Problem) return problem.errors
  }
  throw new Error('was not refused')
}

const sheet = (readings: unknown[], more: object = {}, original: object = {}) => ({
  units: 'mm',
  stations: readings.map(() => ({})),
  originals: [{ name: 'A', readings, ...original }],
  ...more,
})

describe('a measuring sheet as entered', () => {
  it('is read to mm in its own units', () => {
    const read = readSheet({
      units: 'in',
      way: 'span',
      choice: 'mean',
      stations: [
        { name: 'foot', then: 'bead', sagitta: '1/4', check: true },
        { then: 'square', side: '2 1/4' },
      ],
      originals: [
        {
          name: 'left front',
          datum: { name: 'seat', fromFoot: '16 1/2', towards: 'foot' },
          wear: '3 mm',
          readings: [
            { at: '2⅜', diameters: ['1 1/2', '1,5 in'] },
            { at: 0, diameters: [] },
          ],
        },
      ],
      photo: { lines: [{ from: [10, 20], to: [900, 25], length: '16 1/2' }], foot: [10, 20] },
    })
    expect(read).toEqual({
      units: 'in',
      way: 'span',
      choice: 'mean',
      stations: [
        { name: 'foot', then: 'bead', sagitta: 6.35, check: true },
        { then: 'square', side: 57.15 },
      ],
      originals: [
        {
          name: 'left front',
          datum: { name: 'seat', fromFoot: 419.1, towards: 'foot' },
          wear: 3,
          readings: [
            { at: 60.325, diameters: [38.1, 38.1] },
            { at: 0, diameters: [] },
          ],
        },
      ],
      photo: { lines: [{ from: [10, 20], to: [900, 25], length: 419.1 }], foot: [10, 20] },
    })
  })

  it('may be filled by half: blanks and nulls are no entries', () => {
    const read = readSheet(
      sheet([{ at: ' ', diameters: ['', '30'] }, { at: null }, {}], {
        photo: { lines: [{ from: [0, 0], to: [5, 5], length: '' }] },
      }),
    )
    expect(read.originals[0]!.readings.map(({ at }) => at)).toEqual([undefined, undefined, undefined])
    expect(read.originals[0]!.readings.map(({ diameters }) => diameters)).toEqual([[30], [], []])
    expect(read.photo!.lines[0]!.length).toBeUndefined()
    expect(readSheet({ units: 'mm' })).toEqual({
      units: 'mm',
      way: 'running',
      choice: 'larger',
      stations: [],
      originals: [],
    })
  })

  it.each([
    ['originals[0].readings[1].at', sheet([{}, { at: '2 3/' }]), 'no length that can be read'],
    ['originals[0].readings[0].diameters[1]', sheet([{ diameters: [30, 'thick'] }]), 'thick'],
    ['originals[0].readings[0].diameters[0]', sheet([{ diameters: [0] }]), 'more than 0'],
    ['originals[0].readings[0].diameters[0]', sheet([{ diameters: [1500] }]), '1000'],
    ['originals[0].readings[0].diameters', sheet([{ diameters: [1, 2, 3] }]), 'at most 2'],
    ['originals', sheet([], { originals: Array.from({ length: 51 }, () => ({})) }), 'at most 50 entries'],
    [
      'photo.lines',
      sheet([], { photo: { lines: Array.from({ length: 9 }, () => ({ from: [0, 0], to: [9, 9] })) } }),
      'at most 8 entries',
    ],
    ['photo.foot[1]', sheet([], { photo: { lines: [], foot: [0, 100_001] } }), 'at most 100000; read 100001'],
    ['originals[0].readings[1].at', sheet([{ at: 0 }, { at: -5 }]), 'starts at the foot'],
    ['originals[0].readings[1].at', sheet([{ at: 0 }, { at: -5 }], { way: 'span' }), 'station before'],
    ['originals[0].wear', sheet([{}], {}, { wear: -1 }), 'between 0'],
    [
      'originals[0].datum.towards',
      sheet([{}], {}, { datum: { name: 'seat', towards: 'up' } }),
      '"top" or "foot"',
    ],
    ['originals[0].readings', sheet([{}, {}], { stations: [{}] }), 'at most one a station'],
    ['stations[0].then', sheet([{}], { stations: [{ then: 'knob' }] }), 'knob'],
    ['stations[0].side', sheet([{}], { stations: [{ then: 'square', side: 0 }] }), 'more than 0'],
    ['choice', sheet([{}], { choice: 'smaller' }), '"larger"'],
    ['units', { ...sheet([{}]), units: 'ell' }, 'ell'],
    ['photo.lines[0].to', sheet([{}], { photo: { lines: [{ from: [0, 0], to: [1] }] } }), 'two numbers'],
    [
      'photo.lines[0].length',
      sheet([{}], { photo: { lines: [{ from: [0, 0], to: [1, 1], length: 0 }] } }),
      'more than 0',
    ],
  ])('is refused at %s', (path, input, words) => {
    const breaches = breachesOf(input)
    expect(breaches.map((breach) => breach.path)).toEqual([path])
    expect(breaches[0]!.message).toContain(words)
  })

  it('names where it stands in a larger input', () => {
    expect(breachesOf(sheet([{ at: 'x' }]), 'sheet')[0]!.path).toBe('sheet.originals[0].readings[0].at')
    expect(breachesOf(sheet([{ at: -1 }]), 'sheet')[0]!.path).toBe('sheet.originals[0].readings[0].at')
    expect(breachesOf(null)[0]!.message).toContain('must be an object')
  })

  it('may read less than nothing on the far side of a datum', () => {
    const shoulder = { datum: { name: 'shoulder', fromFoot: 300, towards: 'top' } }
    expect(readSheet(sheet([{ at: -300 }, { at: -120 }, { at: 40 }], {}, shoulder))).toBeDefined()
    // span by span only the first one counts from the datum
    const spans = { way: 'span' }
    expect(readSheet(sheet([{ at: -300 }, { at: 120 }], spans, shoulder))).toBeDefined()
    expect(breachesOf(sheet([{ at: -300 }, { at: -120 }], spans, shoulder))[0]!.path).toBe(
      'originals[0].readings[1].at',
    )
  })

  it('is refused whole, and quickly, when its lists are endless', () => {
    expect(breachesOf(sheet(Array.from({ length: 2001 }, () => ({}))))[0]!.message).toContain('at most 2000')
  })
})
