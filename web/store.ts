import type { Change } from '../shared/contract/change.ts'
import { freeBoards } from '../shared/cutting/on-hand.ts'
import type { StockBoard } from '../shared/cutting/stock-board.ts'
import type { ShopRecord } from '../shared/estimate/record.ts'
import type { Piece } from '../shared/piece.ts'
import type { Plan } from '../shared/plan.ts'
import type { Shop } from '../shared/shop.ts'
import type { Species } from '../shared/wood/species.ts'
import { boards, onChange, piecesOf, planOf, shop, species, storedJob } from './api.ts'
import { shopRecord } from './api-record.ts'
import type { StoredJob } from './job-file.ts'

const kept = new Map<string, Promise<unknown>>()

/** Asks once and keeps the answer until something changes; a refusal is not kept. */
function once<T>(key: string, ask: () => Promise<T>): Promise<T> {
  const had = kept.get(key) as Promise<T> | undefined
  if (had) return had
  const asked = ask()
  kept.set(key, asked)
  asked.catch(() => kept.delete(key))
  return asked
}

export interface ShopAndWoods {
  shop: Shop
  woods: Species[]
  /** Boards that no started batch has reserved. */
  onHand: readonly StockBoard[]
  /** The shop's own times. */
  record?: ShopRecord
}

/** The shop's settings and its times, every wood (the handbook's and its own), and what is free on the rack. */
export const shopAndWoods = (): Promise<ShopAndWoods> =>
  once('shop', async () => {
    const [settings, woods, rack, record] = await Promise.all([shop(), species(), boards(), shopRecord()])
    return { shop: settings, woods, onHand: freeBoards(rack), record }
  })

export interface JobAndPlan {
  job: StoredJob
  plan: Plan
}

/** Jobs whose plan was worked out and not frozen, as far as is known here. */
const drafts = new Set<string>()

/** A stored job with its plan: worked out anew for a draft, frozen for a started batch. */
export const jobAndPlan = (jobId: string): Promise<JobAndPlan> =>
  once(`job ${jobId}`, async () => {
    const [job, plan] = await Promise.all([storedJob(jobId), planOf(jobId)])
    if (job.state === 'draft') drafts.add(jobId)
    else drafts.delete(jobId)
    return { job, plan }
  })

/** A job with its plan and, once its batch is started, its pieces. */
export interface Batch extends JobAndPlan {
  pieces?: Piece[]
}

/** The batch of a job as it stands. */
export async function batchOf(jobId: string): Promise<Batch> {
  const known = await jobAndPlan(jobId)
  return known.job.state === 'draft' ? known : { ...known, pieces: await piecesOf(jobId) }
}

/** A pause in which changes heard of one after the other are fetched once, ms. */
export const PAUSE = 250

const watchers = new Set<(change: Change) => void>()
let listening = false

/** Drops what a change makes stale and tells the pages. Called for changes heard of and for our own. */
export function noteChange(change: Change): void {
  // Drafts are planned from the shop as it is, the boards on its rack and its own times.
  if (change.kind === 'shop' || change.kind === 'board') kept.clear()
  else if (change.kind === 'piece')
    for (const key of ['shop', ...[...drafts].map((id) => `job ${id}`)]) kept.delete(key)
  else if (change.kind === 'job') kept.delete(`job ${change.id}`)
  for (const watcher of watchers) watcher(change)
}

/** Calls back when something was changed here or on another device; returns the way to stop. */
export function watchChanges(watcher: (change: Change) => void): () => void {
  watchers.add(watcher)
  if (!listening) onChange(noteChange)
  listening = true
  return () => {
    watchers.delete(watcher)
  }
}
