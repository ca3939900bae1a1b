import type { TouchUp } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export const touchUpListQuery = (db: Db, job: string) =>
  db
    .selectFrom('touch_ups')
    .selectAll()
    .where('job_id', '=', job)
    .where('taken_back_at', 'is', null)
    .orderBy('at')
    .orderBy('key')

/** The edges brought back during a batch, the oldest first; those taken back are left out. */
export async function touchUpList(db: Db, job: string): Promise<TouchUp[]> {
  return (await touchUpListQuery(db, job).execute()).map(({ key, job_id, tool, kind, by, at }) => ({
    key,
    job: job_id,
    tool,
    kind,
    ...(by === null ? {} : { by }),
    at,
  }))
}
