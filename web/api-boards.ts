import type { RackBoard } from '../shared/contract/board.ts'
import type { JobWood, SawnAnswer } from '../shared/contract/sawn.ts'
import { ask, job } from './api.ts'

export const changeBoard = (board: Record<string, unknown> & { key: string }) =>
  ask<RackBoard>(`/boards/${encodeURIComponent(board.key)}`, { method: 'PUT', body: board })
export const deleteBoard = (key: string) =>
  ask<void>(`/boards/${encodeURIComponent(key)}`, { method: 'DELETE' })
/** The boards a job has reserved, and what was sawn for it. */
export const jobWood = (jobId: string) => ask<JobWood>(`${job(jobId)}/sawn`)
/** Says that the blanks of a started batch are sawn: boards leave the rack, offcuts come onto it. */
export const saySawn = (jobId: string, key: string) =>
  ask<SawnAnswer>(`${job(jobId)}/sawn`, { method: 'POST', body: { key } })
export const takeBackSawn = (jobId: string) => ask<void>(`${job(jobId)}/sawn`, { method: 'DELETE' })
