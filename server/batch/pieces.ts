import { type Piece, progressOf } from '../../shared/piece.ts'
import { type Plan, partsOf } from '../../shared/plan.ts'
import type { Context } from '../context.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { pieceList, type StoredPiece } from '../storage/read/pieces.ts'
import { planOfBatch } from '../storage/read/plans.ts'

/** A piece with how far it has come: operations done over operations that are done piece by piece. */
export const pieceWithProgress = (piece: StoredPiece, { operations }: Pick<Plan, 'operations'>): Piece => ({
  ...piece,
  progress: progressOf(piece.done, operations),
})

export const pieceId = (job: string, number: number): string => `${job}-${number}`

/** The pieces of a batch, numbered from 1; those beyond the quantity are spares. */
export function piecesFor(job: string, plan: Plan): StoredPiece[] {
  return Array.from({ length: partsOf(plan) }, (_, i) => ({
    id: pieceId(job, i + 1),
    job,
    number: i + 1,
    spare: i + 1 > plan.job.quantity,
    done: [],
  }))
}

/** The pieces of a job by their numbers; none before its batch is started. */
export async function piecesOf({ db }: Context, { id }: StoredJob): Promise<Piece[]> {
  const frozen = await planOfBatch(db, id)
  if (!frozen) return []
  return (await pieceList(db, id)).map((piece) => pieceWithProgress(piece, frozen.plan))
}
