import { describe, expect, it } from 'vitest'
import type { JobMatch } from '../../../shared/contract/match.ts'
import { matchSet } from '../../../shared/matching/match.ts'
import type { SetFile } from '../../../shared/matching/set.ts'
import type { NewReading } from '../../../web/api.ts'
import { SetInHand } from '../../../web/pages/set-in-hand.ts'

const set: SetFile = {
  units: 'mm',
  stations: [{ key: 'foot', target: 25, plus: 0.5, minus: 0.5 }],
  pieces: [
    { key: 'p1', readings: { foot: 25.1 } },
    { key: 'p2', readings: {} },
  ],
}
const fetched: JobMatch = { ...matchSet(set), set, numbers: { p1: 1, p2: 2 } }

const reading = (key: string, piece: string, value: number, more: Partial<NewReading> = {}): NewReading => ({
  key,
  piece,
  station: 'foot',
  stage: 'sanded',
  value,
  at: '2026-03-02T10:00:00Z',
  ...more,
})
const verdicts = (inHand: SetInHand, waiting: NewReading[] = []) =>
  inHand.at('sanded', fetched, waiting).match.pieces.map(({ verdict }) => verdict)

describe('the set in hand', () => {
  it('is what was fetched while nothing was taken', () => {
    expect(new SetInHand().at('sanded', fetched, []).set).toBe(set)
  })

  it('judges a reading before the server has told it back', () => {
    const inHand = new SetInHand()
    inHand.add(reading('a', 'p2', 26))
    expect(verdicts(inHand)).toEqual(['in', 'over'])
    inHand.drop('a')
    expect(verdicts(inHand)).toEqual(['in', undefined])
    inHand.add(reading('b', 'p2', 24))
    expect(verdicts(inHand)).toEqual(['in', 'under'])
  })

  it('keeps stages apart', () => {
    const inHand = new SetInHand()
    inHand.add(reading('a', 'p2', 26, { stage: 'turned' }))
    expect(verdicts(inHand)).toEqual(['in', undefined])
  })

  it('counts what waits in the outbox, a later reading taken here before it', () => {
    const inHand = new SetInHand()
    expect(verdicts(inHand, [reading('a', 'p2', 26)])).toEqual(['in', 'over'])
    inHand.add(reading('b', 'p2', 25))
    expect(verdicts(inHand, [reading('a', 'p2', 26)])).toEqual(['in', 'in'])
  })

  it('lets go only of what was stored before the fetch began', () => {
    const inHand = new SetInHand()
    inHand.add(reading('a', 'p1', 26))
    inHand.noteStored('a')
    const held = inHand.storedSoFar()
    inHand.add(reading('b', 'p2', 26))
    inHand.noteStored('b')
    inHand.noteFetched('sanded', held)
    expect(verdicts(inHand)).toEqual(['in', 'over'])
  })
})
