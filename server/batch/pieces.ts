import { numberedPieces, type Piece, progressOf } from '../../shared/piece.ts'
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

/** The pieces that a batch of the plan starts with. */
export function piecesFor(job: string, plan: Plan): StoredPiece[] {
  return numberedPieces(partsOf(plan), plan.job.quantity).map((piece) => ({
    ...piece,
    id: pieceId(job, piece.number),
    job,
    done: [],
  }))
}

/** The pieces of a job by their numbers; none before its batch is started. */
export async function piecesOf({ db }: Context, { id }: StoredJob): Promise<Piece[]> {
  const frozen = await planOfBatch(db, id)
  if (!frozen) return []
  return (await pieceList(db, id)).map((piece) => pieceWithProgress(piece, frozen.plan))
}
