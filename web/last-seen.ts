import { isAway, matchOf, piecesOf } from './api.ts'
import { floorOf } from './api-floor.ts'
import { type Batch, batchOf, jobAndPlan } from './store.ts'

/** What was fetched, and whether just now or before the connection went. */
export interface Seen<T> {
  value: T
  now: boolean
}

const kept = new Map<string, unknown>()

/**
 * Asks, and keeps the answer. While the server cannot be reached the last answer stands in, as long as this page
 * lives; without one, and when the server refuses, it throws what the asking threw.
 */
export async function lastSeen<T>(key: string, ask: () => Promise<T>): Promise<Seen<T>> {
  try {
    const value = await ask()
    kept.set(key, value)
    return { value, now: true }
  } catch (failure) {
    if (!isAway(failure) || !kept.has(key)) throw failure
    return { value: kept.get(key) as T, now: false }
  }
}

/** The batch of a job as it stands, or as last seen. */
export const seenBatch = (jobId: string): Promise<Seen<Batch>> =>
  lastSeen(`batch ${jobId}`, () => batchOf(jobId))

/** The match of a job at a stage, or as last seen. */
export const seenMatch = (jobId: string, stage: Parameters<typeof matchOf>[1]) =>
  lastSeen(`match ${jobId} ${stage}`, () => matchOf(jobId, stage))

/** What was logged on the floor of a batch, or as last seen. */
export const seenFloor = (jobId: string) => lastSeen(`floor ${jobId}`, () => floorOf(jobId))

/** Fetches what the rack and the checks need before they are opened, so that they open without a connection too. */
export async function readAhead(jobId: string, stage: Parameters<typeof matchOf>[1]): Promise<void> {
  try {
    const known = await jobAndPlan(jobId)
    if (known.job.state === 'draft') return
    const [pieces] = await Promise.all([piecesOf(jobId), seenMatch(jobId, stage), seenFloor(jobId)])
    kept.set(`batch ${jobId}`, { ...known, pieces } satisfies Batch)
  } catch {
    // Whoever opens the page asks again and is told.
  }
}
