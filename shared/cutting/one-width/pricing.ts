import type { Patience } from '../line.ts'
import type { Demand } from './demand.ts'
import { addFilling, type Fillings } from './fillings.ts'

/** Cells of the table above which fillings are looked for one by one. */
const CELLS_MAX = 4_000_000
/** Fillings looked at one by one before the search has to do with an estimate. */
const LOOKS_MAX = 2_000_000

/** Lengths that are wanted and worth something, as they enter the search for the best filling. */
interface Choices {
  places: number[]
  lengths: number[]
  worth: number[]
  most: number[]
}

/** What the best filling of a strip is worth, or a little more than that where the search was cut short. */
export interface Best {
  worth: number
  /** How many of the fillings added are worth more than asked for. */
  added: number
}

/**
 * The best filling of a strip by what lengths are worth (whole numbers, so that sums are exact), none taken more
 * often than it is left. Every filling worth more than `least` that comes up, at most one for each longest
 * length, is added to the fillings.
 */
export function bestFilling(
  { room, lengths }: Demand,
  left: Int32Array,
  worth: Float64Array,
  least: number,
  fillings: Fillings,
  patience: Patience,
): Best {
  const choices: Choices = { places: [], lengths: [], worth: [], most: [] }
  left.forEach((count, place) => {
    const most = Math.min(count, Math.floor(room / lengths[place]!))
    if (most <= 0 || worth[place]! <= 0) return
    choices.places.push(place)
    choices.lengths.push(lengths[place]!)
    choices.worth.push(worth[place]!)
    choices.most.push(most)
  })
  if (choices.places.length === 0) return { worth: 0, added: 0 }
  return choices.places.length * (room + 1) <= CELLS_MAX
    ? byTable(room, choices, least, fillings, patience)
    : byLooking(room, choices, least, fillings, patience)
}

/** By choice and room: the most that it and the later ones are worth there. Kept from call to call. */
let table = new Float64Array(0)

function filledTable(room: number, { lengths, worth, most }: Choices): void {
  const [n, width] = [lengths.length, room + 1]
  if (table.length < (n + 1) * width) table = new Float64Array((n + 1) * width)
  table.fill(0, n * width, (n + 1) * width)
  for (let k = n - 1; k >= 0; k--) {
    const [row, after, length, each] = [k * width, (k + 1) * width, lengths[k]!, worth[k]!]
    table.copyWithin(row, after, after + width)
    if (most[k]! >= Math.floor(room / length)) {
      for (let c = length; c <= room; c++) {
        const with1 = table[row + c - length]! + each
        if (with1 > table[row + c]!) table[row + c] = with1
      }
      continue
    }
    let copies = most[k]!
    for (let times = 1; copies > 0; times *= 2) {
      const taken = Math.min(times, copies)
      copies -= taken
      const [back, more] = [taken * length, taken * each]
      for (let c = room; c >= back; c--) {
        const withMore = table[row + c - back]! + more
        if (withMore > table[row + c]!) table[row + c] = withMore
      }
    }
  }
}

function byTable(
  room: number,
  choices: Choices,
  least: number,
  fillings: Fillings,
  patience: Patience,
): Best {
  const { lengths, worth, most } = choices
  const [n, width] = [lengths.length, room + 1]
  patience.steps += n * width
  filledTable(room, choices)
  const found: { worth: number; first: number; times: number }[] = []
  for (let k = 0; k < n; k++) {
    const best = { worth: 0, first: k, times: 0 }
    for (let t = 1; t <= most[k]! && t * lengths[k]! <= room; t++) {
      const all = t * worth[k]! + table[(k + 1) * width + room - t * lengths[k]!]!
      if (all > best.worth) Object.assign(best, { worth: all, times: t })
    }
    if (best.worth > least) found.push(best)
  }
  found.sort((a, b) => b.worth - a.worth || a.first - b.first)
  for (const { first, times } of found) addFromTable(room, choices, first, times, fillings)
  return { worth: table[room]!, added: found.length }
}

/** Reads a filling out of the table that begins with so many of one choice. */
function addFromTable(
  room: number,
  { places, lengths, worth, most }: Choices,
  first: number,
  times: number,
  fillings: Fillings,
): void {
  const width = room + 1
  const own = [places[first]!]
  const counts = [times]
  let c = room - times * lengths[first]!
  for (let k = first + 1; k < places.length; k++) {
    const whole = table[k * width + c]!
    if (whole === 0) break
    if (whole === table[(k + 1) * width + c]!) continue
    let t = 1
    while (t < most[k]! && table[(k + 1) * width + c - t * lengths[k]!]! + t * worth[k]! !== whole) t++
    own.push(places[k]!)
    counts.push(t)
    c -= t * lengths[k]!
  }
  addFilling(fillings, own, counts)
}

/** Depth first, what is worth most for its length first; cut off where parts of lengths could not do better. */
function byLooking(
  room: number,
  choices: Choices,
  least: number,
  fillings: Fillings,
  patience: Patience,
): Best {
  const order = choices.places.map((_, k) => k)
  const rate = (k: number) => choices.worth[k]! / choices.lengths[k]!
  order.sort((a, b) => rate(b) - rate(a) || a - b)
  const lengths = order.map((k) => choices.lengths[k]!)
  const worth = order.map((k) => choices.worth[k]!)
  const most = order.map((k) => choices.most[k]!)
  const shortestFrom: number[] = []
  for (let k = order.length - 1; k >= 0; k--)
    shortestFrom[k] = Math.min(lengths[k]!, shortestFrom[k + 1] ?? Number.POSITIVE_INFINITY)
  const taken = new Int32Array(order.length)
  let [best, looks, added] = [least, 0, 0]
  const add = () => {
    const own = order.flatMap((k, i) => (taken[i]! > 0 ? [[choices.places[k]!, taken[i]!] as const] : []))
    own.sort((a, b) => a[0] - b[0])
    addFilling(
      fillings,
      own.map(([place]) => place),
      own.map(([, count]) => count),
    )
    added++
  }
  const look = (from: number, rest: number, sum: number): void => {
    if (sum > best) {
      best = sum
      add()
    }
    for (let k = from; k < order.length && looks < LOOKS_MAX; k++) {
      if (sum + (rest / lengths[k]!) * worth[k]! <= best || shortestFrom[k]! > rest) return
      const times = Math.min(most[k]!, Math.floor(rest / lengths[k]!))
      for (let t = times; t > 0; t--) {
        looks++
        taken[k] = t
        look(k + 1, rest - t * lengths[k]!, sum + t * worth[k]!)
      }
      taken[k] = 0
    }
  }
  look(0, room, 0)
  patience.steps += 20 * looks
  const estimate = looks < LOOKS_MAX ? best : Math.ceil((room / lengths[0]!) * worth[0]!)
  return { worth: estimate, added }
}
