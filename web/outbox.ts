import type { RackBoard } from '../shared/contract/board.ts'
import type { Piece, Step, StoredReading, TouchUp, Weighing } from '../shared/piece.ts'
import { addBoard, addReading, isAway, logStep, type NewReading, spoilPiece, tellFloor } from './api.ts'

/** Something logged at the lathe or bought at the yard, with the key under which the server stores it once. */
export type Sending =
  | { kind: 'reading'; job: string; body: NewReading }
  | { kind: 'step'; job: string; piece: string; body: Omit<Step, 'piece'> }
  | { kind: 'spoil'; job: string; piece: string; body: { key: string; reason: string } }
  | { kind: 'touch-up'; job: string; body: Omit<TouchUp, 'job'> }
  | { kind: 'weighing'; job: string; body: Omit<Weighing, 'job'> }
  | { kind: 'board'; body: RackBoard }

/** A sending that the server has not stored yet; `refused` says why it will not. */
export interface Waiting {
  sending: Sending
  refused?: string
}

/** What the server answers once it has stored a sending. */
type Stored = StoredReading | Step | Piece | RackBoard | TouchUp | Weighing

export type Outcome = { state: 'stored'; answer: Stored } | { state: 'waiting' | 'refused'; why: string }

/** Where sendings are kept between visits. */
type Shelf = Pick<Storage, 'getItem' | 'setItem'>

export interface OutboxParts {
  shelf: Shelf
  deliver(sending: Sending): Promise<Stored>
  /** Calls back after so many ms. */
  later(ms: number, again: () => void): void
}

const SHELF_KEY = 'setwright.outbox'
const FIRST_WAIT = 4_000
const LONGEST_WAIT = 60_000

/**
 * Keeps what is logged until the server has stored it: on this device before it is sent, in order, tried again
 * when the server was away. What the server refuses stays with its reason until the person puts it right.
 */
export class Outbox {
  private readonly parts: OutboxParts
  private readonly watchers = new Set<() => void>()
  private readonly outcomes = new Map<string, (outcome: Outcome) => void>()
  private kept: Waiting[]
  private running?: Promise<void> | undefined
  private wanted = false
  private wait = FIRST_WAIT
  private waitingAlready = false
  /** False while this device has no room to keep anything: then only as long as the page lives. */
  keeps = true

  constructor(parts: OutboxParts) {
    this.parts = parts
    this.kept = this.read()
  }

  /** All that is not stored yet, of one job or of all. */
  waiting(job?: string): readonly Waiting[] {
    return job === undefined
      ? this.kept
      : this.kept.filter(({ sending }) => 'job' in sending && sending.job === job)
  }

  /** Calls back whenever what waits changes; returns the way to stop. */
  watch(watcher: () => void): () => void {
    this.watchers.add(watcher)
    return () => {
      this.watchers.delete(watcher)
    }
  }

  /** Keeps the sending, tries to deliver it, and tells how the first try went. */
  send(sending: Sending): Promise<Outcome> {
    const told = new Promise<Outcome>((resolve) => this.outcomes.set(sending.body.key, resolve))
    this.write([...this.fresh(), { sending }])
    void this.flush()
    return told
  }

  /** Takes one out for good; the person has asked for it. */
  drop(key: string): void {
    this.write(this.fresh().filter(({ sending }) => sending.body.key !== key))
  }

  /** Tries everything that is not refused. */
  flush(): Promise<void> {
    this.wanted = true
    this.running ??= this.run().finally(() => {
      this.running = undefined
      if (this.wanted) void this.flush()
    })
    return this.running
  }

  private async run(): Promise<void> {
    // What is handed in while the last try fails must still hear how it went.
    while (this.wanted) {
      this.wanted = false
      for (let next = this.next(); next; next = this.next()) {
        if (!(await this.tryOne(next.sending))) break
      }
    }
  }

  private next(): Waiting | undefined {
    return this.fresh().find(({ refused }) => refused === undefined)
  }

  /** False when the server is away and trying more is useless for now. */
  private async tryOne(sending: Sending): Promise<boolean> {
    const { key } = sending.body
    try {
      const answer = await this.parts.deliver(sending)
      this.wait = FIRST_WAIT
      this.drop(key)
      this.tell(key, { state: 'stored', answer })
      return true
    } catch (failure) {
      const why = (failure as Error).message
      if (isAway(failure)) {
        for (const waiting of this.kept) this.tell(waiting.sending.body.key, { state: 'waiting', why })
        this.tryLater()
        return false
      }
      this.write(
        this.fresh().map((waiting) =>
          waiting.sending.body.key === key ? { ...waiting, refused: why } : waiting,
        ),
      )
      this.tell(key, { state: 'refused', why })
      return true
    }
  }

  private tell(key: string, outcome: Outcome): void {
    this.outcomes.get(key)?.(outcome)
    this.outcomes.delete(key)
  }

  private tryLater(): void {
    if (this.waitingAlready) return
    this.waitingAlready = true
    this.parts.later(this.wait, () => {
      this.waitingAlready = false
      void this.flush()
    })
    this.wait = Math.min(LONGEST_WAIT, this.wait * 2)
  }

  /** What is kept now, by this page or by another one of this device. */
  private fresh(): Waiting[] {
    return this.keeps ? this.read() : this.kept
  }

  private read(): Waiting[] {
    try {
      const kept = JSON.parse(this.parts.shelf.getItem(SHELF_KEY) ?? '[]') as unknown
      return Array.isArray(kept) ? (kept as Waiting[]) : []
    } catch {
      return []
    }
  }

  private write(kept: Waiting[]): void {
    this.kept = kept
    try {
      this.parts.shelf.setItem(SHELF_KEY, JSON.stringify(kept))
    } catch {
      this.keeps = false
    }
    for (const watcher of this.watchers) watcher()
  }
}

function deliver(sending: Sending): Promise<Stored> {
  switch (sending.kind) {
    case 'reading':
      return addReading(sending.job, sending.body)
    case 'step':
      return logStep(sending.piece, sending.body)
    case 'spoil':
      return spoilPiece(sending.piece, sending.body)
    case 'touch-up':
    case 'weighing':
      return tellFloor(sending.job, `${sending.kind}s`, sending.body)
    case 'board':
      return addBoard({ ...sending.body })
  }
}

let shared: Outbox | undefined

/** The outbox of this device. */
export function outbox(): Outbox {
  if (shared) return shared
  const made = new Outbox({ shelf: localStorage, deliver, later: (ms, again) => setTimeout(again, ms) })
  addEventListener('online', () => void made.flush())
  void made.flush()
  shared = made
  return made
}
