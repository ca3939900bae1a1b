import type { Clip } from '../shared/profile/edit/edited.ts'

const PLACE = 'setwright.clip'

/** Keeps copied spans on this device, to be pasted into this profile or another one; false where there is no room. */
export function keepClip(clip: Clip): boolean {
  try {
    localStorage.setItem(PLACE, JSON.stringify(clip))
    return true
  } catch {
    return false
  }
}

/** The spans copied last. */
export function keptClip(): Clip | undefined {
  try {
    const clip = JSON.parse(localStorage.getItem(PLACE) ?? 'null') as Clip | null
    return Array.isArray(clip?.stations) ? clip : undefined
  } catch {
    return undefined
  }
}
