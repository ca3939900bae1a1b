/** Time spent on one operation of a piece, or of several at once, until it is logged. */
export interface Watch {
  /** What is timed, as people say it. */
  name: string
  /** Time that ran before the last start, ms. */
  ran: number
  /** Moment of the last start, ms; absent while it stands still. */
  since?: number
  /** Minutes as written, once it was stopped. */
  minutes?: string
}

/** Where watches are kept between visits. */
type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

const SHELF_KEY = 'setwright.stopwatches'
/** Most minutes that one entry can stand for, as the server takes them. */
export const MOST_MINUTES = 10_000

/**
 * Minutes as written: `4.5`, `4,5`, or minutes and seconds as `4:30`. Undefined where nothing is written, NaN where
 * it cannot be read.
 */
export function writtenMinutes(text: string): number | undefined {
  const written = text.trim()
  if (written === '') return undefined
  const clock = /^(\d{1,5}):([0-5]\d)$/.exec(written)
  if (clock) return Number(clock[1]) + Number(clock[2]) / 60
  const minutes = /^\d*[.,]?\d+$|^\d+[.,]$/.test(written) ? Number(written.replace(',', '.')) : Number.NaN
  return minutes <= MOST_MINUTES ? minutes : Number.NaN
}

/** Time on a watch at that moment, ms. */
export const ranOf = ({ ran, since }: Watch, now: number): number =>
  ran + (since === undefined ? 0 : Math.max(0, now - since))

const minutesOf = (ms: number): string => String(Math.round(ms / 600) / 100)

/**
 * The stopwatches of this device, each kept at every press. One runs at a time: starting one pauses the other, which
 * keeps its time.
 */
export class Stopwatches {
  private readonly shelf: Shelf
  private readonly now: () => number
  /** While this device has no room they last as long as the page. */
  private unkept?: Record<string, Watch> | undefined

  constructor(shelf: Shelf, now = () => Date.now()) {
    this.shelf = shelf
    this.now = now
  }

  of(key: string): Watch | undefined {
    const all = this.all()
    return Object.hasOwn(all, key) ? all[key] : undefined
  }

  /** The watch that runs, with its key. */
  running(): { key: string; watch: Watch } | undefined {
    const found = Object.entries(this.all()).find(([, { since }]) => since !== undefined)
    return found && { key: found[0], watch: found[1] }
  }

  /** Starts or goes on, from the minutes written where there are any; answers the watch that was paused for it. */
  start(key: string, name: string): Watch | undefined {
    const running = this.running()
    if (running?.key === key) return undefined
    if (running) this.pause(running.key)
    const had = this.of(key)
    const written = writtenMinutes(had?.minutes ?? '')
    const ran = written === undefined || Number.isNaN(written) ? (had?.ran ?? 0) : written * 60_000
    this.keep(key, { name, ran, since: this.now() })
    return running?.watch
  }

  /** Stands still with the time it has. */
  pause(key: string): void {
    const watch = this.of(key)
    if (watch?.since !== undefined) this.keep(key, { name: watch.name, ran: ranOf(watch, this.now()) })
  }

  /** Ends the timing: its minutes are written down, to be mended before they are logged. */
  stop(key: string): void {
    const watch = this.of(key)
    if (!watch || watch.minutes !== undefined) return
    this.keep(key, { name: watch.name, ran: 0, minutes: minutesOf(ranOf(watch, this.now())) })
  }

  /** Minutes written by hand; nothing written leaves the watch as it never was. */
  write(key: string, name: string, minutes: string): void {
    if (minutes === '') this.clear(key)
    else this.keep(key, { name, ran: 0, minutes })
  }

  /** Once it is logged. */
  clear(key: string): void {
    const { [key]: _, ...others } = this.all()
    this.store(others)
  }

  private keep(key: string, watch: Watch): void {
    this.store({ ...this.all(), [key]: watch })
  }

  private all(): Record<string, Watch> {
    if (this.unkept) return this.unkept
    try {
      const read = JSON.parse(this.shelf.getItem(SHELF_KEY) ?? '{}') as unknown
      return typeof read === 'object' && read !== null ? (read as Record<string, Watch>) : {}
    } catch {
      return {}
    }
  }

  private store(watches: Record<string, Watch>): void {
    try {
      if (Object.keys(watches).length === 0) this.shelf.removeItem(SHELF_KEY)
      else this.shelf.setItem(SHELF_KEY, JSON.stringify(watches))
      this.unkept = undefined
    } catch {
      this.unkept = watches
    }
  }
}

let shared: Stopwatches | undefined

/** The stopwatches of this device. */
export function stopwatches(): Stopwatches {
  shared ??= new Stopwatches(localStorage)
  return shared
}
