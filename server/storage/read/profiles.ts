import type { PhotoType } from '../../../shared/contract/photo.ts'
import type { Db } from '../database.ts'
import type { Tables } from '../tables.ts'

/** A profile of the library as stored: `file` holds what was entered, untouched. */
export interface StoredProfile {
  id: string
  revision: number
  file: Record<string, unknown>
  createdAt: string
  updatedAt: string
}

/** One version of a profile, as it was entered. */
export interface StoredVersion {
  id: string
  revision: number
  file: Record<string, unknown>
  at: string
}

export interface StoredPhoto {
  type: PhotoType
  image: Buffer
}

const present = (db: Db) =>
  db
    .selectFrom('profiles')
    .innerJoin('profile_versions as present', (join) =>
      join
        .onRef('present.profile_id', '=', 'profiles.id')
        .onRef('present.revision', '=', 'profiles.revision'),
    )
    .select(['profiles.id', 'profiles.revision', 'profiles.created_at', 'present.file', 'present.at'])
    .where('profiles.deleted_at', 'is', null)

type PresentRow = Pick<Tables['profiles'], 'id' | 'revision' | 'created_at'> &
  Pick<Tables['profile_versions'], 'file' | 'at'>

const storedProfile = ({ id, revision, file, created_at, at }: PresentRow): StoredProfile => ({
  id,
  revision,
  file: JSON.parse(file),
  createdAt: created_at,
  updatedAt: at,
})

export const profileListQuery = (db: Db) => present(db).orderBy('profiles.created_at').orderBy('profiles.id')

/** Every profile of the library, the oldest first. */
export async function profileList(db: Db): Promise<StoredProfile[]> {
  return (await profileListQuery(db).execute()).map(storedProfile)
}

/** The profile of that id, unless it was deleted. */
export async function profileById(db: Db, id: string): Promise<StoredProfile | undefined> {
  const row = await present(db).where('profiles.id', '=', id).executeTakeFirst()
  return row && storedProfile(row)
}

/** Whether an id was ever given to a profile, deleted ones too. */
export async function isProfileIdTaken(db: Db, id: string): Promise<boolean> {
  return (await db.selectFrom('profiles').select('id').where('id', '=', id).executeTakeFirst()) !== undefined
}

export const versionListQuery = (db: Db, profile: string) =>
  db.selectFrom('profile_versions').selectAll().where('profile_id', '=', profile).orderBy('revision', 'desc')

/** Every version of a profile, the newest first. */
export async function versionList(db: Db, profile: string): Promise<StoredVersion[]> {
  return (await versionListQuery(db, profile).execute()).map((row) => ({
    id: row.profile_id,
    revision: row.revision,
    file: JSON.parse(row.file),
    at: row.at,
  }))
}

/** The photograph behind a profile, if there is one. */
export async function photoOf(db: Db, profile: string): Promise<StoredPhoto | undefined> {
  return db
    .selectFrom('profile_photos')
    .select(['type', 'image'])
    .where('profile_id', '=', profile)
    .executeTakeFirst()
}
