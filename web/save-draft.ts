import { newKey, Refusal } from './api.ts'
import type { Draft } from './drafts.ts'

const sorted = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(sorted)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([, inner]) => inner !== undefined)
            .sort(([a], [b]) => (a < b ? -1 : 1))
            .map(([name, inner]) => [name, sorted(inner)]),
        )
      : value

/** Whether two files say the same, in whatever order their fields stand. */
export const sameFile = (a: unknown, b: unknown): boolean =>
  JSON.stringify(sorted(a)) === JSON.stringify(sorted(b))

/** Something the server keeps. */
export interface Stored {
  id: string
  revision: number
}

/** Where drafts of one kind are stored. */
export interface DraftStore<File, Kept extends Stored> {
  add: (file: File & { key: string }) => Promise<Kept>
  change: (id: string, revision: number, file: File) => Promise<Kept>
  load: (id: string) => Promise<Kept>
  /** The file as it is sent. */
  sent: (file: File) => File
  /** The file alone out of what is stored. */
  fileOf: (kept: Kept) => File
}

/** So many sendings are remembered: the server may hold any of them when answers got lost. */
const REMEMBERED = 5

/** Stores drafts so that a lost answer neither stores twice nor is taken for a change by somebody else. */
export class DraftSaver<File, Kept extends Stored> {
  private readonly store: DraftStore<File, Kept>

  constructor(store: DraftStore<File, Kept>) {
    this.store = store
  }

  /** The draft as it is about to be sent, to be kept before it is. */
  withSending(draft: Draft<File>): Draft<File> {
    return { ...draft, sent: [...(draft.sent ?? []), this.store.sent(draft.file)].slice(-REMEMBERED) }
  }

  /**
   * Stores a draft `withSending`: as something new where there is no `id`, else as a change of the revision it
   * started from.
   * @throws Refusal
   */
  save(id: string, draft: Draft<File>): Promise<Kept> {
    return id && draft.revision !== undefined
      ? this.storeChange(id, draft, draft.revision)
      : this.storeNew(draft)
  }

  /** Whether what is stored is what this draft sent before: then only the answer was lost. */
  private isOurs(kept: Kept, { sent = [] }: Draft<File>): boolean {
    const file = this.store.fileOf(kept)
    return sent.some((each) => sameFile(file, each))
  }

  private async there(id: string): Promise<Kept | undefined> {
    try {
      return await this.store.load(id)
    } catch (failure) {
      if (failure instanceof Refusal && failure.status === 404) return undefined
      throw failure
    }
  }

  /** A key that is taken by what this draft sent before leads to a change of that, any other to a new key. */
  private async storeNew(draft: Draft<File>): Promise<Kept> {
    const { add, change, sent } = this.store
    const file = sent(draft.file)
    try {
      return await add({ ...file, key: draft.key })
    } catch (failure) {
      if (!(failure instanceof Refusal) || failure.code !== 'key-reused') throw failure
      const kept = await this.there(draft.key)
      if (kept && this.isOurs(kept, draft)) return change(kept.id, kept.revision, file)
      return add({ ...file, key: newKey() })
    }
  }

  /** When it is at a later revision by what this draft sent before, the change goes on from there. */
  private async storeChange(id: string, draft: Draft<File>, revision: number): Promise<Kept> {
    const { change, sent } = this.store
    const file = sent(draft.file)
    try {
      return await change(id, revision, file)
    } catch (failure) {
      if (!(failure instanceof Refusal) || failure.status !== 412) throw failure
      const kept = await this.there(id)
      if (kept && this.isOurs(kept, draft)) return change(id, kept.revision, file)
      throw failure
    }
  }
}
