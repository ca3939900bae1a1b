import type { EnteredJoint, EnteredStation } from './job-file.ts'

/** One change of a profile that can be taken back as one. */
export interface EditDetail {
  stations: EnteredStation[]
  /** The joints that follow it; absent where they stay. */
  joints?: EnteredJoint[]
  /** What was done, e.g. `Move station 3`. */
  label: string
  /** It carries on the change before it, and is taken back with it: an arrow key held down. */
  merge?: boolean
}

/** Tells the page of a change of the profile. */
export const tellEdit = (from: HTMLElement, detail: EditDetail): void => {
  from.dispatchEvent(new CustomEvent('edit', { detail, bubbles: true, composed: true }))
}
