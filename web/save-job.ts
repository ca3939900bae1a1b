import { addJob, changeJob, newKey, Refusal, storedJob } from './api.ts'
import type { Draft } from './drafts.ts'
import { jobFileOf, sentFile } from './job-entries.ts'
import type { StoredJob } from './job-file.ts'

const sorted = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(sorted)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([, inner]) => inner !== undefined)
            .sort(([a], [b]) => (a < b ? -1 : 1))
            .map(([name, inner]) => [name, sorted(inner)]),
        )
      : value

/** Whether two files say the same, in whatever order their fields stand. */
export const sameFile = (a: unknown, b: unknown): boolean =>
  JSON.stringify(sorted(a)) === JSON.stringify(sorted(b))

/** Whether the stored job is what this draft sent before: then only the answer was lost. */
const isOurs = (stored: StoredJob, { sent = [] }: Draft): boolean => {
  const file = jobFileOf(stored)
  return sent.some((each) => sameFile(file, each))
}

async function there(id: string): Promise<StoredJob | undefined> {
  try {
    return await storedJob(id)
  } catch (failure) {
    if (failure instanceof Refusal && failure.status === 404) return undefined
    throw failure
  }
}

/** So many sendings are remembered: the server may hold any of them when answers got lost. */
const REMEMBERED = 5

/** The draft as it is about to be sent, to be kept before it is. */
export const withSending = (draft: Draft): Draft => ({
  ...draft,
  sent: [...(draft.sent ?? []), sentFile(draft.file)].slice(-REMEMBERED),
})

/** A key that is taken by what this draft sent before leads to a change of that job, any other to a new key. */
async function storeNew(draft: Draft): Promise<StoredJob> {
  const file = sentFile(draft.file)
  try {
    return await addJob({ ...file, key: draft.key })
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.code !== 'key-reused') throw failure
    const stored = await there(draft.key)
    if (stored && isOurs(stored, draft)) return changeJob(stored.id, stored.revision, file)
    return addJob({ ...file, key: newKey() })
  }
}

/** When the job is at a later revision by what this draft sent before, the change goes on from there. */
async function storeChange(jobId: string, draft: Draft, revision: number): Promise<StoredJob> {
  const file = sentFile(draft.file)
  try {
    return await changeJob(jobId, revision, file)
  } catch (failure) {
    if (!(failure instanceof Refusal) || failure.status !== 412) throw failure
    const stored = await there(jobId)
    if (stored && isOurs(stored, draft)) return changeJob(jobId, stored.revision, file)
    throw failure
  }
}

/**
 * Stores a draft `withSending`: of a new job where there is no `jobId`, else as a change of the revision it started
 * from.
 * @throws Refusal
 */
export const saveJob = (jobId: string, draft: Draft): Promise<StoredJob> =>
  jobId && draft.revision !== undefined ? storeChange(jobId, draft, draft.revision) : storeNew(draft)
