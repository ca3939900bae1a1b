import type { EnteredJob } from '../../shared/contract/job.ts'
import type { Context } from '../context.ts'
import { inTransaction } from '../storage/database.ts'
import { isJobIdTaken, jobById, type StoredJob } from '../storage/read/jobs.ts'
import { reservedOfJob } from '../storage/read/reserved.ts'
import { hideJob, insertJob, updateJob } from '../storage/write/jobs.ts'
import { freeBoardsOf } from '../storage/write/reserved.ts'
import { once } from '../storage/write/used-keys.ts'
import { checkFrozen } from './frozen-file.ts'
import { changedMeanwhile, keyTaken } from './refusals.ts'

type Revision = Pick<StoredJob, 'id' | 'revision'>

/** Stores a new job, once for its key. */
export async function addJob(
  context: Context,
  { key, file }: EnteredJob & { key: string },
): Promise<StoredJob> {
  const at = context.now()
  const job = await once(context.db, { noun: 'job', key, body: file }, at, async (tx) => {
    if (await isJobIdTaken(tx, key)) throw keyTaken('job', key)
    await insertJob(tx, { id: key, file, at })
    return (await jobById(tx, key))!
  })
  context.changes.tell('job', key)
  return job
}

/**
 * Stores a new revision of a job.
 * @throws Problem `wrong-state` when the batch is started and the change is to its work
 */
export async function changeJob(
  context: Context,
  { id, revision }: Revision,
  { file }: EnteredJob,
): Promise<StoredJob> {
  const job = await inTransaction(context.db, async (tx) => {
    const stored = await jobById(tx, id)
    if (stored && stored.state !== 'draft' && stored.revision === revision) checkFrozen(stored.file, file)
    if (!(await updateJob(tx, { id, file, at: context.now() }, revision))) throw changedMeanwhile()
    return (await jobById(tx, id))!
  })
  context.changes.tell('job', id)
  return job
}

/** Takes a job off every list; boards reserved for it are free again. */
export async function dropJob(context: Context, { id, revision }: Revision): Promise<void> {
  const freed = await inTransaction(context.db, async (tx) => {
    const held = await reservedOfJob(tx, id)
    if (!(await hideJob(tx, id, revision, context.now()))) throw changedMeanwhile()
    await freeBoardsOf(tx, id)
    return held
  })
  context.changes.tell('job', id)
  for (const { board } of freed) context.changes.tell('board', board)
}
