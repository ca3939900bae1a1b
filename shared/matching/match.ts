import { nm } from '../units/length.ts'
import { bringDown } from './bring-down.ts'
import { type Candidate, chosenOf } from './choose.ts'
import { moments } from './moments.ts'
import { lowerNm, upperNm, type Verdict, verdictOf } from './reading.ts'
import type { Match, SetFile, SetPiece, SetStation } from './set.ts'
import { type PieceReading, stationSpread } from './spread.ts'

/** The reading of a piece at a station, mm: the mean of several values, their range the out-of-round. */
function readingOf(piece: SetPiece, station: string): { value: number; outOfRound?: number } | undefined {
  const read = Object.hasOwn(piece.readings, station) ? piece.readings[station] : undefined
  if (read === undefined || typeof read === 'number') return read === undefined ? undefined : { value: read }
  if (read.length === 0) return undefined
  const value = moments(read).mean
  return read.length === 1 ? { value } : { value, outOfRound: Math.max(...read) - Math.min(...read) }
}

/** How far a reading lies beyond the nearer limit, in widths of the tolerance; less than 0 inside. */
function beyond(value: number, station: SetStation): number {
  const [lower, upper] = [lowerNm(station), upperNm(station)]
  return Math.max(nm(value) - upper, lower - nm(value)) / Math.max(1, upper - lower)
}

/** Of the verdicts at its stations the gravest: under before over before in. */
const gravest = (verdicts: Verdict[]): Verdict =>
  verdicts.includes('under') ? 'under' : verdicts.includes('over') ? 'over' : 'in'

function pieceMatch(piece: SetPiece, stations: readonly SetStation[]): Match['pieces'][number] {
  const read = stations.flatMap((station) => {
    const reading = readingOf(piece, station.key)
    return reading ? [{ station, ...reading }] : []
  })
  if (read.length === 0) return { key: piece.key, why: 'no reading yet' }
  const far = read.map((r) => beyond(r.value, r.station))
  const worst = read[far.indexOf(far.reduce((a, b) => Math.max(a, b)))]!.station.key
  const verdict = gravest(read.map((r) => verdictOf(r.value, r.station)))
  const round = read.filter((r) => r.outOfRound !== undefined)
  if (round.length === 0) return { key: piece.key, verdict, worst }
  return {
    key: piece.key,
    verdict,
    worst,
    outOfRound: Object.fromEntries(round.map((r) => [r.station.key, r.outOfRound!])),
  }
}

const NONE_CHOSEN = 'no set is chosen: every tolerance is 0, so that there is nothing to measure it by'

/**
 * How alike a set of pieces is: the spread at each station, the verdict on each piece, the pieces that match
 * best when more were made than wanted, and how to bring the rest down to the smallest. Lengths mm.
 * @throws Problem `bad-input` when fewer pieces are read at every station than `choose` asks for
 */
export function matchSet(file: SetFile): Match {
  const readings = new Map<string, PieceReading[]>()
  for (const { key } of file.stations) {
    const here = file.pieces.flatMap((piece) => {
      const reading = readingOf(piece, key)
      return reading ? [{ piece: piece.key, value: reading.value }] : []
    })
    readings.set(key, here)
  }
  const match: Match = {
    stations: file.stations.map((station) => stationSpread(station, readings.get(station.key)!)),
    pieces: file.pieces.map((piece) => pieceMatch(piece, file.stations)),
    bringDown: bringDown(file.stations, readings),
  }
  if (file.choose === undefined) return match
  const chosen = chosenOf(candidatesOf(file), file.stations, file.choose)
  return chosen ? { ...match, chosen } : { ...match, why: NONE_CHOSEN }
}

function candidatesOf({ pieces, stations }: SetFile): Candidate[] {
  return pieces.map((piece) => ({
    key: piece.key,
    values: stations.map((s) => readingOf(piece, s.key)?.value),
  }))
}
