import type { YardTally } from './yard-tally.ts'

/** Where tallies are kept: the device's own storage. */
type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

const PREFIX = 'setwright.tally.'

/**
 * The tallies of this device, several pages of it at work on them: every change starts from what is kept now, so
 * that none undoes another page's. Where the device has no room they last as long as the page.
 */
export class TallyShelf {
  private readonly shelf: Shelf
  /** What the device would not keep. */
  private readonly unkept = new Map<string, YardTally>()

  constructor(shelf: Shelf) {
    this.shelf = shelf
  }

  /** Whether everything is kept over a reload. */
  get keeps(): boolean {
    return this.unkept.size === 0
  }

  /** Every tally, the one changed last first. */
  all(): YardTally[] {
    const ids = new Set(this.unkept.keys())
    for (let i = 0; i < this.shelf.length; i++) {
      const place = this.shelf.key(i)
      if (place?.startsWith(PREFIX)) ids.add(place.slice(PREFIX.length))
    }
    return [...ids]
      .flatMap((id) => this.of(id) ?? [])
      .sort((a, b) => b.changedAt.localeCompare(a.changedAt) || a.id.localeCompare(b.id))
  }

  of(id: string): YardTally | undefined {
    const unkept = this.unkept.get(id)
    if (unkept) return unkept
    try {
      const kept = JSON.parse(this.shelf.getItem(PREFIX + id) ?? 'null') as YardTally | null
      return kept && kept.id === id && Array.isArray(kept.boards) ? kept : undefined
    } catch {
      return undefined
    }
  }

  /** Keeps a tally as it is now, and hands it back. */
  keep(tally: YardTally): YardTally {
    try {
      this.shelf.setItem(PREFIX + tally.id, JSON.stringify(tally))
      this.unkept.delete(tally.id)
    } catch {
      this.unkept.set(tally.id, tally)
    }
    return tally
  }

  /**
   * Changes a tally from what is kept of it now; from what this page knew where another page threw it away.
   * @param at when, ISO 8601
   */
  change(known: YardTally, at: string, edit: (now: YardTally) => YardTally): YardTally {
    return this.keep({ ...edit(this.of(known.id) ?? known), changedAt: at })
  }

  drop(id: string): void {
    this.unkept.delete(id)
    this.shelf.removeItem(PREFIX + id)
  }
}

/** Whether a change of the device's storage, made by another page, is about tallies. */
export const isAboutTallies = ({ key }: Pick<StorageEvent, 'key'>): boolean =>
  key === null || key.startsWith(PREFIX)
