import type { Piece, Step } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'
import type { Tables } from '../tables.ts'

/** A piece as stored: how far it has come follows from its plan. */
export type StoredPiece = Omit<Piece, 'progress'>

function storedPiece(row: Omit<Tables['pieces'], 'batch_id'>, done: Iterable<string>): StoredPiece {
  const { spoiled_reason: reason, spoiled_at: at } = row
  const piece = { id: row.id, job: row.job_id, number: row.number, spare: row.spare === 1 }
  const spoiled = reason !== null && at !== null ? { spoiled: { reason, at } } : {}
  return { ...piece, ...spoiled, done: [...new Set(done)] }
}

const columns = ['id', 'job_id', 'number', 'spare', 'spoiled_reason', 'spoiled_at'] as const

export const pieceListQuery = (db: Db, job: string) =>
  db.selectFrom('pieces').select(columns).where('job_id', '=', job).orderBy('number')

export const stepListQuery = (db: Db, job: string) =>
  db
    .selectFrom('steps')
    .select(['piece_id', 'operation'])
    .where('job_id', '=', job)
    .where('taken_back_at', 'is', null)
    .orderBy('at')
    .orderBy('key')

/** Every piece of a job by its number. */
export async function pieceList(db: Db, job: string): Promise<StoredPiece[]> {
  const done = new Map<string, string[]>()
  for (const { piece_id, operation } of await stepListQuery(db, job).execute()) {
    const known = done.get(piece_id)
    if (known) known.push(operation)
    else done.set(piece_id, [operation])
  }
  return (await pieceListQuery(db, job).execute()).map((row) => storedPiece(row, done.get(row.id) ?? []))
}

/** The piece of that id. */
export async function pieceById(db: Db, id: string): Promise<StoredPiece | undefined> {
  const row = await db.selectFrom('pieces').select(columns).where('id', '=', id).executeTakeFirst()
  if (!row) return undefined
  const steps = await stepsOfPiece(db, id)
  return storedPiece(
    row,
    steps.map((step) => step.operation),
  )
}

export const pieceStepsQuery = (db: Db, piece: string) =>
  db
    .selectFrom('steps')
    .selectAll()
    .where('piece_id', '=', piece)
    .where('taken_back_at', 'is', null)
    .orderBy('at')
    .orderBy('key')

const storedStep = (row: Omit<Tables['steps'], 'job_id' | 'stored_at' | 'taken_back_at'>): Step => ({
  key: row.key,
  piece: row.piece_id,
  operation: row.operation,
  ...(row.minutes === null ? {} : { minutes: row.minutes }),
  ...(row.by === null ? {} : { by: row.by }),
  at: row.at,
})

/** What was logged on one piece and not taken back, in the order it was done. */
export const stepsOfPiece = async (db: Db, piece: string): Promise<Step[]> =>
  (await pieceStepsQuery(db, piece).execute()).map(storedStep)

/** What was logged on all pieces of a job and not taken back, in the order it was done. */
export const stepsOfJob = async (db: Db, job: string): Promise<Step[]> =>
  (await stepListQuery(db, job).select(['key', 'minutes', 'by', 'at']).execute()).map(storedStep)
