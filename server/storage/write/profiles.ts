import type { Db } from '../database.ts'
import type { StoredPhoto } from '../read/profiles.ts'

export interface ProfileEntry {
  id: string
  file: Record<string, unknown>
  at: string
}

async function insertVersion(db: Db, { id, file, at }: ProfileEntry, revision: number): Promise<void> {
  const row = { profile_id: id, revision, file: JSON.stringify(file), at }
  await db.insertInto('profile_versions').values(row).execute()
}

/** Stores a new profile with its first version. */
export async function insertProfile(db: Db, entry: ProfileEntry): Promise<void> {
  const row = { id: entry.id, revision: 1, created_at: entry.at, deleted_at: null }
  await db.insertInto('profiles').values(row).execute()
  await insertVersion(db, entry, 1)
}

/** Stores a new version beside those before; answers whether `revision` was still the present one. */
export async function updateProfile(db: Db, entry: ProfileEntry, revision: number): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('profiles')
    .set({ revision: revision + 1 })
    .where('id', '=', entry.id)
    .where('revision', '=', revision)
    .where('deleted_at', 'is', null)
    .executeTakeFirstOrThrow()
  if (numUpdatedRows !== 1n) return false
  await insertVersion(db, entry, revision + 1)
  return true
}

/** Hides a profile from every list; its rows stay. Answers whether `revision` was still the present one. */
export async function hideProfile(db: Db, id: string, revision: number, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('profiles')
    .set({ deleted_at: at })
    .where('id', '=', id)
    .where('revision', '=', revision)
    .where('deleted_at', 'is', null)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Lays a photograph behind a profile in the place of the one before, or takes it away. */
export async function savePhoto(
  db: Db,
  profile: string,
  photo: StoredPhoto | undefined,
  at: string,
): Promise<void> {
  await db.deleteFrom('profile_photos').where('profile_id', '=', profile).execute()
  if (!photo) return
  const row = { profile_id: profile, ...photo, stored_at: at }
  await db.insertInto('profile_photos').values(row).execute()
}
