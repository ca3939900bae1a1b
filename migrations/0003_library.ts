import type { Kysely } from 'kysely'

/** Profiles kept in the library with every version of them, and the photograph behind a profile. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('profiles')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('revision', 'integer', (c) => c.notNull())
    .addColumn('created_at', 'text', (c) => c.notNull())
    .addColumn('deleted_at', 'text')
    .execute()
  await db.schema.createIndex('profiles_by_age').on('profiles').columns(['created_at', 'id']).execute()
  await db.schema
    .createTable('profile_versions')
    .addColumn('profile_id', 'text', (c) => c.notNull().references('profiles.id').onDelete('cascade'))
    .addColumn('revision', 'integer', (c) => c.notNull())
    .addColumn('file', 'text', (c) => c.notNull())
    .addColumn('at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('profile_versions_once', ['profile_id', 'revision'])
    .execute()
  await db.schema
    .createTable('profile_photos')
    .addColumn('profile_id', 'text', (c) =>
      c.primaryKey().notNull().references('profiles.id').onDelete('cascade'),
    )
    .addColumn('type', 'text', (c) => c.notNull())
    .addColumn('image', 'blob', (c) => c.notNull())
    .addColumn('stored_at', 'text', (c) => c.notNull())
    .execute()
}

export async function down(db: Kysely<unknown>): Promise<void> {
  for (const table of ['profile_photos', 'profile_versions', 'profiles'])
    await db.schema.dropTable(table).execute()
}
