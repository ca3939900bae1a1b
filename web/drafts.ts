import { newKey } from './api.ts'
import type { JobFile } from './job-file.ts'
import type { LibraryFile } from './library-file.ts'
import type { History } from './undo.ts'

/** Edits that are not saved yet, kept on this device so that nothing entered is lost. */
export interface Draft<File = JobFile> {
  file: File
  /** The stored revision the edits started from; absent for something new. */
  revision?: number
  /** The key something new will be stored under, so that sending it twice stores it once. */
  key: string
  /** What was sent of it: a save whose answer got lost is told by it from a change by somebody else. */
  sent?: File[]
  /** What was done to it, to be taken back. */
  history?: History
}

/** A draft that another tab keeps, or kept before it was closed. */
export interface OtherDraft<File = JobFile> {
  /** Where it is kept. */
  place: string
  /** What it edits; empty for something new. */
  id: string
  draft: Draft<File>
}

const TAB = 'setwright.tab'
let ownTab: string | undefined

/**
 * The name of this tab, the same over a reload. While a tab is open its name stands in its memory alone, so that a
 * duplicated tab, which takes over what the first one stored, gets a name of its own.
 */
function tab(): string {
  if (ownTab) return ownTab
  const name = sessionStorage.getItem(TAB) ?? newKey()
  ownTab = name
  sessionStorage.removeItem(TAB)
  addEventListener('pagehide', () => sessionStorage.setItem(TAB, name))
  addEventListener('pageshow', () => sessionStorage.removeItem(TAB))
  return name
}

/** The drafts of one kind of file on this device, those of this tab and those of others. */
export class DraftShelf<File> {
  private readonly prefix: string
  /** Whether what was found is a file that can be gone on with. */
  private readonly isWhole: (file: File) => boolean

  constructor(prefix: string, isWhole: (file: File) => boolean) {
    this.prefix = prefix
    this.isWhole = isWhole
  }

  private ownPlace(id: string): string {
    return `${this.prefix}${id || 'new'}/${tab()}`
  }

  private at(place: string): Draft<File> | undefined {
    try {
      const kept = JSON.parse(localStorage.getItem(place) ?? 'null') as Draft<File> | null
      return kept?.file && this.isWhole(kept.file) ? kept : undefined
    } catch {
      return undefined
    }
  }

  /** The edits that this tab keeps; of something new for `''`. */
  of(id: string): Draft<File> | undefined {
    return this.at(this.ownPlace(id))
  }

  /** Every draft that other tabs of this device keep or left behind. */
  others(): OtherDraft<File>[] {
    return Object.keys(localStorage)
      .filter((place) => place.startsWith(this.prefix) && !place.endsWith(`/${tab()}`))
      .sort()
      .flatMap((place) => {
        const draft = this.at(place)
        const [id = ''] = place.slice(this.prefix.length).split('/')
        return draft ? [{ place, id: id === 'new' ? '' : id, draft }] : []
      })
  }

  /** Whether any tab of this device holds unsaved edits of it. */
  has(id: string): boolean {
    return this.of(id) !== undefined || this.others().some((other) => other.id === id)
  }

  /** Keeps edits; false when this device has no room for them. */
  keep(id: string, draft: Draft<File>): boolean {
    try {
      localStorage.setItem(this.ownPlace(id), JSON.stringify(draft))
      return true
    } catch {
      return false
    }
  }

  /** Forgets this tab's edits; those of other tabs stay. */
  drop(id: string): void {
    localStorage.removeItem(this.ownPlace(id))
  }

  /** Lays this tab's edits beside, so that others can take their place; they stay among the other drafts. */
  setAside(id: string): void {
    const kept = localStorage.getItem(this.ownPlace(id))
    if (kept === null) return
    localStorage.removeItem(this.ownPlace(id))
    localStorage.setItem(`${this.prefix}${id || 'new'}/${newKey()}`, kept)
  }

  /** Forgets a draft that another tab left behind. */
  dropOther({ place }: OtherDraft<File>): void {
    localStorage.removeItem(place)
  }

  /** Takes over another tab's draft. Something new gets a key of its own, should that tab still be at work on it. */
  adopt(other: OtherDraft<File>): Draft<File> {
    const { sent, ...draft } = other.draft
    const adopted: Draft<File> = other.id ? { ...draft, ...(sent && { sent }) } : { ...draft, key: newKey() }
    if (this.keep(other.id, adopted)) this.dropOther(other)
    return adopted
  }
}

const hasStations = (file: { profile?: { stations?: unknown } }) => Boolean(file.profile?.stations)

/** Jobs being written. */
export const jobDrafts = new DraftShelf<JobFile>('setwright.draft.', hasStations)

/** Profiles of the library being drawn. */
export const profileDrafts = new DraftShelf<LibraryFile>('setwright.profile-draft.', hasStations)

/** Profiles being copied from a piece: their measuring sheets. */
export const sheetDrafts = new DraftShelf<LibraryFile>('setwright.sheet-draft.', (file) =>
  Boolean(file.sheet),
)
