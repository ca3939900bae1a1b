import type { Weighing } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export const weighingListQuery = (db: Db, job: string) =>
  db
    .selectFrom('weighings')
    .selectAll()
    .where('job_id', '=', job)
    .where('taken_back_at', 'is', null)
    .orderBy('at')
    .orderBy('key')

/** What the wood of a batch weighed and metered while it dried, the oldest first; those taken back are left out. */
export async function weighingList(db: Db, job: string): Promise<Weighing[]> {
  return (await weighingListQuery(db, job).execute()).map((row) => ({
    key: row.key,
    job: row.job_id,
    number: row.number,
    ...(row.grams === null ? {} : { grams: row.grams }),
    ...(row.moisture === null ? {} : { moisture: row.moisture }),
    ...(row.by === null ? {} : { by: row.by }),
    at: row.at,
  }))
}
