import { describe, expect, it } from 'vitest'
import { restMoves, speedChanges } from '../../../shared/route/rest-moves.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { leg, routeInput, stepLathe } from './route-inputs.ts'

type Row = Parameters<typeof restMoves>[0][number]
const at = (restPosition: number, restThrough?: number): Row => ({
  kind: 'straight',
  stage: 'turning',
  restPosition,
  ...(restThrough !== undefined && { restThrough }),
})
const sand: Row = { kind: 'sand', stage: 'sanding' }
const size: Row = { kind: 'size', stage: 'turning' }

describe('restMoves', () => {
  it('counts every position gone to, there and back', () => {
    expect(restMoves([at(1), at(1), at(2), at(1)])).toBe(2)
    expect(restMoves([at(1, 3), at(3, 1)])).toBe(4)
  })

  it('counts taking it away to sand and bringing it back, once each', () => {
    expect(restMoves([at(1), sand, sand, at(1)])).toBe(2)
  })

  it('counts nothing for work that leaves it alone, nor for setting it at a mounting', () => {
    expect(restMoves([at(2), size, at(2)])).toBe(0)
    expect(restMoves([at(3), { kind: 'return', stage: 'set-up', restPosition: 1 }, at(1)])).toBe(0)
  })

  it('is never more with a longer rest than with a shorter one on one leg', () => {
    const moves = [4, 6, 8, 12].map((length) => {
      const lathe = { ...stepLathe, restLength: inches(length) }
      return restMoves(routeFor(routeInput(leg(), { lathe })).operations)
    })
    expect(moves).toEqual([...moves].sort((a, b) => b - a))
    expect(moves[0]).toBeGreaterThan(moves[3]!)
  })
})

describe('speedChanges', () => {
  it('counts each other speed, and every mounting, which starts with the speed down', () => {
    const rows = [
      { kind: 'mount', rpm: 400 },
      { kind: 'rough', rpm: 600 },
      { kind: 'label' },
      { kind: 'size', rpm: 600 },
      { kind: 'sand', rpm: 400 },
      { kind: 'return', rpm: 400 },
    ] as const
    expect(speedChanges(rows)).toBe(4)
  })
})
