import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { flatsOf } from '../../../web/elements/part-flats.ts'
import { jointMarks } from '../../../web/elements/part-joints.ts'

const leg = (shoulder: 'square' | 'rounded'): Profile => ({
  split: false,
  stations: [
    { at: 0, diameter: 30, then: 'straight' },
    { at: 100, diameter: 40, then: 'square', side: 60, shoulder },
    { at: 200, then: 'straight' },
  ],
})

const points = (path: string): [number, number][] =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)])

describe('a face left square', () => {
  it('is a plain rectangle when the shoulder is cut straight in', () => {
    const [flat] = flatsOf(leg('square'), 1)
    expect(points(flat!.path)).toEqual([
      [100, 30],
      [200, 30],
      [200, -30],
      [100, -30],
    ])
  })

  it('narrows to a point at a rounded shoulder and is full by the end of it', () => {
    // a = side·(√2 − 1)/2 = 12.43 mm; at u = a/2, rho = 30 + 12.43·√0.75 = 40.76 and the flat √(40.76² − 30²) = 27.59.
    const [flat] = flatsOf(leg('rounded'), 10)
    const edge = points(flat!.path).filter(([, y]) => y >= 0)
    expect(edge[0]).toEqual([1000, 0])
    const near = edge.find(([x]) => Math.abs(x - 1000 - 62.1) < 8)!
    const u = (near[0] - 1000) / 10
    const rho = 30 + 12.426 * Math.sqrt(1 - (1 - u / 12.426) ** 2)
    expect(near[1] / 10).toBeCloseTo(Math.sqrt(rho ** 2 - 900), 1)
    expect(edge.filter(([x]) => x > 1000 + 125).every(([, y]) => y === 300)).toBe(true)
  })
})

describe('joints on the drawing', () => {
  const mortise = { kind: 'mortise' as const, at: 150, size: [10, 40], depth: 25, stage: 'square' as const }

  it('open on the face towards the eye, are dashed on the others', () => {
    expect(jointMarks([{ ...mortise, face: 'A' }], leg('square'), 1)[0]).toEqual({
      path: 'M130 -5H170V5H130Z',
      hidden: false,
    })
    expect(jointMarks([{ ...mortise, face: 'C' }], leg('square'), 1)[0]!.hidden).toBe(true)
  })

  it('go in from the side of face B by their depth', () => {
    expect(jointMarks([{ ...mortise, face: 'B' }], leg('square'), 1)[0]!.path).toBe('M130 30H170V5H130Z')
  })
})
