import { moments } from '../../shared/matching/moments.ts'
import { hasWidth } from '../../shared/matching/reading.ts'
import type { Match, SetFile, SetPiece } from '../../shared/matching/set.ts'

/** A reading that the set at hand may not hold yet: one value or several, mm. */
export interface TakenReading {
  piece: string
  station: string
  values: number[]
}

/** The set with later readings in it; readings of pieces or stations it does not have are left out. */
export function withReadings(set: SetFile, taken: readonly TakenReading[]): SetFile {
  if (taken.length === 0) return set
  const stations = new Set(set.stations.map(({ key }) => key))
  const pieces = set.pieces.map((piece): SetPiece => {
    const own = taken.filter((reading) => reading.piece === piece.key && stations.has(reading.station))
    if (own.length === 0) return piece
    const later = own.map(
      ({ station, values }) => [station, values.length === 1 ? values[0]! : values] as const,
    )
    return { ...piece, readings: { ...piece.readings, ...Object.fromEntries(later) } }
  })
  return { ...set, pieces }
}

/** What a piece reads at a station, mm: the mean of several values; undefined without a reading. */
export function readingAt(piece: SetPiece, station: string): number | undefined {
  const read = piece.readings[station]
  if (read === undefined || typeof read === 'number') return read
  return read.length === 0 ? undefined : moments(read).mean
}

export interface Farthest {
  piece: string
  station: string
  /** mm from the target, with its sign. */
  off: number
}

/** The reading farthest from its target, in tolerances; undefined while nothing is read. */
export function farthestOf(set: SetFile): Farthest | undefined {
  let farthest: (Farthest & { score: number }) | undefined
  for (const piece of set.pieces) {
    for (const station of set.stations) {
      const value = readingAt(piece, station.key)
      if (value === undefined || !hasWidth(station)) continue
      const off = value - station.target
      const score =
        Math.abs(off) / ((off > 0 ? station.plus : station.minus) || (station.plus + station.minus) / 2)
      if (!farthest || score > farthest.score)
        farthest = { piece: piece.key, station: station.key, off, score }
    }
  }
  return farthest && { piece: farthest.piece, station: farthest.station, off: farthest.off }
}

/**
 * The pieces that are under and that spares can take the place of: those of the set, as far as spares reach that are
 * in, over or not read yet.
 */
export function standInsOf(
  { pieces }: Pick<Match, 'pieces'>,
  spares: readonly string[],
): { replaced: string[]; by: string[] } {
  const under = new Set(pieces.flatMap(({ key, verdict }) => (verdict === 'under' ? [key] : [])))
  const by = spares.filter((key) => !under.has(key))
  const replaced = [...under].filter((key) => !spares.includes(key)).slice(0, by.length)
  return { replaced, by }
}
