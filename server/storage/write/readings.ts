import { sql } from 'kysely'
import type { StoredReading } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export async function insertReading(
  db: Db,
  job: string,
  reading: StoredReading,
  storedAt: string,
): Promise<void> {
  await db
    .insertInto('readings')
    .values({
      key: reading.key,
      piece_id: reading.piece,
      job_id: job,
      station: reading.station,
      kind: reading.kind,
      stage: reading.stage,
      value_mm: reading.value,
      values_mm: JSON.stringify(reading.values),
      out_of_round_mm: reading.outOfRound ?? null,
      target_mm: reading.target,
      verdict: reading.verdict,
      at: reading.at,
      stored_at: storedAt,
      sequence: sql<number>`(select count(*) from readings where job_id = ${job})`,
      by: reading.by ?? null,
      instrument: reading.instrument ?? null,
      taken_back_at: null,
    })
    .execute()
}
