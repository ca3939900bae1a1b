import { overlap, without } from './clear.ts'
import type { Layout } from './layout.ts'
import type { BlankSize, BoardKind, SortedOrder } from './sorted-order.ts'

/** Where one blank lies alone on a board: its corner, nanometres. */
export interface Corner {
  along: number
  across: number
}

/**
 * A place for one blank alone on a board, clear of trim and defects; `undefined` when there is none. If it lies
 * anywhere, it can be pushed towards the butt end until trim or a defect stops it, so only such places along the
 * board are tried.
 */
export function cornerFor(kind: BoardKind, size: BlankSize): Corner | undefined {
  if (!kind.corners.has(size)) kind.corners.set(size, firstCorner(kind, size))
  return kind.corners.get(size)
}

function firstCorner(kind: BoardKind, { side, length, thickness }: BlankSize): Corner | undefined {
  const { usable, defects } = kind.wood
  if (thickness > kind.thickness) return undefined
  const alongs = [usable.along[0], ...defects.map((d) => d.along[1])].filter(
    (x) => x + length <= usable.along[1],
  )
  for (const along of alongs) {
    const beside = defects.filter((d) => overlap(d.along, [along, along + length]))
    const clear = without(
      usable.across,
      beside.map((d) => d.across),
    ).find(([low, high]) => high - low >= side)
    if (clear) return { along, across: clear[0] }
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
