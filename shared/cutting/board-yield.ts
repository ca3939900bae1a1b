import { everyCrosscut } from './every-crosscut.ts'
import { everyRip } from './every-rip.ts'
import type { Layout } from './layout.ts'
import type { Patience } from './line.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'
import { type Takings, together } from './takings.ts'

/** Every taking that one board of a kind yields, by either process the order allows. */
export interface BoardYield {
  takings: number[]
  /**
   * By place in `takings`: the free bits of the sizes of which the board yields one more with it. None where
   * taking a blank away may leave what the board does not yield.
   */
  roomFor: Int32Array
  layout: (taking: number) => Layout
}

/** What one board of a kind yields; where patience ends on the way, not all. */
export function boardYield(
  sorted: SortedOrder,
  takings: Takings,
  kind: BoardKind,
  patience: Patience,
): BoardYield {
  const { process } = sorted.order
  const rip = process === 'crosscut-first' ? undefined : everyRip(sorted, takings, kind, patience)
  // With one side ripping first is never worse on clear wood: every section could be strips as well.
  const ripsAll =
    process === 'rip-first' || (rip && kind.thickEnough.sides.length === 1 && !kind.wood.partial)
  const crosscut = ripsAll ? undefined : everyCrosscut(sorted, takings, kind, patience)
  const ripped = new Set(rip?.held)
  const all = [...new Set([...ripped, ...(crosscut?.held ?? [])])]
  return {
    takings: all,
    // Shorter blanks beside a knot may need all the length of their section.
    roomFor:
      sorted.kinds.some(({ wood }) => wood.partial) && process !== 'rip-first'
        ? new Int32Array(all.length)
        : roomFor(takings, all),
    layout: (taking) => (ripped.has(taking) ? rip! : crosscut!).layout(taking),
  }
}

function roomFor(takings: Takings, all: number[]): Int32Array {
  const yields = new Uint8Array(takings.all)
  for (const taking of all) yields[taking] = 1
  return Int32Array.from(all, (taking) => {
    let room = 0
    takings.one.forEach((one, place) => {
      if (together(takings, taking, one) && yields[taking + one] === 1) room += takings.guard[place]!
    })
    return room
  })
}
