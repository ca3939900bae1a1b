import type { Patience } from '../line.ts'
import type { Demand } from './demand.ts'
import { addFilling, type Fillings, fillingsIn } from './fillings.ts'

/** Cells of the table above which fillings are looked for one by one. */
const CELLS_MAX = 4_000_000
/** Fillings looked at one by one before the search has to do with an estimate. */
const LOOKS_MAX = 2_000_000

/** Fillings added at a time at most: of these no two have a length in common. */
const ADDED_MAX = 40
const TRIED_MAX = 60
const PAIRS_MAX = 400

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
  /** How many fillings were added that were not known before. */
  added: number
}

/** What lengths are worth (whole numbers, so that sums are exact), and fillings to add: those worth more by `adding`. */
export interface Worths {
  worth: Float64Array
  adding: Float64Array
  least: number
  /** Whether more is looked for: the best for each two longest lengths. */
  inPairs: boolean
}

/**
 * The best filling of a strip by what lengths are worth, none taken more often than it is left. Of the best for
 * each longest length those that are worth adding are added to the fillings, as long as they have no length in
 * common.
 */
export function bestFilling(
  { room, lengths }: Demand,
  left: Int32Array,
  worths: Worths,
  fillings: Fillings,
  patience: Patience,
): Best {
  const { worth } = worths
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
    ? byTable(room, choices, worths, fillings, patience)
    : byLooking(room, choices, worths, fillings, patience)
}

/** By choice and room: the most that it and the later ones are worth there. Kept from call to call. */
let table = new Float64Array(0)

function filledTable(room: number, { lengths, worth, most }: Choices): void {
  const [n, width] = [lengths.length, room + 1]
  if (table.length < (n + 1) * width) table = new Float64Array((n + 1) * width)
  table.fill(0, n * width, (n + 1) * width)
  for (let k = n - 1; k >= 0; k--) {
    const row = table.subarray(k * width, (k + 1) * width)
    const after = table.subarray((k + 1) * width, (k + 2) * width)
    if (most[k] === 1) withOne(row, after, lengths[k]!, worth[k]!)
    else withMany(row, after, lengths[k]!, worth[k]!, most[k]!)
  }
}

/** By room: the most with at most one of a length. */
function withOne(row: Float64Array, after: Float64Array, length: number, worth: number): void {
  const width = row.length
  for (let c = 0; c < length; c++) row[c] = after[c]!
  for (let c = length, rest = 0; c < width; c++, rest++) {
    row[c] = Math.max(after[c]!, after[rest]! + worth)
  }
}

/** The same with so many, in lots of 1, 2, 4 …; or one after another where so many take all the room. */
function withMany(row: Float64Array, after: Float64Array, length: number, worth: number, most: number): void {
  const width = row.length
  row.set(after)
  if (most >= Math.floor((width - 1) / length)) {
    for (let c = length; c < width; c++) {
      const withIt = row[c - length]! + worth
      if (withIt > row[c]!) row[c] = withIt
    }
    return
  }
  let copies = most
  for (let times = 1; copies > 0; times *= 2) {
    const taken = Math.min(times, copies)
    copies -= taken
    const [back, more] = [taken * length, taken * worth]
    for (let c = width - 1; c >= back; c--) {
      const withThem = row[c - back]! + more
      if (withThem > row[c]!) row[c] = withThem
    }
  }
}

function byTable(
  room: number,
  choices: Choices,
  worths: Worths,
  fillings: Fillings,
  patience: Patience,
): Best {
  const [n, width] = [choices.lengths.length, room + 1]
  patience.steps += n * width
  filledTable(room, choices)
  const begun = worths.inPairs ? pairsBegun(room, choices) : singlesBegun(room, choices)
  begun.sort((a, b) => b.worth - a.worth || a.first - b.first || a.second - b.second)
  const taken = new Uint8Array(n)
  let added = 0
  for (const { first, times, second } of begun.slice(0, worths.inPairs ? PAIRS_MAX : TRIED_MAX)) {
    if (added >= ADDED_MAX) break
    if (taken[first] === 1) continue
    const filling = readTable(room, choices, first, times, second, taken)
    if (!filling || !isUseful(filling, worths) || !isNew(fillings, filling)) continue
    for (const k of filling.chosen) taken[k] = 1
    added++
  }
  return { worth: table[room]!, added }
}

/** How a filling begins: so many of its longest length, one of the next or of whatever is best; what it is worth in all. */
interface Begun {
  worth: number
  first: number
  times: number
  /** The choice, or -1. */
  second: number
}

/** The best filling for each longest length. */
function singlesBegun(room: number, { lengths, worth, most }: Choices): Begun[] {
  const width = room + 1
  return lengths.map((length, first) => {
    const best = { worth: 0, first, times: 0, second: -1 }
    for (let times = 1; times <= most[first]! && times * length <= room; times++) {
      const all = times * worth[first]! + table[(first + 1) * width + room - times * length]!
      if (all > best.worth) Object.assign(best, { worth: all, times })
    }
    return best
  })
}

/** The best filling for each two longest lengths: where those for each one are all known or kept out. */
function pairsBegun(room: number, { lengths, worth }: Choices): Begun[] {
  const width = room + 1
  const begun: Begun[] = []
  for (let first = 0; first < lengths.length; first++) {
    for (let second = first + 1; second < lengths.length; second++) {
      const rest = room - lengths[first]! - lengths[second]!
      if (rest < 0) continue
      const all = worth[first]! + worth[second]! + table[(second + 1) * width + rest]!
      begun.push({ worth: all, first, times: 1, second })
    }
  }
  return begun
}

interface Filling {
  places: number[]
  counts: number[]
}

function isNew(fillings: Fillings, { places, counts }: Filling): boolean {
  const before = fillingsIn(fillings)
  return addFilling(fillings, places, counts) === before
}

function isUseful({ places, counts }: Filling, { adding, least }: Worths): boolean {
  let sum = 0
  for (let i = 0; i < places.length; i++) sum += counts[i]! * adding[places[i]!]!
  return sum > least
}

/** Reads a filling out of the table that begins with so many of one choice, and one of another; none where it holds what is taken. */
function readTable(
  room: number,
  { places, lengths, worth, most }: Choices,
  first: number,
  times: number,
  second: number,
  taken: Uint8Array,
): (Filling & { chosen: number[] }) | undefined {
  const width = room + 1
  const own = { places: [places[first]!], counts: [times], chosen: [first] }
  let c = room - times * lengths[first]!
  if (second >= 0) {
    if (taken[second] === 1) return undefined
    own.places.push(places[second]!)
    own.counts.push(1)
    own.chosen.push(second)
    c -= lengths[second]!
  }
  for (let k = Math.max(first, second) + 1; k < places.length; k++) {
    if (lengths[k]! > c) continue
    const whole = table[k * width + c]!
    if (whole === 0) break
    if (whole === table[(k + 1) * width + c]!) continue
    if (taken[k] === 1) return undefined
    let t = 1
    while (t < most[k]! && table[(k + 1) * width + c - t * lengths[k]!]! + t * worth[k]! !== whole) t++
    own.places.push(places[k]!)
    own.counts.push(t)
    own.chosen.push(k)
    c -= t * lengths[k]!
  }
  return own
}

/** Depth first, what is worth most for its length first; cut off where parts of lengths could not do better. */
function byLooking(
  room: number,
  choices: Choices,
  worths: Worths,
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
  let [best, looks, added] = [0, 0, 0]
  const add = () => {
    const own = order.flatMap((k, i) => (taken[i]! > 0 ? [[choices.places[k]!, taken[i]!] as const] : []))
    own.sort((a, b) => a[0] - b[0])
    const filling = { places: own.map(([place]) => place), counts: own.map(([, count]) => count) }
    if (!isUseful(filling, worths)) return
    if (isNew(fillings, filling)) added++
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
