import type { LibraryProfile } from '../shared/library.ts'
import { addProfile, changeProfile, storedProfile } from './api-profiles.ts'
import { type LibraryFile, libraryFileOf, sentLibraryFile } from './library-file.ts'
import { DraftSaver } from './save-draft.ts'

/** Stores profiles of the library being drawn. */
export const profileSaver = new DraftSaver<LibraryFile, LibraryProfile>({
  add: addProfile,
  change: changeProfile,
  load: storedProfile,
  sent: sentLibraryFile,
  fileOf: libraryFileOf,
})
