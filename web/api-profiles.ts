import type { LibraryProfile, ProfileVersion } from '../shared/library.ts'
import { asChosen, ask } from './api.ts'

const profile = (id: string) => `/profiles/${encodeURIComponent(id)}`

/** A profile as it is sent: what the server adds is left out. */
export interface ProfileFile
  extends Omit<LibraryProfile, 'id' | 'revision' | 'createdAt' | 'updatedAt' | 'profile' | 'joints'> {
  profile: { stations: object[]; split?: boolean }
  joints?: object[]
}

export const profiles = () => ask<LibraryProfile[]>('/profiles')
export const storedProfile = (id: string) => ask<LibraryProfile>(profile(id))
export const addProfile = (file: ProfileFile & { key: string }) =>
  ask<LibraryProfile>('/profiles', { method: 'POST', body: file })
export const changeProfile = (id: string, revision: number, file: ProfileFile) =>
  ask<LibraryProfile>(profile(id), { method: 'PUT', body: file, ifMatch: revision })
export const deleteProfile = (id: string, revision: number) =>
  ask<void>(profile(id), { method: 'DELETE', ifMatch: revision })
/** Every version of a profile, the newest first. */
export const profileVersions = (id: string) => ask<ProfileVersion[]>(`${profile(id)}/versions`)
/** The address of a print of a profile alone. */
export const profilePrintPath = (
  id: string,
  print: 'pattern.pdf' | 'pattern.svg' | 'story-stick.pdf',
): string => `/api${profile(id)}/prints/${print}${asChosen(print)}`
/** The photograph behind a profile, as a data address; `undefined` where there is none. */
export const profilePhoto = async (id: string): Promise<string | undefined> =>
  (await ask<{ image?: string }>(`${profile(id)}/photo`)).image
/** Lays a photograph behind a profile, or takes it away with `null`. */
export const putProfilePhoto = (id: string, image: string | null) =>
  ask<void>(`${profile(id)}/photo`, { method: 'PUT', body: { image } })
