import type { JobMatch } from '../../shared/contract/match.ts'
import { matchSet } from '../../shared/matching/match.ts'
import type { ReadingStage } from '../../shared/matching/reading.ts'
import type { Match, SetFile } from '../../shared/matching/set.ts'
import type { NewReading } from '../api.ts'
import { type TakenReading, withReadings } from '../elements/spread-set.ts'

interface Taken extends TakenReading {
  key: string
  stage: ReadingStage
}

export interface MatchedSet {
  set: SetFile
  match: Match
}

/** The values of a reading in mm; none for one that is not written in numbers. */
function takenOf({ key, piece, station, stage = 'sanded', value, values }: NewReading): Taken[] {
  const read = (values ?? [value]).filter((v) => typeof v === 'number')
  return read.length === 0 ? [] : [{ key, piece, station, stage, values: read }]
}

/**
 * The set as it is known at this moment: what was fetched last, with the readings taken here that the server may not
 * have told back yet.
 */
export class SetInHand {
  private taken: Taken[] = []
  private readonly stored = new Set<string>()
  private latest?: { of: SetFile; keys: string; matched: MatchedSet }

  add(reading: NewReading): void {
    this.taken = [...this.taken, ...takenOf(reading)]
  }

  /** The server refused it, or the person took it out. */
  drop(key: string): void {
    this.taken = this.taken.filter((reading) => reading.key !== key)
  }

  /** The server has it: the next fetch will hold it. */
  noteStored(key: string): void {
    this.stored.add(key)
  }

  /** Keys that a fetch begun now will hold. */
  storedSoFar(): ReadonlySet<string> {
    return new Set(this.stored)
  }

  /** Lets go of what a fetch of that stage has brought back. */
  noteFetched(stage: ReadingStage, held: ReadonlySet<string>): void {
    this.taken = this.taken.filter((reading) => reading.stage !== stage || !held.has(reading.key))
  }

  /** The set of a stage with what waits in the outbox and what was taken here. */
  at(stage: ReadingStage, fetched: JobMatch, waiting: readonly NewReading[]): MatchedSet {
    const known = new Set(this.taken.map(({ key }) => key))
    const queued = waiting.flatMap(takenOf).filter(({ key }) => !known.has(key))
    const later = [...queued, ...this.taken].filter((reading) => reading.stage === stage)
    if (later.length === 0) return { set: fetched.set, match: fetched }
    const keys = later.map(({ key }) => key).join()
    if (this.latest?.of === fetched.set && this.latest.keys === keys) return this.latest.matched
    const set = withReadings(fetched.set, later)
    this.latest = { of: fetched.set, keys, matched: { set, match: matchSet(set) } }
    return this.latest.matched
  }
}
