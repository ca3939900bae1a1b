import type { Piece } from '../../shared/piece.ts'
import { type Plan, partsOf } from '../../shared/plan.ts'
import type { Context } from '../context.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { pieceList, type StoredPiece } from '../storage/read/pieces.ts'
import { planOfBatch } from '../storage/read/plans.ts'

/** Keys of the operations done piece by piece, in the plan's order; set-up is done once for the batch. */
export const pieceOperations = ({ operations }: Pick<Plan, 'operations'>): string[] =>
  operations.filter((operation) => operation.minutesEach > 0).map((operation) => operation.key)

/** A piece with how far it has come: operations done over operations that are done piece by piece. */
export function pieceWithProgress(piece: StoredPiece, plan: Pick<Plan, 'operations'>): Piece {
  const each = pieceOperations(plan)
  const done = new Set(piece.done)
  const progress = each.length === 0 ? 1 : each.filter((key) => done.has(key)).length / each.length
  return { ...piece, progress }
}

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
