import { newKey } from './api.ts'
import type { JobFile } from './job-file.ts'

/** Edits that are not saved yet, kept on this device so that nothing entered is lost. */
export interface Draft {
  file: JobFile
  /** The stored revision the edits started from; absent for a new job. */
  revision?: number
  /** The key a new job will be stored under, so that sending it twice stores it once. */
  key: string
  /** What was sent of it: a save whose answer got lost is told by it from a change by somebody else. */
  sent?: JobFile[]
}

/** A draft that another tab keeps, or kept before it was closed. */
export interface OtherDraft {
  /** Where it is kept. */
  place: string
  /** The job it edits; empty for a new one. */
  jobId: string
  draft: Draft
}

const PREFIX = 'setwright.draft.'
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

const ownPlace = (jobId: string) => `${PREFIX}${jobId || 'new'}/${tab()}`

function draftAt(place: string): Draft | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(place) ?? 'null') as Draft | null
    return kept?.file?.profile?.stations ? kept : undefined
  } catch {
    return undefined
  }
}

/** The edits of a job that this tab keeps; of the new job for `''`. */
export const draftOf = (jobId: string): Draft | undefined => draftAt(ownPlace(jobId))

/** Every draft that other tabs of this device keep or left behind. */
export function otherDrafts(): OtherDraft[] {
  return Object.keys(localStorage)
    .filter((place) => place.startsWith(PREFIX) && !place.endsWith(`/${tab()}`))
    .sort()
    .flatMap((place) => {
      const draft = draftAt(place)
      const [job = ''] = place.slice(PREFIX.length).split('/')
      return draft ? [{ place, jobId: job === 'new' ? '' : job, draft }] : []
    })
}

/** Whether any tab of this device holds unsaved edits of the job. */
export const hasDraft = (jobId: string): boolean =>
  draftOf(jobId) !== undefined || otherDrafts().some((other) => other.jobId === jobId)

/** Keeps edits; false when this device has no room for them. */
export function keepDraft(jobId: string, draft: Draft): boolean {
  try {
    localStorage.setItem(ownPlace(jobId), JSON.stringify(draft))
    return true
  } catch {
    return false
  }
}

/** Forgets this tab's edits of a job; those of other tabs stay. */
export function dropDraft(jobId: string): void {
  localStorage.removeItem(ownPlace(jobId))
}

/** Lays this tab's edits of a job beside, so that others can take their place; they stay among the other drafts. */
export function setAside(jobId: string): void {
  const kept = localStorage.getItem(ownPlace(jobId))
  if (kept === null) return
  localStorage.removeItem(ownPlace(jobId))
  localStorage.setItem(`${PREFIX}${jobId || 'new'}/${newKey()}`, kept)
}

/** Forgets a draft that another tab left behind. */
export function dropOther({ place }: OtherDraft): void {
  localStorage.removeItem(place)
}

/** Takes over another tab's draft. A new job gets a key of its own, should that tab still be at work on it. */
export function adoptDraft(other: OtherDraft): Draft {
  const { sent, ...draft } = other.draft
  const adopted = other.jobId ? { ...draft, ...(sent && { sent }) } : { ...draft, key: newKey() }
  if (keepDraft(other.jobId, adopted)) dropOther(other)
  return adopted
}
