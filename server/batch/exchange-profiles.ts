import { isDeepStrictEqual } from 'node:util'
import { z } from 'zod'
import { id } from '../../shared/contract/key.ts'
import { readPhotoAddress } from '../../shared/contract/photo.ts'
import { readProfileFile } from '../../shared/contract/profile.ts'
import { listOf, moment } from '../../shared/input.ts'
import { type Breach, badInput } from '../../shared/problem.ts'
import type { Db } from '../storage/database.ts'
import { isProfileIdTaken, profileById, profileList, versionList } from '../storage/read/profiles.ts'
import { insertProfile, savePhoto, updateProfile } from '../storage/write/profiles.ts'
import { breachesIn, repeatedIds } from './breaches-in.ts'
import { photoAddress, storedPhoto } from './profile.ts'
import { inUtc } from './step.ts'

/** Profiles of the library as they travel: every version as it was entered, the oldest first, and the photograph. */
export const profilesSchema = listOf(
  z.object({
    id: id.max(100),
    versions: listOf(z.looseObject({ at: moment.optional() }), { least: 1, most: 10_000 }),
    photo: z.string().optional(),
  }),
  { most: 100_000 },
)
export type TravellingProfile = z.output<typeof profilesSchema>[number]

/** Every version of a profile as it was entered, the oldest first. */
const versionsOf = async (db: Db, profile: string) => (await versionList(db, profile)).reverse()

/** The whole library, to be written out. */
export async function profilesToSend(db: Db): Promise<TravellingProfile[]> {
  const sent: TravellingProfile[] = []
  for (const { id } of await profileList(db)) {
    const versions = (await versionsOf(db, id)).map(({ at, file }) => ({ at, ...file }))
    const photo = await photoAddress({ db }, id)
    sent.push({ id, versions, ...(photo !== undefined && { photo }) })
  }
  return sent
}

/** Everything that is wrong with profiles sent in. */
export const profilesBreaches = (profiles: TravellingProfile[]): Breach[] => [
  ...repeatedIds('profiles', profiles),
  ...profiles.flatMap(({ versions, photo }, i) => [
    ...versions.flatMap((version, j) =>
      breachesIn(`profiles[${i}].versions[${j}]`, () => readProfileFile(version)),
    ),
    ...(photo === undefined ? [] : breachesIn(`profiles[${i}]`, () => readPhotoAddress(photo, 'photo'))),
  ]),
]

/** Whether a profile is here just as it was sent. */
async function isHere(db: Db, { id, versions, photo }: TravellingProfile): Promise<boolean> {
  if (!(await profileById(db, id))) return false
  const here = (await versionsOf(db, id)).map(({ file }) => file)
  const sent = versions.map((version) => readProfileFile(version).file)
  return isDeepStrictEqual(here, sent) && (await photoAddress({ db }, id)) === photo
}

async function insertWhole(db: Db, { id, versions, photo }: TravellingProfile, now: string): Promise<void> {
  for (const [i, { at, ...version }] of versions.entries()) {
    const entry = { id, file: readProfileFile(version).file, at: at === undefined ? now : inUtc(at) }
    if (i === 0) await insertProfile(db, entry)
    else await updateProfile(db, entry, i)
  }
  if (photo !== undefined) await savePhoto(db, id, storedPhoto(readPhotoAddress(photo)), now)
}

/**
 * Keeps profiles that are not here yet, with all their versions; how many.
 * @throws Problem `bad-input` when one is here with other content
 */
export async function takeProfiles(db: Db, profiles: TravellingProfile[], now: string): Promise<number> {
  const breaches: Breach[] = []
  let taken = 0
  for (const [i, profile] of profiles.entries()) {
    if (!(await isProfileIdTaken(db, profile.id))) {
      await insertWhole(db, profile, now)
      taken += 1
    } else if (!(await isHere(db, profile)))
      breaches.push({
        path: `profiles[${i}].id`,
        message: `is a profile's here already, with other content; read ${JSON.stringify(profile.id)}`,
      })
  }
  if (breaches.length > 0) throw badInput(breaches.slice(0, 50))
  return taken
}
