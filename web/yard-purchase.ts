import type { RackBoard } from '../shared/contract/board.ts'
import type { Outbox } from './outbox.ts'

/** Boards sent to the rack; sent again under the same keys they are stored once. */
export class Purchase {
  private readonly box: Pick<Outbox, 'keeps' | 'waiting'>
  private readonly keys: ReadonlySet<string>

  constructor(box: Pick<Outbox, 'send' | 'keeps' | 'waiting'>, boards: readonly RackBoard[]) {
    this.box = box
    this.keys = new Set(boards.map(({ key }) => key))
    for (const body of boards) void box.send({ kind: 'board', body })
  }

  /** Whether nothing is lost when the page is closed now: the device keeps the boards, or the server has them all. */
  get isSafe(): boolean {
    return this.box.keeps || !this.box.waiting().some(({ sending }) => this.keys.has(sending.body.key))
  }
}
