import type { StageLeavings } from '../turning/calipers.ts'
import type { Units } from '../units/length.ts'
import { type ReadingKind, type ReadingStage, stageTarget } from './reading.ts'
import type { SetFile, SetPiece, SetStation } from './set.ts'

/** A check station of a plan: finished size and what it may be over and under, mm. */
interface SetOfStation {
  key: string
  kind: ReadingKind
  target: number
  plus: number
  minus: number
  fixed: boolean
  /** Neither sanded nor coated. */
  tenon: boolean
}

/** A reading as it was logged; `at` is ISO 8601. */
export interface LoggedReading {
  piece: string
  station: string
  stage: ReadingStage
  kind?: ReadingKind
  value: number
  values?: number[]
  at: string
}

export interface SetOfReadingsInput {
  units: Units
  stations: readonly SetOfStation[]
  /** Keys of the pieces in their order, those without a reading among them. */
  pieces: readonly string[]
  readings: readonly LoggedReading[]
  stage: ReadingStage
  allowances: StageLeavings
  /** The pieces get a film finish. */
  film: boolean
  choose?: number
}

/** The latest reading of each piece and station at the stage; of two at one moment the one logged last. */
function latest({ readings, stage, stations }: SetOfReadingsInput): Map<string, Map<string, LoggedReading>> {
  const kinds = new Map(stations.map((s) => [s.key, s.kind]))
  const byPiece = new Map<string, Map<string, LoggedReading>>()
  for (const reading of readings) {
    const kind = kinds.get(reading.station)
    if (kind === undefined || reading.stage !== stage || (reading.kind ?? kind) !== kind) continue
    const of = byPiece.get(reading.piece) ?? new Map<string, LoggedReading>()
    const before = of.get(reading.station)
    if (before === undefined || Date.parse(reading.at) >= Date.parse(before.at))
      of.set(reading.station, reading)
    byPiece.set(reading.piece, of)
  }
  return byPiece
}

/**
 * The set that a batch's readings of one stage make, against the targets of that stage: like is compared with
 * like. The latest reading of a piece at a station counts.
 */
export function setOfReadings(input: SetOfReadingsInput): SetFile {
  const stations: SetStation[] = input.stations.map(({ key, kind, target, plus, minus, fixed, tenon }) => ({
    key,
    target: stageTarget(target, input.stage, input.allowances, { kind, tenon, film: input.film }),
    plus,
    minus,
    fixed,
  }))
  const byPiece = latest(input)
  const pieces: SetPiece[] = input.pieces.map((key) => ({
    key,
    readings: Object.fromEntries(
      [...(byPiece.get(key) ?? [])].map(([station, { value, values }]) => [
        station,
        values !== undefined && values.length > 1 ? values : value,
      ]),
    ),
  }))
  const file: SetFile = { units: input.units, stations, pieces }
  return input.choose === undefined ? file : { ...file, choose: input.choose }
}
