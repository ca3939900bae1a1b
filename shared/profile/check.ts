import type { Breach } from '../problem.ts'
import { nm } from '../units/length.ts'
import { type Profile, type Span, type Station, samePlace, spansOf } from './profile.ts'
import { spanRadius, spanTurns } from './radius.ts'

/** Greatest length and thickness of a part, mm. */
export interface PartLimits {
  lengthMax: number
  thicknessMax: number
}

/** A breach of one station, by its index: the field, and the sentence. */
type Found = { index: number; field?: string; message: string }

const mm = (length: number): string => `${Number(length.toFixed(3))} mm`

/** Everything wrong with where the stations stand. */
function placeBreaches(stations: Station[], { lengthMax }: PartLimits): Found[] {
  return stations.flatMap((station, index): Found[] => {
    const before = stations[index - 1]
    if (!before) {
      if (nm(station.at) === 0) return []
      return [
        { index, field: 'at', message: `must be 0: positions count from the foot; read ${mm(station.at)}` },
      ]
    }
    if (nm(station.at) < nm(before.at)) {
      const message = `must not lie before station ${index - 1} (${mm(before.at)}); read ${mm(station.at)}: put the stations in order from the foot`
      return [{ index, field: 'at', message }]
    }
    if (index >= 2 && samePlace(station.at, before.at) && samePlace(before.at, stations[index - 2]!.at)) {
      const message = `is the third station at ${mm(station.at)}; a step is two stations at one position: take one out or move it`
      return [{ index, field: 'at', message }]
    }
    if (nm(station.at) > nm(lengthMax) && nm(before.at) <= nm(lengthMax)) {
      return [
        {
          index,
          field: 'at',
          message: `makes the part longer than ${mm(lengthMax)}; read ${mm(station.at)}`,
        },
      ]
    }
    return []
  })
}

/** Whether a span ends or starts at the station for which its own diameter is needed. */
function needsDiameter(stations: Station[], index: number): boolean {
  const [before, here, after] = [stations[index - 1], stations[index]!, stations[index + 1]]
  const closes = before !== undefined && before.then !== 'square' && !samePlace(before.at, here.at)
  const opens = after !== undefined && here.then !== 'square' && !samePlace(here.at, after.at)
  return closes || opens
}

/** Everything wrong with what a station says of itself. */
function stationBreaches(stations: Station[], { thicknessMax }: PartLimits): Found[] {
  return stations.flatMap((station, index) => {
    const found: Found[] = []
    const say = (field: string, message: string) => found.push({ index, field, message })
    const { at, diameter, then, side } = station
    const after = stations[index + 1]
    if (diameter === undefined && needsDiameter(stations, index)) {
      say(
        'diameter',
        `is missing; station ${index} at ${mm(at)} ends or starts a turned span and needs its diameter there`,
      )
    }
    if (diameter !== undefined && nm(diameter) <= 0)
      say('diameter', `must be more than 0; read ${mm(diameter)}`)
    if (diameter !== undefined && nm(diameter) > nm(thicknessMax))
      say('diameter', `must be at most ${mm(thicknessMax)}; read ${mm(diameter)}`)
    if (!after && then !== 'straight') {
      say(
        'then',
        `must be left out: station ${index} is the last and closes the part; add a station where its ${then} ends`,
      )
    }
    if (after && then !== 'straight' && samePlace(at, after.at)) {
      say(
        'then',
        `must be straight or left out: station ${index} is the first of a step at ${mm(at)} and starts no span; read "${then}"`,
      )
    }
    if (then === 'square' && after) {
      if (side === undefined)
        say('side', `is missing; a span left square needs its side, the width across the flats`)
      else if (nm(side) <= 0) say('side', `must be more than 0; read ${mm(side)}`)
      else if (nm(side) > nm(thicknessMax))
        say('side', `must be at most ${mm(thicknessMax)}; read ${mm(side)}`)
    }
    if (then === 'bead' && station.depth !== undefined && station.rise === undefined)
      say('depth', 'belongs to a cove; a bead has a rise')
    if (then === 'cove' && station.rise !== undefined && station.depth === undefined)
      say('rise', 'belongs to a bead; a cove has a depth')
    return found
  })
}

/** Keys that are used twice, or that are another station's own. */
function keyBreaches(stations: Station[]): Found[] {
  const seen = new Map<string, number>()
  return stations.flatMap(({ key }, index) => {
    if (key === undefined) return []
    const auto = /^s(\d+)[cr]?$/.exec(key)
    const owner = auto ? Number(auto[1]) : undefined
    if (owner !== undefined && owner < stations.length && key !== `s${index}`) {
      return [
        {
          index,
          field: 'key',
          message: `must not be "${key}": station ${owner} goes by that key; choose another word`,
        },
      ]
    }
    const first = seen.get(key)
    if (first === undefined) seen.set(key, index)
    return first === undefined
      ? []
      : [{ index, field: 'key', message: `must be unique; station ${first} has the key "${key}" too` }]
  })
}

const arcField = { bead: 'rise', cove: 'depth' } as const

/** Everything wrong with the shape of one span by itself. */
function spanBreaches(span: Span, { thicknessMax }: PartLimits): Found[] {
  const { index, shape, from, to, station } = span
  const found: Found[] = []
  if (shape !== 'bead' && shape !== 'cove') return found
  const field = arcField[shape]
  const [wanted, most] = [station[field], Math.ceil((nm(to) - nm(from)) / 2)]
  if (wanted !== undefined && nm(wanted) > most) {
    const message = `is too much: the ${shape} at station ${index} is ${mm(to - from)} wide, so its ${field} can be at most half of that, ${mm((to - from) / 2)}; read ${mm(wanted)}`
    return [{ index, field, message }]
  }
  if (span.d0 <= 0 || span.d1 <= 0) return found
  const turns = spanTurns(span).map((x) => spanRadius(span, x))
  const [least, greatest] = [Math.min(...turns), Math.max(...turns)]
  if (shape === 'cove' && nm(least) <= 0) {
    const message = `is too much: the cove at station ${index} goes ${mm(-least)} past the axis; make it less than ${mm(span.sagitta! + least)} deep or the part thicker there`
    found.push({ index, field, message })
  }
  if (shape === 'bead' && nm(2 * greatest) > nm(thicknessMax)) {
    found.push({
      index,
      field,
      message: `makes the bead at station ${index} ${mm(2 * greatest)} across; the part can be at most ${mm(thicknessMax)} thick`,
    })
  }
  return found
}

/** Turned diameters that the largest square cannot hold. */
function squareBreaches(spans: Span[]): Found[] {
  const sides = spans.filter((span) => span.shape === 'square').map((span) => span.d0)
  if (sides.length === 0) return []
  const largest = Math.max(...sides)
  const remedy = `the largest square is ${mm(largest)}: make the square larger or the turning smaller`
  const seen = new Set<number>()
  return spans.flatMap((span) => {
    if (span.shape === 'square') return []
    const found: Found[] = []
    for (const [index, diameter] of [
      [span.index, span.d0],
      [span.index + 1, span.d1],
    ] as const) {
      if (nm(diameter) <= nm(largest) || seen.has(index)) continue
      seen.add(index)
      found.push({ index, field: 'diameter', message: `is ${mm(diameter)} at station ${index}; ${remedy}` })
    }
    for (const x of spanTurns(span)) {
      const diameter = 2 * spanRadius(span, x)
      if (nm(diameter) <= nm(largest) || nm(diameter) <= nm(Math.max(span.d0, span.d1))) continue
      found.push({
        index: span.index,
        field: 'rise',
        message: `makes the ${span.shape} at station ${span.index} ${mm(diameter)} across; ${remedy}`,
      })
    }
    return found
  })
}

/**
 * Everything that keeps a profile from being turned, each with the path of its field, what was read and what would
 * help; none when it is sound. `path` is where the profile stands in the input.
 *
 * @example profileBreaches({ stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 50, diameter: 20, then: 'straight' }], split: false }, 'profile', { lengthMax: 20000, thicknessMax: 1000 }) // []
 */
export function profileBreaches(profile: Profile, path: string, limits: PartLimits): Breach[] {
  const { stations } = profile
  const whole = `${path}.stations`
  if (stations.length < 2) {
    const message = `must have at least 2 stations, one at the foot and one at the top; read ${stations.length}`
    return [{ path: whole, message }]
  }
  const found = [
    ...placeBreaches(stations, limits),
    ...stationBreaches(stations, limits),
    ...keyBreaches(stations),
  ]
  const wrongPlace = found.some((breach) => breach.field === 'at')
  const spans = wrongPlace ? [] : spansOf(profile)
  if (!wrongPlace && spans.length === 0) {
    return [{ path: whole, message: `must not all stand at one position; the part has no length` }]
  }
  const sound = spans.filter((span) => nm(span.d0) > 0 && nm(span.d1) > 0)
  found.push(...sound.flatMap((span) => spanBreaches(span, limits)), ...squareBreaches(sound))
  return found
    .sort((a, b) => a.index - b.index)
    .map(({ index, field, message }) => ({ path: `${whole}[${index}]${field ? `.${field}` : ''}`, message }))
}
