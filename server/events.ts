import { EventEmitter } from 'node:events'
import type { Change } from '../shared/contract/change.ts'

/** Tells every listener of every change that was stored. */
export class Changes {
  readonly #emitter = new EventEmitter().setMaxListeners(0)

  tell(kind: Change['kind'], id: string): void {
    this.#emitter.emit('change', { kind, id } satisfies Change)
  }

  /** Listens until the answer is called. */
  listen(listener: (change: Change) => void): () => void {
    this.#emitter.on('change', listener)
    return () => this.#emitter.off('change', listener)
  }
}
