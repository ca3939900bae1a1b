import { describe, expect, it } from 'vitest'
import { edgeLife, type GrindingInput, grindingFor } from '../../../shared/turning/edge.ts'

const batch: GrindingInput = {
  uses: [{ tool: 'gouge', cut: 'slicing', minutes: 60 }],
  tools: [{ name: 'gouge', kind: 'spindle-gouge', steel: 'hss' }],
  hardnessN: 5000,
  pieces: 8,
  touchUpsPerRegrind: 8,
  touchUpMinutes: 1,
  regrindMinutes: 5,
}

describe('edgeLife', () => {
  it('is shorter in every harder wood', () => {
    const lives = [1800, 3000, 4500, 6400, 9000].map((hardnessN) =>
      edgeLife({ steel: 'hss', cut: 'slicing', hardnessN }),
    )
    expect([...lives].sort((a, b) => b - a)).toEqual(lives)
    expect(new Set(lives).size).toBe(lives.length)
  })

  it('is shorter scraping and parting than slicing, and longer in better steel', () => {
    const life = (steel: 'carbon' | 'hss' | 'powder', cut: 'slicing' | 'parting' | 'scraping') =>
      edgeLife({ steel, cut, hardnessN: 5000 })
    expect(life('hss', 'scraping')).toBeLessThan(life('hss', 'parting'))
    expect(life('hss', 'parting')).toBeLessThan(life('hss', 'slicing'))
    expect(life('carbon', 'slicing')).toBeLessThan(life('hss', 'slicing'))
    expect(life('powder', 'slicing')).toBeGreaterThan(life('hss', 'slicing'))
  })
})

describe('grindingFor', () => {
  it('touches up each time an edge is used up', () => {
    // 60 min at 15 min an edge: 4 edges over 8 pieces.
    expect(grindingFor(batch)[0]).toMatchObject({
      tool: 'gouge',
      minutesCutting: 60,
      life: 15,
      piecesBetween: 2,
      touchUps: 4,
      regrinds: 0,
      minutes: 4,
      angle: 30,
    })
  })

  it('puts a regrind in the place of every so many touch-ups', () => {
    // 20 edges, every ninth a regrind: 2 regrinds of 5 min and 18 touch-ups of 1 min.
    const long = { ...batch, uses: [{ tool: 'gouge', cut: 'slicing' as const, minutes: 300 }] }
    expect(grindingFor(long)[0]).toMatchObject({ touchUps: 18, regrinds: 2, minutes: 28 })
  })

  it('goes to the wheel only once the touch-ups before it are used up', () => {
    // 8 touch-ups, then the wheel: the edges 9 and 18 of 17 and 18.
    const worn = (edges: number) => {
      const tools = [{ name: 'gouge', steel: 'hss' as const, piecesPerEdge: 1 }]
      return grindingFor({ ...batch, tools, pieces: edges, touchUpsPerRegrind: 8 })[0]
    }
    expect(worn(8)).toMatchObject({ touchUps: 8, regrinds: 0 })
    expect(worn(17)).toMatchObject({ touchUps: 16, regrinds: 1 })
    expect(worn(18)).toMatchObject({ touchUps: 16, regrinds: 2 })
  })

  it('adds up the wear of different cuts with one tool', () => {
    const mixed = {
      ...batch,
      uses: [
        { tool: 'gouge', cut: 'slicing' as const, minutes: 15 },
        { tool: 'gouge', cut: 'scraping' as const, minutes: 15 },
      ],
    }
    // One edge slicing, two scraping: 30 min on 3 edges.
    expect(grindingFor(mixed)[0]).toMatchObject({ minutesCutting: 30, life: 10, touchUps: 3 })
  })

  it('goes by the shop’s own count of pieces where it has one', () => {
    const ruled = { ...batch, tools: [{ name: 'gouge', steel: 'hss' as const, piecesPerEdge: 3 }] }
    const [gouge] = grindingFor(ruled)
    expect(gouge).toMatchObject({ piecesBetween: 3, touchUps: 3 })
    expect(gouge!.why).toContain('3 pieces')
  })

  it('names every factor', () => {
    const [gouge] = grindingFor(batch)
    for (const factor of ['15 min', 'hss', 'slicing', '5000 N', 'common practice, no source'])
      expect(gouge!.why).toContain(factor)
  })

  it('says so when the hardness of the wood is not known', () => {
    expect(grindingFor({ ...batch, hardnessN: undefined })[0]!.why).toContain('unknown')
  })

  it('never asks for fewer edges in a harder wood', () => {
    const edges = [2000, 4000, 6000, 8000].map((hardnessN) => {
      const [gouge] = grindingFor({ ...batch, hardnessN })
      return gouge!.touchUps + gouge!.regrinds
    })
    expect([...edges].sort((a, b) => a - b)).toEqual(edges)
  })

  it('leaves a tool that has not cut alone', () => {
    const idle = { ...batch, uses: [{ tool: 'gouge', cut: 'slicing' as const, minutes: 0 }] }
    expect(grindingFor(idle)[0]).toMatchObject({ touchUps: 0, regrinds: 0, minutes: 0 })
  })
})

describe('the shop’s own lives of an edge', () => {
  const own = (lives: object[], change: Partial<GrindingInput> = {}) =>
    grindingFor({
      ...batch,
      tools: [{ name: 'gouge', steel: 'carbon', lives: lives as { minutes: number }[] }],
      ...change,
    })[0]!
  const use = { tool: 'gouge', cut: 'slicing' as const, minutes: 60 }

  it('come before steel and table', () => {
    expect(own([{ minutes: 20 }])).toMatchObject({ touchUps: 3, piecesBetween: 2 })
    expect(own([{ minutes: 20 }]).life).toBeCloseTo(20, 9)
  })

  it('are told as minutes of slicing: scraping takes half of them', () => {
    expect(own([{ minutes: 20 }], { uses: [{ ...use, cut: 'scraping' }] }).life).toBeCloseTo(10, 9)
  })

  it('are shorter in harder wood than they were counted in', () => {
    // Four times as hard: half the life.
    expect(own([{ minutes: 20, hardnessN: 2500 }], { hardnessN: 10_000 }).life).toBeCloseTo(10, 9)
    expect(own([{ minutes: 20, hardnessN: 2500 }], { hardnessN: 2500 }).life).toBeCloseTo(20, 9)
  })

  it('are scaled with the speed at the rim only where both speeds are known', () => {
    const slow = { uses: [{ ...use, rim: 6 }] }
    expect(own([{ minutes: 20, rim: 6 }], slow).life).toBeCloseTo(20, 9)
    // By the law, (6.6 ÷ 6)^4 by the usual exponent of a quarter.
    expect(own([{ minutes: 20, rim: 6.6 }], slow).life).toBeCloseTo(20 * 1.1 ** 4, 9)
    expect(own([{ minutes: 20 }], slow).life).toBeCloseTo(20, 9)
    expect(own([{ minutes: 20, rim: 6.6 }]).life).toBeCloseTo(20, 9)
  })

  it('say how they were brought to this work', () => {
    expect(own([{ minutes: 20, rim: 6 }]).why).toContain('20 min at 6 m/s')
    expect(own([{ minutes: 20, rim: 6 }]).why).toContain('from memory')
    expect(own([{ minutes: 20 }]).why).toContain('not scaled with speed')
  })

  it('stand back behind pieces between touch-ups that the shop has set', () => {
    const both = { name: 'gouge', steel: 'hss' as const, piecesPerEdge: 4, lives: [{ minutes: 1 }] }
    expect(grindingFor({ ...batch, tools: [both] })[0]).toMatchObject({ piecesBetween: 4, touchUps: 2 })
  })
})
