import type { Kysely } from 'kysely'

/** Boards that started batches are cut from, and what went off the rack and onto it when a batch was sawn. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('reserved_boards')
    .addColumn('job_id', 'text', (c) => c.notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('board_key', 'text', (c) => c.notNull().references('boards.key'))
    .addColumn('count', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('reserved_boards_once', ['job_id', 'board_key'])
    .execute()
  await db.schema
    .createIndex('reserved_boards_by_board')
    .on('reserved_boards')
    .columns(['board_key', 'job_id'])
    .execute()
  await db.schema
    .createTable('sawn_batches')
    .addColumn('job_id', 'text', (c) => c.primaryKey().notNull().references('jobs.id').onDelete('cascade'))
    .addColumn('key', 'text', (c) => c.notNull())
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('boards', 'text', (c) => c.notNull())
    .addColumn('offcuts', 'text', (c) => c.notNull())
    .execute()
}

export async function down(db: Kysely<unknown>): Promise<void> {
  for (const table of ['sawn_batches', 'reserved_boards']) await db.schema.dropTable(table).execute()
}
