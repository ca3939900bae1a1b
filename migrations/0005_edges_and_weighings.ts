import type { Kysely } from 'kysely'

/** Edges brought back during a batch, and wood weighed while it dries. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('touch_ups')
    .addColumn('key', 'text', (c) => c.primaryKey().notNull())
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('tool', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('by', 'text')
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('stored_at', 'text', (c) => c.notNull())
    .addColumn('taken_back_at', 'text')
    .execute()
  await db.schema.createIndex('touch_ups_by_job').on('touch_ups').columns(['job_id', 'at', 'key']).execute()
  await db.schema
    .createTable('weighings')
    .addColumn('key', 'text', (c) => c.primaryKey().notNull())
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('number', 'integer', (c) => c.notNull())
    .addColumn('grams', 'real')
    .addColumn('moisture', 'real')
    .addColumn('by', 'text')
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('stored_at', 'text', (c) => c.notNull())
    .addColumn('taken_back_at', 'text')
    .execute()
  await db.schema.createIndex('weighings_by_job').on('weighings').columns(['job_id', 'at', 'key']).execute()
}

export async function down(db: Kysely<unknown>): Promise<void> {
  for (const table of ['weighings', 'touch_ups']) await db.schema.dropTable(table).execute()
}
