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
  if (!isLargeEnough(kind, size)) return undefined
  if (!kind.corners.has(size)) kind.corners.set(size, firstCorner(kind, size))
  return kind.corners.get(size)
}

/** Whether a board inside its trim is as large as a blank, whatever its defects. */
function isLargeEnough(
  kind: Pick<BoardKind, 'thickness' | 'wood'>,
  { side, length, thickness }: BlankSize,
): boolean {
  const { along, across } = kind.wood.usable
  return thickness <= kind.thickness && length <= along[1] - along[0] && side <= across[1] - across[0]
}

/** Of these kinds those that no other exceeds: what fits none of them fits none at all. */
function largestOf<K extends Pick<BoardKind, 'thickness' | 'wood'>>(kinds: readonly K[]): K[] {
  const sizeOf = ({ thickness, wood: { usable } }: K): BlankSize => ({
    side: usable.across[1] - usable.across[0],
    length: usable.along[1] - usable.along[0],
    thickness,
    area: 0,
    count: 1,
    fits: true,
    rows: [],
  })
  const ranked = kinds.map((kind) => ({ kind, size: sizeOf(kind) })).sort((a, b) => b.size.side - a.size.side)
  const largest: K[] = []
  for (const { kind, size } of ranked) {
    if (!largest.some((other) => isLargeEnough(other, size))) largest.push(kind)
  }
  return largest
}

/** Says of a size whether some board takes one, alone on it. */
export function fittingAny(kinds: readonly BoardKind[]): (size: BlankSize) => boolean {
  const largest = largestOf(kinds)
  const flawless = largestOf(kinds.filter(({ wood }) => wood.defects.length === 0))
  return (size) =>
    flawless.some((kind) => isLargeEnough(kind, size)) ||
    (largest.some((kind) => isLargeEnough(kind, size)) &&
      kinds.some((kind) => cornerFor(kind, size) !== undefined))
}

function firstCorner(kind: BoardKind, { side, length }: BlankSize): Corner | undefined {
  const { usable, defects } = kind.wood
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
