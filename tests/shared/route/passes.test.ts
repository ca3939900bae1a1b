import { describe, expect, it } from 'vitest'
import { type PassInput, type PassWork, passesFor, segmentMinutes } from '../../../shared/route/passes.ts'
import { seeded } from './random-profile.ts'

const mount: PassWork = {
  key: 'mount',
  kind: 'mount',
  name: 'Mount it',
  stage: 'set-up',
  tool: 'spur centre',
  rpm: 400,
  restPosition: 1,
}
const work = (key: string, tool: string, more: Partial<PassWork> = {}): PassWork => ({
  key,
  kind: 'straight',
  name: `Cut the ${key}`,
  stage: 'turning',
  tool,
  rpm: 800,
  restPosition: 1,
  ...more,
})
const costs = { mounting: 1, toolChange: 0.5, speedChange: 0.25, reset: 0.5, restMove: 0.75 }
const batch = (operations: PassWork[], more: Partial<PassInput> = {}): PassInput => ({
  pieces: 10,
  mount,
  operations,
  mayBreak: operations.map(() => true),
  places: [],
  calipers: 3,
  costs,
  ...more,
})
const sum = (minutes: ReturnType<typeof segmentMinutes>): number =>
  Object.values(minutes).reduce((a, b) => a + b, 0)

/** Operations of a few tools, speeds, places of the rest and calipers, some of which have to wait for one before. */
function randomBatch(seed: number, count: number): PassInput {
  const random = seeded(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const operations = Array.from({ length: count }, (_, i) =>
    work(`o${i}`, pick(['gouge', 'skew', 'parting tool']), {
      kind: pick(['size', 'straight', 'bead'] as const),
      rpm: pick([400, 800, 1200]),
      restPosition: pick([1, 2, 3]),
    }),
  )
  const places = operations
    .filter(() => random() < 0.5)
    .map(({ key }, i, all) => ({
      station: key,
      operation: key,
      diameter: pick([20, 25, 30, 35]),
      after: i > 0 && random() < 0.3 ? [all[i - 1]!.key] : [],
    }))
  return batch(operations, {
    pieces: 1 + Math.floor(random() * 40),
    calipers: 1 + Math.floor(random() * 3),
    mayBreak: operations.map(() => random() < 0.8),
    places,
    costs: {
      mounting: random() * 2,
      toolChange: random(),
      speedChange: random(),
      reset: random(),
      restMove: random(),
    },
  })
}

/** Minutes of every way to break the work, written down one by one. */
function everyWay(input: PassInput, forced?: number): { breaks: number; minutes: number }[] {
  const count = input.operations.length
  return Array.from({ length: 2 ** (count - 1) }, (_, mask) => {
    const ends = Array.from({ length: count - 1 }, (_, i) => i + 1).filter((end) => (mask >> (end - 1)) & 1)
    if (ends.some((end) => !(input.mayBreak[end - 1] || end === forced))) return undefined
    if (forced !== undefined && (!ends.includes(forced) || ends.some((end) => end < forced))) return undefined
    const all = [...ends, count]
    const minutes = all.reduce((total, end, i) => total + sum(segmentMinutes(input, all[i - 1] ?? 0, end)), 0)
    return { breaks: ends.length, minutes }
  }).filter((way) => way !== undefined)
}

describe('minutes of a segment', () => {
  it('count a mounting, a start with the speed down and the first place of the rest for every blank', () => {
    const input = batch([work('a', 'gouge'), work('b', 'gouge', { restPosition: 2 })])
    // 10 mounted; one tool taken up once; 400 then 800 rpm on each; the rest moved once on each
    expect(segmentMinutes(input, 0, 2)).toEqual({
      mounting: 10,
      tools: 0.5,
      speeds: 5,
      rests: 7.5,
      resets: 0,
    })
  })

  it('count tools by what is changed from blank to blank', () => {
    // gouge, skew on the first; on each after it the gouge is taken up again and the skew after it: 2 + 9 × 2
    expect(segmentMinutes(batch([work('a', 'gouge'), work('b', 'skew')]), 0, 2).tools).toBe(20 * 0.5)
    // gouge, skew, gouge: the gouge is in hand when the next blank comes: 3 + 9 × 2
    expect(
      segmentMinutes(batch([work('a', 'gouge'), work('b', 'skew'), work('c', 'gouge')]), 0, 3).tools,
    ).toBe(21 * 0.5)
  })

  it('count the resets of the calipers in that segment alone', () => {
    const operations = [50, 40, 30, 20].map((diameter) => work(`d${diameter}`, 'parting tool'))
    const places = [50, 40, 30, 20].map((diameter) => ({
      station: `d${diameter}`,
      operation: `d${diameter}`,
      diameter,
    }))
    const input = batch(operations, { places })
    // four settings, three calipers, ten blanks: 4 + 9; two and two: two each
    expect(segmentMinutes(input, 0, 4).resets).toBe(13 * 0.5)
    expect(segmentMinutes(input, 0, 2).resets).toBe(2 * 0.5)
  })
})

describe('passesFor', () => {
  it('mounts once where a second mounting costs more than it saves', () => {
    const passes = passesFor(batch([work('a', 'gouge'), work('b', 'gouge')]))
    expect(passes).toMatchObject({ chosen: 'one', one: passes.byPiece })
    expect(passes.segments).toHaveLength(1)
    expect(passes.several).toBeGreaterThan(passes.one)
    expect(passes.why).toContain('costs more than it saves')
  })

  it('breaks the work where changing tools on every blank costs more than mounting it again', () => {
    const passes = passesFor(
      batch([work('a', 'gouge'), work('b', 'gouge'), work('c', 'skew')], {
        costs: { ...costs, toolChange: 3 },
      }),
    )
    expect(passes.chosen).toBe('several')
    expect(passes.segments!.map(({ operations }) => operations)).toEqual([['a', 'b'], ['c']])
    expect(passes.several).toBeLessThan(passes.one)
    expect(passes.why).toContain('“Cut the b”')
  })

  it('is the cheapest of all ways to break the work, written down one by one', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const input = randomBatch(seed, 2 + (seed % 8))
      const ways = everyWay(input)
      const least = Math.min(...ways.map(({ minutes }) => minutes))
      const broken = ways.filter(({ breaks }) => breaks > 0)
      const passes = passesFor(input)
      expect(Math.min(passes.one, passes.several), `seed ${seed}`).toBeCloseTo(least, 9)
      expect(passes.one, `seed ${seed}`).toBeCloseTo(ways.find(({ breaks }) => breaks === 0)!.minutes, 9)
      if (broken.length > 0)
        expect(passes.several, `seed ${seed}`).toBeCloseTo(
          Math.min(...broken.map(({ minutes }) => minutes)),
          9,
        )
      expect(passes.segments!.reduce((total, { minutes }) => total + minutes, 0)).toBeCloseTo(least, 9)
    }
  })

  it('is so too where wet wood has to come off after roughing', () => {
    for (let seed = 201; seed <= 260; seed++) {
      const input = randomBatch(seed, 3 + (seed % 5))
      const after = seed % 2
      const passes = passesFor({ ...input, forced: { after, why: 'Too wet.' } })
      const least = Math.min(...everyWay(input, after + 1).map(({ minutes }) => minutes))
      expect(passes).toMatchObject({ chosen: 'several', why: 'Too wet.' })
      expect(passes.several, `seed ${seed}`).toBeCloseTo(least, 9)
      expect(passes.segments![0]!.operations).toHaveLength(after + 1)
    }
  })

  it('makes gauges instead where that takes less than setting calipers over and over', () => {
    const diameters = [50, 45, 40, 35, 30, 25]
    const operations = diameters.map((diameter) => work(`d${diameter}`, 'parting tool'))
    const places = diameters.map((diameter) => ({
      station: `d${diameter}`,
      operation: `d${diameter}`,
      diameter,
    }))
    const many = batch(operations, {
      places,
      pieces: 60,
      calipers: 1,
      costs: { ...costs, mounting: 5 },
      gaugeMinutes: 4,
    })
    const passes = passesFor(many)
    expect(passes.withGauges).toBe(true)
    // 60 mounted, one tool, two speeds, and six gauges
    expect(passes.one).toBeCloseTo(300 + 0.5 + 30 + 24, 9)
    expect(passesFor({ ...many, pieces: 2 }).withGauges).toBe(false)
  })

  it('never takes less for more blanks, nor more for a batch than for its halves one after the other', () => {
    for (let seed = 301; seed <= 340; seed++) {
      const input = randomBatch(seed, 6)
      const best = (pieces: number): number => {
        const { one, several } = passesFor({ ...input, pieces })
        return Math.min(one, several)
      }
      for (const pieces of [1, 2, 3, 5, 9, 20]) {
        expect(best(pieces + 1), `seed ${seed}`).toBeGreaterThanOrEqual(best(pieces) - 1e-9)
        expect(best(2 * pieces), `seed ${seed}`).toBeLessThanOrEqual(2 * best(pieces) + 1e-9)
      }
    }
  })

  it('has no tool in hand while marks are struck', () => {
    const marked = batch([
      work('a', 'gouge'),
      work('marks', 'story stick', { stage: 'layout' }),
      work('b', 'gouge'),
    ])
    expect(segmentMinutes(marked, 0, 3).tools).toBe(0.5)
  })

  it('adds to the time what the shop’s own mountings and tools take over the usual', () => {
    const operations = [work('a', 'gouge'), work('b', 'skew')]
    const of = (more: object): number =>
      passesFor(batch(operations, { mayBreak: [false, false], costs: more })).changes!
    // ten blanks at 4 min instead of 1; 20 tools at 0.65 min instead of 0.15
    expect(of({ mounting: 4 }) - of({})).toBeCloseTo(30, 9)
    expect(of({ toolChange: 0.65 }) - of({})).toBeCloseTo(10, 9)
  })

  it('keeps what is held at one end on the lathe, and says why', () => {
    const input = batch([work('a', 'gouge'), work('c', 'skew')], {
      costs: { ...costs, toolChange: 9 },
      mayBreak: [false, false],
      whyNoBreak: 'Held fast.',
    })
    expect(passesFor(input)).toMatchObject({ chosen: 'one', why: 'Held fast.' })
  })

  it('looks at long work in good time, at the places where another kind of operation begins', () => {
    const operations = Array.from({ length: 1500 }, (_, i) =>
      work(`o${i}`, i % 2 ? 'skew' : 'gouge', { kind: i < 700 ? 'straight' : 'bead' }),
    )
    const passes = passesFor(batch(operations))
    expect(passes.one).toBeGreaterThan(0)
    expect(passes.segments!.flatMap((segment) => segment.operations)).toHaveLength(1500)
  })
})
