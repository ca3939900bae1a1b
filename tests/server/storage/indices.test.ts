import { CompiledQuery } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Db, migrate, openDatabase } from '../../../server/storage/database.ts'
import { boardListQuery } from '../../../server/storage/read/boards.ts'
import { jobListQuery } from '../../../server/storage/read/jobs.ts'
import { pieceListQuery, pieceStepsQuery, stepListQuery } from '../../../server/storage/read/pieces.ts'
import { planListQuery } from '../../../server/storage/read/plans.ts'
import { profileListQuery, versionListQuery } from '../../../server/storage/read/profiles.ts'
import { readingListQuery } from '../../../server/storage/read/readings.ts'
import { reservedListQuery } from '../../../server/storage/read/reserved.ts'
import { loggedStepsQuery } from '../../../server/storage/read/times.ts'
import { touchUpListQuery } from '../../../server/storage/read/touch-ups.ts'
import { weighingListQuery } from '../../../server/storage/read/weighings.ts'

let db: Db
beforeAll(async () => {
  db = openDatabase(':memory:')
  await migrate(db)
})
afterAll(() => db.destroy())

interface Query {
  compile: () => { sql: string; parameters: readonly unknown[] }
}

/** How SQLite would go about a query, a line for each step. */
async function stepsOf(query: Query): Promise<string[]> {
  const { sql, parameters } = query.compile()
  const explained = CompiledQuery.raw(`explain query plan ${sql}`, [...parameters])
  return (await db.executeQuery<{ detail: string }>(explained)).rows.map(({ detail }) => detail)
}

describe('a key', () => {
  it('is looked up over all nouns from an index', async () => {
    const steps = await stepsOf(db.selectFrom('used_keys').selectAll().where('key', '=', 'k'))
    expect(steps.join('; ')).toContain('used_keys_by_key')
  })
})

describe('every list', () => {
  it.each<[string, () => Query, string]>([
    ['jobs', () => jobListQuery(db), 'jobs_by_age'],
    ['plans of a job', () => planListQuery(db, 'j'), 'plans_by_job'],
    ['pieces of a job', () => pieceListQuery(db, 'j'), 'sqlite_autoindex_pieces_2'],
    ['steps of a job', () => stepListQuery(db, 'j'), 'steps_by_job'],
    ['times of a job', () => loggedStepsQuery(db, 'j'), 'steps_by_job'],
    ['steps of a piece', () => pieceStepsQuery(db, 'p'), 'steps_by_piece'],
    ['readings of a job', () => readingListQuery(db, 'j'), 'readings_by_job'],
    [
      'readings of a stage',
      () => readingListQuery(db, 'j').where('stage', '=', 'sanded'),
      'readings_by_stage',
    ],
    ['touch-ups of a job', () => touchUpListQuery(db, 'j'), 'touch_ups_by_job'],
    ['weighings of a job', () => weighingListQuery(db, 'j'), 'weighings_by_job'],
    ['profiles', () => profileListQuery(db), 'profiles_by_age'],
    ['versions of a profile', () => versionListQuery(db, 'p'), 'sqlite_autoindex_profile_versions_1'],
    ['boards', () => boardListQuery(db), 'boards_by_age'],
    ['reserved boards', () => reservedListQuery(db), 'reserved_boards_by_board'],
    [
      'batches that have a board',
      () => reservedListQuery(db).where('board_key', '=', 'b'),
      'reserved_boards_by_board',
    ],
    [
      'boards of a job',
      () => reservedListQuery(db).where('job_id', '=', 'j'),
      'sqlite_autoindex_reserved_boards_1',
    ],
  ])('of %s is read in order from an index', async (_, query, index) => {
    const steps = await stepsOf(query())
    expect(steps.join('; ')).toContain(index)
    expect(steps.filter((step) => /TEMP B-TREE/.test(step))).toEqual([])
    expect(steps.filter((step) => /^SCAN/.test(step) && !/USING INDEX/.test(step))).toEqual([])
  })
})
