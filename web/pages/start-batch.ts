import { startJob } from '../api.ts'
import { jobDrafts } from '../drafts.ts'
import { noteChange } from '../store.ts'

/**
 * Starts the batch of a job; the same key again, when an answer got lost, starts it once.
 * @throws Error while this device holds unsaved edits of the job, or when the server refuses
 */
export async function startBatch(jobId: string, key: string): Promise<void> {
  if (jobDrafts.has(jobId))
    throw new Error(
      'There are unsaved edits on the Profile page: save or drop them before the start freezes the plan.',
    )
  await startJob(jobId, key)
  noteChange({ kind: 'job', id: jobId })
}
