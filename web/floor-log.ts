import type { ReactiveController, ReactiveControllerHost } from 'lit'
import { newKey } from './api.ts'
import { type Floor, takeBackNote } from './api-floor.ts'
import { seenFloor } from './last-seen.ts'
import { outbox, type Sending, type Waiting } from './outbox.ts'
import { session } from './session.ts'
import { PAUSE, watchChanges } from './store.ts'

const NOTHING: Floor = { steps: [], touchUps: [], weighings: [] }

/** Those of a list with one more, the oldest first; one that is there already under its key stays once. */
function withEntry<T extends { key: string; at: string }>(list: readonly T[], entry: T): T[] {
  if (list.some(({ key }) => key === entry.key)) return [...list]
  return [...list, entry].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
}

/** The floor of a batch as it is with a sending stored. */
export function withSending(floor: Floor, sending: Sending): Floor {
  switch (sending.kind) {
    case 'step':
      return { ...floor, steps: withEntry(floor.steps, { ...sending.body, piece: sending.piece }) }
    case 'touch-up':
      return { ...floor, touchUps: withEntry(floor.touchUps, { ...sending.body, job: sending.job }) }
    case 'weighing':
      return { ...floor, weighings: withEntry(floor.weighings, { ...sending.body, job: sending.job }) }
    default:
      return floor
  }
}

/** What is known of a floor with all that still waits to be sent and was not refused. */
export const withWaiting = (floor: Floor, waiting: readonly Waiting[]): Floor =>
  waiting
    .filter(({ refused }) => refused === undefined)
    .reduce((now, { sending }) => withSending(now, sending), floor)

const without = <T extends { key: string }>(list: readonly T[], key: string): T[] =>
  list.filter((entry) => entry.key !== key)

/** What was logged on the floor of a batch, for an element: fetched, kept current, added to and taken back. */
export class FloorLog implements ReactiveController {
  /** Why an entry could not be taken back; empty where all is well. */
  failure = ''
  /** Whether it could not be fetched, now or before; `undefined` until that is known. */
  isMissing: boolean | undefined
  private readonly host: ReactiveControllerHost
  private job = ''
  private known: Floor = NOTHING
  private soon: ReturnType<typeof setTimeout> | undefined
  private stops: (() => void)[] = []

  constructor(host: ReactiveControllerHost) {
    this.host = host
    host.addController(this)
  }

  hostConnected(): void {
    this.stops = [
      watchChanges(({ kind, id }) => {
        if ((kind === 'floor' && id === this.job) || (kind === 'piece' && id.startsWith(this.job)))
          this.reloadSoon()
      }),
    ]
  }

  hostDisconnected(): void {
    clearTimeout(this.soon)
    for (const stop of this.stops) stop()
  }

  /** What is stored, and what waits to be. */
  get now(): Floor {
    return withWaiting(this.known, outbox().waiting(this.job))
  }

  /** Fetches the log of a batch; without a connection what was last seen of it stands. */
  async reload(job = this.job): Promise<void> {
    if (job !== this.job) {
      this.known = NOTHING
      this.isMissing = undefined
    }
    this.job = job
    try {
      const { value } = await seenFloor(job)
      if (job !== this.job) return
      this.known = value
      this.isMissing = false
    } catch {
      // What was fetched before stands; the page says that the server is away.
      if (job === this.job) this.isMissing ??= true
    }
    this.host.requestUpdate()
  }

  private reloadSoon(): void {
    clearTimeout(this.soon)
    this.soon = setTimeout(() => void this.reload(), PAUSE)
  }

  /** Shows an entry that is on its way, so that it does not vanish between being stored and being fetched. */
  note(sending: Sending): void {
    this.known = withSending(this.known, sending)
  }

  touchUp(tool: string, kind: 'touch-up' | 'regrind'): void {
    this.send({ kind: 'touch-up', job: this.job, body: { tool, kind, ...this.signed() } })
  }

  weigh(number: number, read: { grams?: number; moisture?: number }): void {
    this.send({ kind: 'weighing', job: this.job, body: { number, ...read, ...this.signed() } })
  }

  private signed() {
    const { by } = session()
    return { key: newKey(), at: new Date().toISOString(), ...(by && { by }) }
  }

  private send(sending: Sending): void {
    this.note(sending)
    void outbox()
      .send(sending)
      .then(async ({ state }) => {
        if (state === 'refused') await this.reload()
      })
    this.host.requestUpdate()
  }

  /** Takes an entry back: out of the outbox while it waits there, else on the server, which needs a connection. */
  async takeBack(kind: 'touch-up' | 'weighing', key: string): Promise<void> {
    this.failure = ''
    const box = outbox()
    try {
      if (box.waiting(this.job).some(({ sending }) => sending.body.key === key)) box.drop(key)
      else await takeBackNote(this.job, kind, key)
      const { steps, touchUps, weighings } = this.known
      this.known = { steps, touchUps: without(touchUps, key), weighings: without(weighings, key) }
    } catch (failure) {
      this.failure = (failure as Error).message
    }
    this.host.requestUpdate()
  }
}
