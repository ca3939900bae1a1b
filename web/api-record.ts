import type { BatchTimes } from '../shared/estimate/planned-actual.ts'
import type { ShopRecord } from '../shared/estimate/record.ts'
import { ask } from './api.ts'

/** What the shop's own times say. */
export const shopRecord = () => ask<ShopRecord>('/record')
/** Planned against actual of a started batch. */
export const batchTimes = (jobId: string) => ask<BatchTimes>(`/jobs/${encodeURIComponent(jobId)}/record`)
