import type { LibraryProfile } from '../../shared/library.ts'
import { addJob, newKey } from '../api.ts'
import { sentFile } from '../job-entries.ts'
import { jobOfProfile } from '../library-file.ts'
import { go, jobPath } from '../router.ts'
import { noteChange } from '../store.ts'

/** The key a job of each version is sent under until it is stored, so that a lost answer makes no second one. */
const keys = new Map<string, string>()

/**
 * Stores a new job of a profile of the library and goes to it.
 * @throws Refusal
 */
export async function makeJob(entry: LibraryProfile): Promise<void> {
  const version = `${entry.id} ${entry.revision}`
  const key = keys.get(version) ?? newKey()
  keys.set(version, key)
  const job = await addJob({ ...sentFile(jobOfProfile(entry)), key })
  keys.delete(version)
  noteChange({ kind: 'job', id: job.id })
  go(jobPath(job.id, 'profile'))
}
