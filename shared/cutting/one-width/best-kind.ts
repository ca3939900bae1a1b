import { startIn } from '../runs.ts'
import type { BoardKind, SortedOrder } from '../sorted-order.ts'

/** Sizes that some board takes, as indices. */
export const fittingSizes = ({ sizes }: SortedOrder): number[] =>
  sizes.flatMap((size, s) => (size.fits ? [s] : []))

/** Where strips of a side begin across a board, side by side in its clear bands. */
export function stripsOf({ kerf }: SortedOrder, { wood }: BoardKind, side: number): number[] {
  const strips: number[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const band of wood.whole.bands) {
    for (let across = startIn(band, end, kerf); across + side <= band[1]; across = end + kerf) {
      strips.push(across)
      end = across + side
    }
  }
  return strips
}

const roomOf = ({ wood }: BoardKind): number =>
  wood.whole.runs.length === 1 ? wood.whole.runs[0]![1] - wood.whole.runs[0]![0] : 0

/**
 * Where all blanks are of one side, the kind of board that takes every size and could stand for a board of any other
 * kind at no more cost and in no more boards, as an index; `undefined` for every other order.
 */
export function bestKind(sorted: SortedOrder): number | undefined {
  const { kinds } = sorted
  const sizes = fittingSizes(sorted)
  if (sizes.length === 0 || sorted.order.process === 'crosscut-first') return undefined
  const { side } = sorted.sizes[sizes[0]!]!
  if (sizes.some((s) => sorted.sizes[s]!.side !== side)) return undefined
  const strips = kinds.map((kind) => stripsOf(sorted, kind, side).length)
  const usable = kinds.flatMap((kind, k) => (strips[k]! > 0 && kind.thickEnough.sizes.length > 0 ? [k] : []))
  const longest = Math.max(...sizes.map((s) => sorted.sizes[s]!.length))
  return usable.find((a) => {
    const best = kinds[a]!
    if (best.wood.partial || best.wood.whole.runs.length !== 1 || roomOf(best) < longest) return false
    if (best.thickEnough.sizes.length !== sizes.length) return false
    return usable.every((b) => {
      const other = kinds[b]!
      const times = Math.ceil(strips[b]! / strips[a]!)
      const long = other.wood.usable.along[1] - other.wood.usable.along[0]
      // As dear, but more boards: they would not do as well.
      const isCheap = times === 1 ? best.cost <= other.cost : times * best.cost < other.cost
      return b === a || (long <= roomOf(best) && isCheap)
    })
  })
}
