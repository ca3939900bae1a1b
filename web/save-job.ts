import { addJob, changeJob, storedJob } from './api.ts'
import { jobFileOf, sentFile } from './job-entries.ts'
import type { JobFile, StoredJob } from './job-file.ts'
import { DraftSaver } from './save-draft.ts'

/** Stores jobs being written. */
export const jobSaver = new DraftSaver<JobFile, StoredJob>({
  add: addJob,
  change: changeJob,
  load: storedJob,
  sent: sentFile,
  fileOf: jobFileOf,
})
