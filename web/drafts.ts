import type { JobFile } from './job-file.ts'

/** Edits that are not saved yet, kept on this device so that nothing entered is lost. */
export interface Draft {
  file: JobFile
  /** The stored revision the edits started from; absent for a new job. */
  revision?: number
  /** The key a new job will be stored under, so that sending it twice stores it once. */
  key: string
}

const keyOf = (jobId: string) => `setwright.draft.${jobId || 'new'}`

/** The kept edits of a job, of the new job for `''`. */
export function draftOf(jobId: string): Draft | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(keyOf(jobId)) ?? 'null') as Draft | null
    return kept?.file?.profile?.stations ? kept : undefined
  } catch {
    return undefined
  }
}

/** Keeps edits; false when this device has no room for them. */
export function keepDraft(jobId: string, draft: Draft): boolean {
  try {
    localStorage.setItem(keyOf(jobId), JSON.stringify(draft))
    return true
  } catch {
    return false
  }
}

export function dropDraft(jobId: string): void {
  localStorage.removeItem(keyOf(jobId))
}
