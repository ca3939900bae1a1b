import { nm } from '../units/length.ts'
import { upperNm, verdictOf } from './reading.ts'
import type { Match, SetStation } from './set.ts'
import type { PieceReading } from './spread.ts'

/** Readings of a set by station, each list in the order of the pieces. */
export type Readings = ReadonlyMap<string, readonly PieceReading[]>

type BringDown = Match['bringDown']

/** The new target of a station where a piece is under: the smallest reading there; absent where none is. */
function newTarget(station: SetStation, readings: readonly PieceReading[]): number | undefined {
  if (station.fixed || !readings.some((r) => verdictOf(r.value, station) === 'under')) return undefined
  return readings.reduce((least, r) => Math.min(least, r.value), Number.POSITIVE_INFINITY)
}

function spoiledAt(station: SetStation, readings: readonly PieceReading[]): BringDown['spoiled'] {
  if (!station.fixed) return []
  const why = 'it is under at a station that has to fit, and wood does not go back on'
  return readings
    .filter((r) => verdictOf(r.value, station) === 'under')
    .map((r) => ({ piece: r.piece, station: station.key, why }))
}

/**
 * How a set is made alike when some pieces are under: wood comes off, it never goes on. The smallest reading
 * becomes the target of its station, except at fixed stations, where the piece is spoiled; whatever then lies
 * above target + plus is cut down to the target. Lengths mm on the diameter.
 */
export function bringDown(stations: readonly SetStation[], readings: Readings): BringDown {
  const targets: [string, number][] = []
  const result: BringDown = { targets: {}, cuts: [], spoiled: [] }
  for (const station of stations) {
    const here = readings.get(station.key) ?? []
    const lowered = newTarget(station, here)
    if (lowered !== undefined) targets.push([station.key, lowered])
    const target = lowered ?? station.target
    result.spoiled.push(...spoiledAt(station, here))
    for (const { piece, value } of here)
      if (nm(value) > upperNm({ ...station, target }))
        result.cuts.push({ piece, station: station.key, remove: value - target })
  }
  return { ...result, targets: Object.fromEntries(targets) }
}
