import type { ReadingStage } from '../../../shared/matching/reading.ts'
import type { StoredReading } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export const readingListQuery = (db: Db, job: string) =>
  db
    .selectFrom('readings')
    .innerJoin('pieces', 'pieces.id', 'readings.piece_id')
    .selectAll('readings')
    .select('pieces.number as number')
    .where('readings.job_id', '=', job)
    .where('readings.taken_back_at', 'is', null)
    .orderBy('readings.at')
    .orderBy('readings.sequence')

/**
 * Every reading of a job, or of one stage of it, the oldest first; earlier readings stay as history, those taken
 * back are left out.
 */
export async function readingList(db: Db, job: string, stage?: ReadingStage): Promise<StoredReading[]> {
  const all = readingListQuery(db, job)
  const rows = await (stage === undefined ? all : all.where('stage', '=', stage)).execute()
  return rows.map((row) => ({
    key: row.key,
    piece: row.piece_id,
    number: row.number,
    station: row.station,
    kind: row.kind,
    stage: row.stage,
    value: row.value_mm,
    values: JSON.parse(row.values_mm) as number[],
    ...(row.out_of_round_mm === null ? {} : { outOfRound: row.out_of_round_mm }),
    target: row.target_mm,
    verdict: row.verdict,
    at: row.at,
    ...(row.by === null ? {} : { by: row.by }),
    ...(row.instrument === null ? {} : { instrument: row.instrument }),
  }))
}
