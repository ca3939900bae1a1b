import { Problem } from '../../shared/problem.ts'
import type { Context } from '../context.ts'
import { jobById, type StoredJob } from '../storage/read/jobs.ts'
import { pieceById, type StoredPiece } from '../storage/read/pieces.ts'
import { type FrozenPlan, planOfBatch } from '../storage/read/plans.ts'
import { profileById, type StoredProfile } from '../storage/read/profiles.ts'

function notFound(what: string, id: string): Problem {
  const message = `There is no ${what} ${JSON.stringify(id)}.`
  return new Problem('not-found', message, [{ path: 'id', message }])
}

/** @throws Problem `not-found` */
export async function jobOf({ db }: Pick<Context, 'db'>, id: string): Promise<StoredJob> {
  const job = await jobById(db, id)
  if (!job) throw notFound('job', id)
  return job
}

/** @throws Problem `not-found` */
export async function profileOf({ db }: Pick<Context, 'db'>, id: string): Promise<StoredProfile> {
  const profile = await profileById(db, id)
  if (!profile) throw notFound('profile', id)
  return profile
}

/** A piece with its job and the plan its batch was started with. */
export interface PieceInHand {
  piece: StoredPiece
  job: StoredJob
  frozen: FrozenPlan
}

/** @throws Problem `not-found` */
export async function pieceOf(context: Pick<Context, 'db'>, id: string): Promise<PieceInHand> {
  const piece = await pieceById(context.db, id)
  if (!piece) throw notFound('piece', id)
  const job = await jobOf(context, piece.job)
  return { piece, job, frozen: await startedPlan(context, job) }
}

/**
 * The plan that the job's batch was started with.
 * @throws Problem `wrong-state` while the batch is not started
 */
export async function startedPlan({ db }: Pick<Context, 'db'>, job: StoredJob): Promise<FrozenPlan> {
  const frozen = await planOfBatch(db, job.id)
  if (frozen) return frozen
  throw new Problem('wrong-state', 'The batch is not started: start it, then its pieces can be worked on.')
}
