import { nm } from '../../units/length.ts'
import { type Snap, snapped } from '../edit/snap.ts'

/** A size on the steps of the snap; as it is where that would leave nothing. */
export function snappedSize(mm: number, snap: Snap): number {
  const size = snapped(mm, snap)
  return nm(size) > 0 ? size : mm
}

type Positions = readonly (number | undefined)[]

/** Index pairs of neighbouring known positions. */
function neighbours(positions: Positions): [number, number][] {
  const known = positions.flatMap((at, i) => (at === undefined ? [] : [i]))
  return known.slice(1).map((i, k) => [known[k]!, i])
}

/**
 * Positions on the steps of the snap, mm. Two that lie nearer to each other than the snap can tell stay as they are,
 * so that none falls together with its neighbour or passes it; `unsnapped` names them.
 */
export function snappedPositions(
  positions: Positions,
  snap: Snap,
): { positions: (number | undefined)[]; unsnapped: number[] } {
  const result = positions.map((at) => (at === undefined ? undefined : snapped(at, snap)))
  const unsnapped = new Set<number>()
  const pairs = neighbours(positions)
  const way = (from: Positions, [a, b]: [number, number]): number => Math.sign(nm(from[b]!) - nm(from[a]!))
  let wrong = pairs.filter((pair) => way(positions, pair) !== way(result, pair))
  while (wrong.length > 0) {
    for (const i of wrong.flat()) {
      result[i] = positions[i]
      unsnapped.add(i)
    }
    wrong = pairs.filter((pair) => way(positions, pair) !== way(result, pair))
  }
  return { positions: result, unsnapped: [...unsnapped].sort((a, b) => a - b) }
}
