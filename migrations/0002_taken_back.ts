import type { Kysely } from 'kysely'

/** Steps and readings that can be taken back and are kept all the same; keys looked up over all nouns. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('steps').addColumn('taken_back_at', 'text').execute()
  await db.schema.alterTable('readings').addColumn('taken_back_at', 'text').execute()
  await db.schema.createIndex('used_keys_by_key').on('used_keys').column('key').execute()
}

export async function down(db: Kysely<unknown>): Promise<void> {
  await db.schema.dropIndex('used_keys_by_key').execute()
  await db.schema.alterTable('readings').dropColumn('taken_back_at').execute()
  await db.schema.alterTable('steps').dropColumn('taken_back_at').execute()
}
