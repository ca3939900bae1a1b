import { type Kysely, sql } from 'kysely'

async function createJobs(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('jobs')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('revision', 'integer', (c) => c.notNull())
    .addColumn('file', 'text', (c) => c.notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull().check(sql`state in ('draft', 'started', 'done')`))
    .addColumn('created_at', 'text', (c) => c.notNull())
    .addColumn('updated_at', 'text', (c) => c.notNull())
    .addColumn('deleted_at', 'text')
    .execute()
  await db.schema.createIndex('jobs_by_age').on('jobs').columns(['created_at', 'id']).execute()
}

async function createPlans(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('plans')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('job_revision', 'integer', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('version', 'text', (c) => c.notNull())
    .addColumn('plan', 'text', (c) => c.notNull())
    .addColumn('inputs', 'text', (c) => c.notNull())
    .execute()
  await db.schema.createIndex('plans_by_job').on('plans').columns(['job_id', 'made_at', 'id']).execute()
  await db.schema
    .createTable('batches')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('job_id', 'text', (c) => c.notNull().unique().references('jobs.id').onDelete('cascade'))
    .addColumn('plan_id', 'text', (c) => c.notNull().references('plans.id').onDelete('cascade'))
    .addColumn('started_at', 'text', (c) => c.notNull())
    .execute()
}

async function createPieces(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('pieces')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('batch_id', 'text', (c) => c.notNull().references('batches.id').onDelete('cascade'))
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('spare', 'integer', (c) => c.notNull().check(sql`spare in (0, 1)`))
    .addColumn('spoiled_reason', 'text')
    .addColumn('spoiled_at', 'text')
    .addUniqueConstraint('pieces_by_number', ['job_id', 'number'])
    .execute()
  await db.schema
    .createTable('steps')
    .addColumn('key', 'text', (c) => c.primaryKey().notNull())
    .addColumn('piece_id', 'text', (c) => c.notNull().references('pieces.id').onDelete('cascade'))
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('operation', 'text', (c) => c.notNull())
    .addColumn('minutes', 'double precision')
    .addColumn('by', 'text')
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('stored_at', 'text', (c) => c.notNull())
    .execute()
  await db.schema.createIndex('steps_by_job').on('steps').columns(['job_id', 'at', 'key']).execute()
  await db.schema.createIndex('steps_by_piece').on('steps').columns(['piece_id', 'at', 'key']).execute()
}

async function createReadings(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('readings')
    .addColumn('key', 'text', (c) => c.primaryKey().notNull())
    .addColumn('piece_id', 'text', (c) => c.notNull().references('pieces.id').onDelete('cascade'))
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('station', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('stage', 'text', (c) => c.notNull())
    .addColumn('value_mm', 'double precision', (c) => c.notNull())
    .addColumn('values_mm', 'text', (c) => c.notNull())
    .addColumn('out_of_round_mm', 'double precision')
    .addColumn('target_mm', 'double precision', (c) => c.notNull())
    .addColumn('verdict', 'text', (c) => c.notNull().check(sql`verdict in ('in', 'over', 'under')`))
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('stored_at', 'text', (c) => c.notNull())
    .addColumn('sequence', 'integer', (c) => c.notNull())
    .addColumn('by', 'text')
    .addColumn('instrument', 'text')
    .execute()
  await db.schema
    .createIndex('readings_by_job')
    .on('readings')
    .columns(['job_id', 'at', 'sequence'])
    .execute()
  await db.schema
    .createIndex('readings_by_stage')
    .on('readings')
    .columns(['job_id', 'stage', 'at', 'sequence'])
    .execute()
}

async function createShopFloor(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('shops')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull().check(sql`id = 'shop'`))
    .addColumn('revision', 'integer', (c) => c.notNull())
    .addColumn('file', 'text', (c) => c.notNull())
    .addColumn('updated_at', 'text', (c) => c.notNull())
    .execute()
  await db.schema
    .createTable('boards')
    .addColumn('key', 'text', (c) => c.primaryKey().notNull())
    .addColumn('file', 'text', (c) => c.notNull())
    .addColumn('created_at', 'text', (c) => c.notNull())
    .addColumn('updated_at', 'text', (c) => c.notNull())
    .execute()
  await db.schema.createIndex('boards_by_age').on('boards').columns(['created_at', 'key']).execute()
  await db.schema
    .createTable('used_keys')
    .addColumn('noun', 'text', (c) => c.notNull())
    .addColumn('key', 'text', (c) => c.notNull())
    .addColumn('body_hash', 'text', (c) => c.notNull())
    .addColumn('answer', 'text', (c) => c.notNull())
    .addColumn('used_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('used_keys_once', ['noun', 'key'])
    .execute()
}

/** Jobs, frozen plans, batches of numbered pieces, steps and readings; the shop, its boards, used keys. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await createJobs(db)
  await createPlans(db)
  await createPieces(db)
  await createReadings(db)
  await createShopFloor(db)
}

export async function down(db: Kysely<unknown>): Promise<void> {
  const tables = ['used_keys', 'boards', 'shops', 'readings', 'steps', 'pieces', 'batches', 'plans', 'jobs']
  for (const table of tables) await db.schema.dropTable(table).execute()
}
