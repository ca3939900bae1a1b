import type { EnteredStation } from './job-file.ts'

/** The last station closes the part: the shape of a span that no longer starts there goes. */
function closed(stations: EnteredStation[]): EnteredStation[] {
  const last = stations.at(-1)
  if (!last?.then) return stations
  const { then: _shape, ...open } = last
  return [...stations.slice(0, -1), open]
}

/** The stations with one more at the index, as thick as its neighbour and with its place still to enter. */
export function withStation(stations: readonly EnteredStation[], index: number): EnteredStation[] {
  const diameter = stations[index - 1]?.diameter ?? stations[index]?.diameter
  const fresh: EnteredStation = { at: '', ...(diameter !== undefined && { diameter }) }
  return [...stations.slice(0, index), fresh, ...stations.slice(index)]
}

/** The stations without one; when it was the last, the span before it goes with it. */
export const withoutStation = (stations: readonly EnteredStation[], index: number): EnteredStation[] =>
  closed(stations.filter((_, i) => i !== index))

/** The stations with one moved by a place; a station that becomes the last hands its shape to the one it passed. */
export function movedStation(
  stations: readonly EnteredStation[],
  index: number,
  by: -1 | 1,
): EnteredStation[] {
  const moved = [...stations]
  moved.splice(index + by, 0, ...moved.splice(index, 1))
  const [before, last] = [moved.at(-2), moved.at(-1)]
  if (before && last?.then && !before.then) {
    moved[moved.length - 2] = { ...before, then: last.then }
  }
  return closed(moved)
}
