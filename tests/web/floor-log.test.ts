import { describe, expect, it } from 'vitest'
import { withSending, withWaiting } from '../../web/floor-log.ts'
import type { Sending } from '../../web/outbox.ts'

const nothing = { steps: [], touchUps: [], weighings: [] }
const at = (hour: number) => `2026-06-01T${String(hour).padStart(2, '0')}:00:00Z`
const touchUp = (key: string, hour: number): Sending => ({
  kind: 'touch-up',
  job: 'j',
  body: { key, tool: 'gouge', kind: 'touch-up', at: at(hour) },
})
const step: Sending = {
  kind: 'step',
  job: 'j',
  piece: 'p',
  body: { key: 's', operation: 'rough', at: at(8) },
}
const weighing: Sending = { kind: 'weighing', job: 'j', body: { key: 'w', number: 1, grams: 800, at: at(8) } }

describe('withSending', () => {
  it('puts every kind in its place, in the order of time, once for its key', () => {
    const floor = [touchUp('late', 10), touchUp('early', 9), touchUp('late', 10), step, weighing].reduce(
      withSending,
      nothing,
    )
    expect(floor.touchUps.map(({ key }) => key)).toEqual(['early', 'late'])
    expect(floor.steps).toEqual([{ key: 's', operation: 'rough', at: at(8), piece: 'p' }])
    expect(floor.weighings).toEqual([{ key: 'w', number: 1, grams: 800, at: at(8), job: 'j' }])
  })

  it('leaves what is no note of the floor alone', () => {
    const spoil: Sending = { kind: 'spoil', job: 'j', piece: 'p', body: { key: 'x', reason: 'split' } }
    expect(withSending(nothing, spoil)).toBe(nothing)
  })
})

describe('withWaiting', () => {
  it('counts what waits, not what the server refused', () => {
    const floor = withWaiting(nothing, [
      { sending: touchUp('a', 9) },
      { sending: touchUp('b', 10), refused: 'no such tool' },
    ])
    expect(floor.touchUps.map(({ key }) => key)).toEqual(['a'])
  })
})
