import { describe, expect, it } from 'vitest'
import { readJob } from '../../../shared/job.ts'
import { numberedPieces, type Piece } from '../../../shared/piece.ts'
import { driesInShop, dryingRows, piecesText, weighingDue } from '../../../web/elements/drying-rows.ts'
import { dowel } from '../../jobs.ts'

const DAY = 24 * 3_600_000
const start = Date.parse('2026-03-02T08:00:00Z')
const on = (day: number) => new Date(start + day * DAY).toISOString()
const job = readJob({ ...dowel(), moisture: 30, serviceMoisture: 8 })
const pieces: Piece[] = numberedPieces(4, 4).map((piece) => ({
  ...piece,
  id: `p${piece.number}`,
  job: 'j',
  done: [],
  progress: 0,
}))
const weighed = (number: number, day: number, grams: number) => ({
  key: `${number}-${day}`,
  job: 'j',
  number,
  grams,
  at: on(day),
})

describe('dryingRows', () => {
  it('judges every piece by its own weighings, and leaves spoiled ones out', () => {
    const spoiled = pieces.map((p) =>
      p.number === 3 ? { ...p, spoiled: { reason: 'split', at: on(1) } } : p,
    )
    const rows = dryingRows({ job } as Parameters<typeof dryingRows>[0], spoiled, [
      weighed(1, 0, 800),
      weighed(2, 0, 900),
      weighed(1, 8, 799),
      weighed(2, 8, 860),
    ])
    expect(rows.map(({ number, state }) => [number, state])).toEqual([
      [1, 'dry'],
      [2, 'drying'],
      [4, 'unweighed'],
    ])
    expect(rows[0]!.latest).toMatchObject({ grams: 799 })
  })
})

describe('weighingDue', () => {
  const rows = dryingRows({ job } as Parameters<typeof dryingRows>[0], pieces, [
    weighed(1, 0, 800),
    weighed(2, 3, 900),
    weighed(3, 0, 700),
    weighed(3, 7, 700),
  ])

  it('names the pieces never weighed, and those weighed a week ago', () => {
    expect(weighingDue(rows, start + 6 * DAY)).toEqual({ due: [4], next: start + 7 * DAY })
    expect(weighingDue(rows, start + 7 * DAY)).toEqual({ due: [1, 4], next: start + 10 * DAY })
    expect(weighingDue(rows, start + 10 * DAY)).toEqual({ due: [1, 2, 4] })
  })
})

describe('driesInShop', () => {
  it('is where wood is sawn or turned wetter than it may be finish-turned', () => {
    const plan = (moisture: number) =>
      ({ job: readJob({ ...dowel(), moisture, serviceMoisture: 8 }), blank: {} }) as Parameters<
        typeof driesInShop
      >[0]
    expect(driesInShop(plan(10))).toBe(false)
    expect(driesInShop(plan(10.1))).toBe(true)
  })
})

describe('piecesText', () => {
  it('joins runs of numbers', () => {
    expect(piecesText([3])).toBe('piece 3')
    expect(piecesText([7, 1, 2, 3])).toBe('pieces 1 to 3 and 7')
    expect(piecesText([1, 3, 5])).toBe('pieces 1, 3 and 5')
  })
})
