import type { Units } from '../shared/units/length.ts'
import { inUnits } from './job-entries.ts'
import type { EnteredJoint, EnteredStation, JobFile } from './job-file.ts'
import { keptSteps } from './kept-steps.ts'

/** What of a file can be undone: its stations and its joints. */
export interface Undoable {
  profile: { stations: EnteredStation[] }
  joints?: EnteredJoint[]
}

/** One change of a row of entries: where it starts, what stood there, what stands there now. */
interface Change<T> {
  from: number
  out: T[]
  into: T[]
}

/** One change that can be taken back. */
export interface Step {
  /** What was done, e.g. `Move station 3`. */
  label: string
  stations: Change<EnteredStation>
  joints: Change<EnteredJoint>
}

/** What was done, the latest last, and what was taken back and can be done again, the next one last. */
export interface History {
  past: Step[]
  future: Step[]
}

/** A draft that remembers its changes. */
export interface WithHistory {
  file: Undoable
  history?: History
}

/** Characters of its history that a draft may take up: browsers give some 5 million for all they keep, from memory. */
const MOST_CHARACTERS = 400_000

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

/** The stretch that differs. */
function changeOf<T>(before: readonly T[], after: readonly T[]): Change<T> {
  let from = 0
  while (from < before.length && from < after.length && same(before[from], after[from])) from++
  let tail = 0
  const most = Math.min(before.length, after.length) - from
  while (tail < most && same(before.at(-1 - tail), after.at(-1 - tail))) tail++
  return { from, out: before.slice(from, before.length - tail), into: after.slice(from, after.length - tail) }
}

const isNothing = ({ out, into }: Change<unknown>): boolean => out.length === 0 && into.length === 0

const turned = <T>({ from, out, into }: Change<T>): Change<T> => ({ from, out: into, into: out })

const changed = <T>(rows: readonly T[], { from, out, into }: Change<T>): T[] => [
  ...rows.slice(0, from),
  ...into,
  ...rows.slice(from + out.length),
]

function withChanges<File extends Undoable>(
  file: File,
  stations: Change<EnteredStation>,
  joints: Change<EnteredJoint>,
): File {
  const { joints: _before, ...rest } = file
  const kept = changed(file.joints ?? [], joints)
  const profile = { ...file.profile, stations: changed(file.profile.stations, stations) }
  return { ...rest, profile, ...(kept.length > 0 && { joints: kept }) } as unknown as File
}

/**
 * The draft with another file, and the way back to the present one. A change that carries on the one before it
 * (`merge`: another letter in the same field, an arrow key held down) is taken back together with it.
 */
export function editedDraft<Draft extends WithHistory>(
  draft: Draft,
  file: Draft['file'],
  label: string,
  merge = false,
): Draft {
  const { past, future } = draft.history ?? { past: [], future: [] }
  const last = merge && future.length === 0 ? past.at(-1) : undefined
  const before = last ? withChanges(draft.file, turned(last.stations), turned(last.joints)) : draft.file
  const step: Step = {
    label,
    stations: changeOf(before.profile.stations, file.profile.stations),
    joints: changeOf(before.joints ?? [], file.joints ?? []),
  }
  const nothing = isNothing(step.stations) && isNothing(step.joints)
  if (nothing && !last) return { ...draft, file }
  const kept = last ? past.slice(0, -1) : past
  return {
    ...draft,
    file,
    history: { past: nothing ? kept : keptSteps([...kept, step], MOST_CHARACTERS), future: [] },
  }
}

/** The draft with its last change taken back; nothing where there is none. */
export function undoneDraft<Draft extends WithHistory>(draft: Draft): Draft | undefined {
  const { past = [], future = [] } = draft.history ?? {}
  const step = past.at(-1)
  if (!step) return undefined
  const file = withChanges(draft.file, turned(step.stations), turned(step.joints))
  return { ...draft, file, history: { past: past.slice(0, -1), future: [...future, step] } }
}

/** The draft with the change done again that was taken back last; nothing where there is none. */
export function redoneDraft<Draft extends WithHistory>(draft: Draft): Draft | undefined {
  const { past = [], future = [] } = draft.history ?? {}
  const step = future.at(-1)
  if (!step) return undefined
  const file = withChanges(draft.file, step.stations, step.joints)
  return { ...draft, file, history: { past: [...past, step], future: future.slice(0, -1) } }
}

/** The history of a file that is from now on written in other units, every length meaning what it meant. */
export function historyInUnits(history: History, from: Units, to: Units): History {
  const rows = (stations: EnteredStation[], joints: EnteredJoint[]) =>
    inUnits({ units: from, profile: { stations }, joints } as unknown as JobFile, to)
  const step = ({ label, stations, joints }: Step): Step => {
    const [out, into] = [rows(stations.out, joints.out), rows(stations.into, joints.into)]
    return {
      label,
      stations: { from: stations.from, out: out.profile.stations, into: into.profile.stations },
      joints: { from: joints.from, out: out.joints ?? [], into: into.joints ?? [] },
    }
  }
  return { past: history.past.map(step), future: history.future.map(step) }
}
