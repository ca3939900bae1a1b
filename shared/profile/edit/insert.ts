import { mmOfNm, nm } from '../../units/length.ts'
import { type Station, samePlace, spansOf } from '../profile.ts'
import { spanAt } from '../radius.ts'
import { sizeText } from '../size-text.ts'
import { accepted, needStation, refused } from './accepted.ts'
import { cutSpan } from './cut-span.ts'
import { deviationText } from './deviation.ts'
import type { Edited } from './edited.ts'
import { type Snap, snapped } from './snap.ts'

/** Most parts one span is split into at a time. */
const PARTS_MAX = 200

/** The change as it is told: what the shapes could not keep is said with its size, never rounded down. */
function told(edited: Edited): Edited {
  const { deviation } = edited
  if (deviation === undefined) return accepted(edited)
  return accepted({
    ...edited,
    note: `The outline moves by up to ${deviationText(deviation)} on the radius: these shapes cannot follow it closer.`,
  })
}

/**
 * A station on the outline at `x` mm from the foot, on the nearest line of the grid. Straights and squares stay what
 * they were, a half-round bead or cove cut at its middle becomes two ovolos or cavettos; other shapes become the
 * closest there are, with the greatest distance from the old outline in `deviation` (mm on the radius) and `note`.
 * @throws Problem `bad-input` where a station stands already, or beyond the ends
 *
 * @example insertedAt([{ at: 0, diameter: 20, then: 'straight' }, { at: 40, diameter: 30, then: 'straight' }], 10, '1').stations[1] // { at: 10, diameter: 22.5, then: 'straight' }
 */
export function insertedAt(stations: Station[], x: number, snap: Snap): Edited {
  const length = needStation(stations, stations.length - 1).at
  if (!(nm(x) > 0 && nm(x) < nm(length)))
    throw refused(`must lie between 0 and ${sizeText(length)}; a station was asked for at ${sizeText(x)}`)
  const spans = spansOf({ stations, split: false })
  const { index, from, to } = spanAt(spans, x)
  const place = snapped(x, snap)
  const at = nm(place) > nm(from) && nm(place) < nm(to) ? place : mmOfNm(nm(x))
  if (stations.some((station) => samePlace(station.at, at)))
    throw refused(`have one at ${sizeText(at)} already`)
  return told(cutSpan(stations, index, [at]))
}

/**
 * The span that starts at a station split into equal parts along the axis.
 * @throws Problem `bad-input` where no span starts there, or the parts are no whole number from 2 to 200
 *
 * @example splitSpan([{ at: 0, diameter: 20, then: 'straight' }, { at: 40, diameter: 20, then: 'straight' }], 0, 4).stations.map(({ at }) => at) // [0, 10, 20, 30, 40]
 */
export function splitSpan(stations: Station[], i: number, parts: number): Edited {
  const [a, b] = [needStation(stations, i), stations[i + 1]]
  if (b === undefined || samePlace(a.at, b.at)) throw refused(`have no span that starts at station ${i}`)
  if (!Number.isInteger(parts) || parts < 2 || parts > PARTS_MAX)
    throw refused(`can be split into a whole number of parts from 2 to ${PARTS_MAX}; read ${parts}`)
  const width = nm(b.at) - nm(a.at)
  if (width < parts) throw refused('must lie apart to be split')
  const places = Array.from({ length: parts - 1 }, (_, k) =>
    mmOfNm(nm(a.at) + Math.round((width * (k + 1)) / parts)),
  )
  return told(cutSpan(stations, i, places))
}
