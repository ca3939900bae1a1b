import type { EnteredPhoto } from '../../shared/contract/photo.ts'
import type { EnteredProfile } from '../../shared/contract/profile.ts'
import { readJob } from '../../shared/job.ts'
import { jobFileFrom, type LibraryProfile, STAND_IN_SPECIES } from '../../shared/library.ts'
import type { Plan } from '../../shared/plan.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import { inTransaction } from '../storage/database.ts'
import { isProfileIdTaken, photoOf, profileById, type StoredProfile } from '../storage/read/profiles.ts'
import { hideProfile, insertProfile, savePhoto, updateProfile } from '../storage/write/profiles.ts'
import { once } from '../storage/write/used-keys.ts'
import { profileOf } from './find.ts'
import { changedMeanwhile, keyTaken } from './refusals.ts'

type Revision = Pick<StoredProfile, 'id' | 'revision'>

/** Keeps a new profile in the library, once for its key. */
export async function addProfile(
  context: Context,
  { key, file }: EnteredProfile & { key: string },
): Promise<StoredProfile> {
  const at = context.now()
  const profile = await once(context.db, { noun: 'profile', key, body: file }, at, async (tx) => {
    if (await isProfileIdTaken(tx, key)) throw keyTaken('profile', key)
    await insertProfile(tx, { id: key, file, at })
    return (await profileById(tx, key))!
  })
  context.changes.tell('profile', key)
  return profile
}

/** Stores a new version of a profile; the one before is kept. */
export async function changeProfile(
  context: Context,
  { id, revision }: Revision,
  { file }: EnteredProfile,
): Promise<StoredProfile> {
  const profile = await inTransaction(context.db, async (tx) => {
    if (!(await updateProfile(tx, { id, file, at: context.now() }, revision))) throw changedMeanwhile()
    return (await profileById(tx, id))!
  })
  context.changes.tell('profile', id)
  return profile
}

/** Takes a profile off the library's list. */
export async function dropProfile(context: Context, { id, revision }: Revision): Promise<void> {
  if (!(await hideProfile(context.db, id, revision, context.now()))) throw changedMeanwhile()
  context.changes.tell('profile', id)
}

/** The photograph behind a profile as a data address. */
export async function photoAddress({ db }: Pick<Context, 'db'>, id: string): Promise<string | undefined> {
  const photo = await photoOf(db, id)
  return photo && `data:${photo.type};base64,${photo.image.toString('base64')}`
}

/** A photograph as it is stored. */
export const storedPhoto = ({ type, base64 }: EnteredPhoto) => ({
  type,
  image: Buffer.from(base64, 'base64'),
})

/**
 * Lays a photograph behind a profile, or takes it away.
 * @throws Problem `not-found`
 */
export async function changePhoto(context: Context, id: string, photo?: EnteredPhoto): Promise<void> {
  await inTransaction(context.db, async (tx) => {
    await profileOf({ db: tx }, id)
    await savePhoto(tx, id, photo && storedPhoto(photo), context.now())
  })
  context.changes.tell('profile', id)
}

/**
 * The plan of a single part of a profile, in its own wood or one that stands in, by the present shop.
 * @throws Problem `wrong-state` while the profile is still being measured
 */
export async function planOfProfile(context: Context, { id, revision, file }: StoredProfile): Promise<Plan> {
  const entry = { ...(file as Omit<LibraryProfile, 'id' | 'revision'>), id, revision }
  const job = readJob({ species: STAND_IN_SPECIES, ...jobFileFrom(entry), quantity: 1 })
  return planApart({ job, shop: await shopOf(context), woods: context.woods })
}
