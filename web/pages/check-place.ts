import type { ReadingStage } from '../../shared/matching/reading.ts'

/** What is being read: which piece at which station and stage, and where to go when that is logged. */
export interface CheckPlace {
  stage: ReadingStage
  /** To the next station of the piece, or to the same station of the next piece. */
  then: 'station' | 'piece'
  piece: string
  station: string
}

const start: CheckPlace = { stage: 'sanded', then: 'station', piece: '', station: '' }

const keyOf = (jobId: string): string => `setwright.checks.${jobId}`

/** Where the person was with this job, kept over a reload. */
export function keptPlace(jobId: string): CheckPlace {
  try {
    return { ...start, ...(JSON.parse(sessionStorage.getItem(keyOf(jobId)) ?? '{}') as Partial<CheckPlace>) }
  } catch {
    return start
  }
}

export function keepPlace(jobId: string, place: CheckPlace): void {
  try {
    sessionStorage.setItem(keyOf(jobId), JSON.stringify(place))
  } catch {
    // Without storage the place lasts as long as the page.
  }
}

/** The place with the first piece and station where those it names are not there. */
export const settledPlace = (
  place: CheckPlace,
  stations: readonly string[],
  pieces: readonly string[],
): CheckPlace => ({
  ...place,
  piece: pieces.includes(place.piece) ? place.piece : (pieces[0] ?? ''),
  station: stations.includes(place.station) ? place.station : (stations[0] ?? ''),
})

/**
 * The place to go to when a reading is logged: along the stations and then to the next piece, or along the pieces
 * and then to the next station. From the last of all it stays on the last piece, or on the last station.
 */
export function placeAfter(
  place: CheckPlace,
  stations: readonly string[],
  pieces: readonly string[],
): CheckPlace {
  const [station, piece] = [stations.indexOf(place.station), pieces.indexOf(place.piece)]
  if (place.then === 'station') {
    if (station + 1 < stations.length) return { ...place, station: stations[station + 1]! }
    return { ...place, station: stations[0] ?? '', piece: pieces[piece + 1] ?? place.piece }
  }
  if (piece + 1 < pieces.length) return { ...place, piece: pieces[piece + 1]! }
  return { ...place, piece: pieces[0] ?? '', station: stations[station + 1] ?? place.station }
}
