import { overlap } from './clear.ts'
import type { Layout } from './layout.ts'
import type { BlankSize, BoardKind, SortedOrder } from './sorted-order.ts'

/** Where one blank lies alone on a board: its corner, nanometres. */
interface Corner {
  along: number
  across: number
}

/**
 * A place for one blank alone on a board, clear of trim and defects; `undefined` when there is none. If it lies
 * anywhere, it can be pushed towards the butt end and the edge until trim or a defect stops it, so only such
 * corners are tried.
 */
export function cornerFor(kind: BoardKind, { side, length, thickness }: BlankSize): Corner | undefined {
  const { usable, defects } = kind.wood
  if (thickness > kind.thickness) return undefined
  const alongs = [usable.along[0], ...defects.map((d) => d.along[1])].filter(
    (x) => x + length <= usable.along[1],
  )
  const acrosses = [usable.across[0], ...defects.map((d) => d.across[1])].filter(
    (y) => y + side <= usable.across[1],
  )
  for (const along of alongs) {
    for (const across of acrosses) {
      const clear = !defects.some(
        (d) => overlap(d.along, [along, along + length]) && overlap(d.across, [across, across + side]),
      )
      if (clear) return { along, across }
    }
  }
  return undefined
}

/** A board with a single blank on it: the last resort where defects leave no grid of clear wood. */
export function singleLayout(
  sorted: SortedOrder,
  kind: BoardKind,
  size: number,
  value: number,
): Layout | undefined {
  const blank = sorted.sizes[size]!
  const corner = cornerFor(kind, blank)
  if (!corner) return undefined
  const spots = [{ size, ...corner }]
  const takes = new Map([[size, 1]])
  return sorted.order.process === 'crosscut-first'
    ? {
        process: 'crosscut-first',
        takes,
        value,
        sections: () => [{ along: [corner.along, corner.along + blank.length], spots }],
      }
    : {
        process: 'rip-first',
        takes,
        value,
        strips: () => [{ side: blank.side, across: corner.across, spots }],
      }
}
