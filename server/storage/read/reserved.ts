import type { Db } from '../database.ts'

/** Boards of one key that a started batch is cut from. */
export interface Reserved {
  board: string
  job: string
  /** What the job is called. */
  name: string
  count: number
}

export const reservedListQuery = (db: Db) =>
  db
    .selectFrom('reserved_boards')
    .innerJoin('jobs', 'jobs.id', 'reserved_boards.job_id')
    .select(['board_key', 'job_id', 'count', 'jobs.name'])
    .orderBy('board_key')
    .orderBy('job_id')

type Row = Awaited<ReturnType<ReturnType<typeof reservedListQuery>['execute']>>[number]

const reserved = ({ board_key, job_id, count, name }: Row): Reserved => ({
  board: board_key,
  job: job_id,
  name,
  count,
})

/** Every board that is reserved, by its key. */
export async function reservedList(db: Db): Promise<Reserved[]> {
  return (await reservedListQuery(db).execute()).map(reserved)
}

/** Who has boards of a key reserved. */
export async function reservedOfBoard(db: Db, key: string): Promise<Reserved[]> {
  return (await reservedListQuery(db).where('board_key', '=', key).execute()).map(reserved)
}

/** What a job has reserved. */
export async function reservedOfJob(db: Db, job: string): Promise<Reserved[]> {
  return (await reservedListQuery(db).where('job_id', '=', job).execute()).map(reserved)
}
