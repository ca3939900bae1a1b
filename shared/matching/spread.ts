import { chartSignals, individualsLimits } from './chart.ts'
import { moments } from './moments.ts'
import { hasWidth, type Limits } from './reading.ts'
import type { SetStation, StationSpread } from './set.ts'

/** One reading of a station, with the piece it was taken on. */
export interface PieceReading {
  piece: string
  value: number
}

/** Differences this small beside the readings themselves are the binary noise of a mean, not wood. */
const NOISE = 4 * Number.EPSILON

/**
 * How well a tolerance holds the spread: cp of the tolerance's width alone, cpu and cpl against each limit,
 * cpk the less of them (NIST/SEMATECH e-Handbook 6.1.6). All lengths in one unit; sd more than 0.
 *
 * @example capability({ mean: 16, sd: 2 }, { target: 14, plus: 6, minus: 6 }).cp // 1
 */
export function capability(
  { mean, sd }: { mean: number; sd: number },
  { target, plus, minus }: Limits,
): { cp: number; cpu: number; cpl: number; cpk: number } {
  const cpu = (target + plus - mean) / (3 * sd)
  const cpl = (mean - target + minus) / (3 * sd)
  return { cp: (plus + minus) / (6 * sd), cpu, cpl, cpk: Math.min(cpu, cpl) }
}

const NO_WIDTH = 'a tolerance of 0 has no width: no cp or cpk, and the station does not count in choosing'

/** Why there is no cp or cpk; absent where they can be had. */
function whyNoCapability(station: SetStation, { alone = false, alike = false }): string | undefined {
  const reasons = [
    alone ? 'one reading only: it shows no spread' : '',
    alike ? 'all readings are alike: no cp or cpk' : '',
    hasWidth(station) ? '' : NO_WIDTH,
  ]
  return reasons.filter(Boolean).join('; ') || undefined
}

/** The readings of one station over the set, in the order of the pieces. What cannot be had is absent, with `why`. */
export function stationSpread(station: SetStation, readings: readonly PieceReading[]): StationSpread {
  const { key } = station
  const n = readings.length
  if (n === 0) return { key, n, why: 'no reading yet' }
  const values = readings.map((r) => r.value)
  const min = values.reduce((a, b) => Math.min(a, b))
  const max = values.reduce((a, b) => Math.max(a, b))
  const { mean, sd } = moments(values)
  const known = { key, n, mean, min, max, spread: max - min }
  if (sd === undefined) return { ...known, why: whyNoCapability(station, { alone: true }) }
  const alike = sd === 0 || max - min <= NOISE * max
  const limits = individualsLimits(values)
  const signals = chartSignals(values, limits).map(({ index, rule }) => ({
    piece: readings[index]!.piece,
    rule,
  }))
  const chart = { centre: limits.centre, upper: limits.upper, lower: limits.lower, signals }
  const shown = { ...known, sd: alike ? 0 : sd, chart }
  const why = whyNoCapability(station, { alike })
  if (why !== undefined) return { ...shown, why }
  const { cp, cpk } = capability({ mean, sd }, station)
  return { ...shown, cp, cpk }
}
