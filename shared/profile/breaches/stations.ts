import { nm } from '../../units/length.ts'
import { type Station, samePlace } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import type { Found, PartLimits } from './found.ts'

type Say = (field: keyof Station, message: string) => void

/** Whether a turned span ends or starts at the station, so that its own diameter is needed. */
export function needsDiameter(stations: Station[], index: number): boolean {
  const [before, here, after] = [stations[index - 1], stations[index]!, stations[index + 1]]
  const closes = before !== undefined && before.then !== 'square' && !samePlace(before.at, here.at)
  const opens = after !== undefined && here.then !== 'square' && !samePlace(here.at, after.at)
  return closes || opens
}

/** A diameter or a side: more than nothing, no thicker than a part may be. */
function saySize(say: Say, field: 'diameter' | 'side', size: number, { thicknessMax }: PartLimits): void {
  if (nm(size) <= 0) say(field, `must be more than 0; read ${sizeText(size)}`)
  else if (nm(size) > nm(thicknessMax)) {
    say(field, `must be at most ${sizeText(thicknessMax)}, the thickest part; read ${sizeText(size)}`)
  }
}

function sayShape(say: Say, stations: Station[], index: number): void {
  const [{ at, then, side, rise, depth }, after] = [stations[index]!, stations[index + 1]]
  if (!after && then !== 'straight') {
    say(
      'then',
      `must be left out, since station ${index} is the last and closes the part; read "${then}": add a station where that span ends`,
    )
  } else if (after && then !== 'straight' && samePlace(at, after.at)) {
    say(
      'then',
      `must be straight or left out, since station ${index} is the first of a step and starts no span; read "${then}"`,
    )
  } else if (then === 'square' && side === undefined) {
    say('side', 'is missing; a span left square needs its side, the width across the flats')
  }
  if (then === 'bead' && depth !== undefined && rise === undefined)
    say('depth', 'belongs to a cove; what a bead has is a rise')
  if (then === 'cove' && rise !== undefined && depth === undefined)
    say('rise', 'belongs to a bead; what a cove has is a depth')
}

/** Everything wrong with what each station says of itself. */
export function stationBreaches(stations: Station[], limits: PartLimits): Found[] {
  return stations.flatMap(({ at, diameter, then, side }, index) => {
    const found: Found[] = []
    const say: Say = (field, message) => found.push({ index, field, message })
    if (diameter !== undefined) saySize(say, 'diameter', diameter, limits)
    else if (needsDiameter(stations, index)) {
      say(
        'diameter',
        `is missing; a turned span ends or starts at station ${index} (${sizeText(at)}) and needs the diameter there`,
      )
    }
    if (then === 'square' && side !== undefined) saySize(say, 'side', side, limits)
    sayShape(say, stations, index)
    return found
  })
}

/** Keys that are used twice, or that another station goes by of itself. */
export function keyBreaches(stations: Station[]): Found[] {
  const seen = new Map<string, number>()
  return stations.flatMap(({ key }, index): Found[] => {
    if (key === undefined) return []
    const owner = Number(/^s(\d+)[cr]?$/.exec(key)?.[1] ?? Number.NaN)
    if (owner < stations.length && key !== `s${index}`) {
      return [
        {
          index,
          field: 'key',
          message: `must not be "${key}", which stands for station ${owner}: choose another word`,
        },
      ]
    }
    const first = seen.get(key)
    if (first !== undefined) {
      return [{ index, field: 'key', message: `must be unique; station ${first} has the key "${key}" too` }]
    }
    seen.set(key, index)
    return []
  })
}
