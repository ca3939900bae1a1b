import { describe, expect, it } from 'vitest'
import { countedEdges, edgeStates, type FloorLog } from '../../../shared/turning/edge-wear.ts'

const operations = [
  { key: 'rough', tool: 'gouge', cut: 'slicing' as const, minutesEach: 2 },
  { key: 'cove', tool: 'gouge', cut: 'scraping' as const, minutesEach: 1 },
  { key: 'size', tool: 'parting tool', cut: 'parting' as const, minutesEach: 1 },
]
const at = (hour: number) => `2026-06-01T${String(hour).padStart(2, '0')}:00:00Z`
const whole = (hour: number) => [
  { operation: 'rough', at: at(hour) },
  { operation: 'cove', at: at(hour) },
]
const sharpened = (hour: number, kind: 'touch-up' | 'regrind' = 'touch-up') => ({
  tool: 'gouge',
  kind,
  at: at(hour),
})
const log = (change: Partial<FloorLog> = {}): FloorLog => ({
  operations,
  grinding: [{ tool: 'gouge', piecesBetween: 3, perRegrind: 2 }],
  steps: [],
  touchUps: [],
  perBlank: 1,
  ...change,
})
const gouge = (change: Partial<FloorLog>) => edgeStates(log(change))[0]!

describe('edgeStates', () => {
  it('takes every edge as fresh at the start', () => {
    expect(gouge({})).toEqual({ tool: 'gouge', worked: 0, left: 3, regrind: false })
  })

  it('counts a piece by the wear its operations cost: scraping wears twice as fast as slicing', () => {
    // Two minutes of slicing and one of scraping: half of the wear each.
    expect(gouge({ steps: [{ operation: 'rough', at: at(8) }] }).worked).toBeCloseTo(0.5, 12)
    expect(gouge({ steps: whole(8) })).toMatchObject({ worked: 1, left: 2 })
    expect(gouge({ steps: [{ operation: 'size', at: at(8) }] }).worked).toBe(0)
  })

  it('is due after as many pieces as were planned, in whatever parts they were done', () => {
    const thirds = [1, 2, 3].map((n) => ({
      key: `t${n}`,
      tool: 'gouge',
      cut: 'slicing' as const,
      minutesEach: 0.1,
    }))
    const steps = [8, 9, 10].flatMap((hour) => thirds.map(({ key }) => ({ operation: key, at: at(hour) })))
    expect(gouge({ operations: thirds, steps }).left).toBe(0)
    expect(gouge({ operations: thirds, steps: steps.slice(1) }).left).toBeGreaterThan(0)
  })

  it('starts anew with every touch-up, and again when one is taken back', () => {
    const steps = [8, 9, 10, 12].flatMap(whole)
    expect(gouge({ steps }).left).toBe(0)
    expect(gouge({ steps, touchUps: [sharpened(11)] })).toMatchObject({ worked: 1, left: 2, last: at(11) })
    expect(gouge({ steps, touchUps: [{ ...sharpened(11), tool: 'skew' }] }).left).toBe(0)
  })

  it('sends a tool to the wheel after so many touch-ups since it was last there', () => {
    expect(gouge({ touchUps: [sharpened(8)] }).regrind).toBe(false)
    expect(gouge({ touchUps: [sharpened(9), sharpened(8)] }).regrind).toBe(true)
    expect(gouge({ touchUps: [sharpened(8), sharpened(9), sharpened(10, 'regrind')] }).regrind).toBe(false)
    expect(
      gouge({ touchUps: [8, 9].map((h) => sharpened(h)), grinding: [{ tool: 'gouge', piecesBetween: 3 }] })
        .regrind,
    ).toBe(false)
  })
})

describe('countedEdges', () => {
  const hours = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]
  const steps = hours.flatMap(whole)

  it('counts pieces from one touch-up to the next, not those before the first', () => {
    // Touched up before the pieces of 2, 7, 12 o’clock and at the end: 5, 5 and 1 pieces between.
    const touchUps = [2, 7, 12, 13].map((hour) => sharpened(hour))
    const [counted] = countedEdges(log({ steps, touchUps }))
    expect(counted).toMatchObject({ tool: 'gouge', middle: 5 })
    expect(counted!.pieces.map((n) => Math.round(n * 1e9) / 1e9)).toEqual([5, 5, 1])
  })

  it('gives the middle in minutes of slicing, of one piece where several come from a blank', () => {
    const touchUps = [2, 7, 12, 13].map((hour) => sharpened(hour))
    // 5 pieces × (2 min slicing + 1 min scraping, which counts double).
    expect(countedEdges(log({ steps, touchUps }))[0]!.minutes).toBeCloseTo(20, 9)
    expect(countedEdges(log({ steps, touchUps, perBlank: 2 }))[0]!.minutes).toBeCloseTo(10, 9)
  })

  it('says nothing of fewer than three counts, or of what was planned anyway', () => {
    expect(countedEdges(log({ steps, touchUps: [2, 7, 12].map((hour) => sharpened(hour)) }))).toEqual([])
    expect(countedEdges(log({ steps, touchUps: [1, 4, 7, 10].map((hour) => sharpened(hour)) }))).toEqual([])
  })

  it('leaves a touch-up pressed twice out', () => {
    const touchUps = [2, 2, 7, 7, 12].map((hour) => sharpened(hour))
    expect(countedEdges(log({ steps, touchUps }))).toEqual([])
  })
})
