/** Readings by piece and station, and the width of each station's tolerance, all in one unit. */
export interface Table {
  readings: readonly (readonly number[])[]
  widths: readonly number[]
}

/** The largest over the stations of the set's range there, in widths of the tolerance. */
export function scoreOf({ readings, widths }: Table, set: readonly number[]): number {
  let most = 0
  for (let s = 0; s < widths.length; s++) {
    let [min, max] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const piece of set) {
      const x = readings[piece]![s]!
      if (x < min) min = x
      if (x > max) max = x
    }
    most = Math.max(most, (max - min) / widths[s]!)
  }
  return most
}

const byReading = ({ readings }: Table, s: number): number[] =>
  [...readings.keys()].sort((a, b) => readings[a]![s]! - readings[b]![s]! || a - b)

/** What no set of `choose` pieces can score less than: at each station they are as far apart as the nearest so many. */
export function narrowestWindow(table: Table, choose: number): number {
  let most = 0
  for (let s = 0; s < table.widths.length; s++) {
    const sorted = byReading(table, s).map((piece) => table.readings[piece]![s]!)
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i + choose <= sorted.length; i++)
      least = Math.min(least, (sorted[i + choose - 1]! - sorted[i]!) / table.widths[s]!)
    most = Math.max(most, least)
  }
  return most
}

/** A station's pieces by reading, with the outermost that are still kept. */
interface Ends {
  order: number[]
  values: number[]
  width: number
  low: number
  high: number
}

function settle(ends: Ends, kept: ReadonlySet<number>): void {
  while (!kept.has(ends.order[ends.low]!)) ends.low++
  while (!kept.has(ends.order[ends.high]!)) ends.high--
}

const range = ({ values, width, low, high }: Ends): number => (values[high]! - values[low]!) / width

/** How much closer the station gets for each piece dropped at one end, looking `ahead` pieces and past equal readings. */
function gain(
  { order, values, low, high }: Ends,
  step: 1 | -1,
  kept: ReadonlySet<number>,
  ahead: number,
): number {
  const from = step === 1 ? low : high
  let dropped = 0
  for (let i = from; i >= low && i <= high; i += step) {
    if (!kept.has(order[i]!)) continue
    if (dropped >= ahead && values[i] !== values[from]) return Math.abs(values[i]! - values[from]!) / dropped
    dropped++
  }
  return 0
}

/**
 * A good set of `choose` pieces, ascending, found by dropping one piece after another: the smallest or the
 * largest at the station that is widest apart, whichever brings it closer together.
 */
export function peeledSet(table: Table, choose: number): number[] {
  const kept = new Set(table.readings.keys())
  const stations = table.widths.map((width, s): Ends => {
    const order = byReading(table, s)
    return {
      order,
      values: order.map((piece) => table.readings[piece]![s]!),
      width,
      low: 0,
      high: order.length - 1,
    }
  })
  while (kept.size > choose) {
    for (const ends of stations) settle(ends, kept)
    const widest = stations.reduce((a, b) => (range(b) > range(a) ? b : a))
    const ahead = Math.ceil((kept.size - choose) / (2 * stations.length))
    const end = gain(widest, 1, kept, ahead) > gain(widest, -1, kept, ahead) ? widest.low : widest.high
    kept.delete(widest.order[end]!)
  }
  return [...kept].sort((a, b) => a - b)
}

/**
 * The set of `choose` pieces closest together at a table's one station, first in the order of the pieces
 * among equals. It lies in a window of the sorted readings, so no search is needed: pieces are taken in their
 * order as long as one of the closest windows holds all that were taken.
 */
export function closestAtOne(table: Table, choose: number): number[] {
  const order = byReading(table, 0)
  const least = narrowestWindow(table, choose)
  const reading = (i: number): number => table.readings[order[i]!]![0]!
  // Window `from` holds the readings from there up to `least` more; `wide` counts those before it that hold enough.
  const [wide, earliest, rank] = [
    [0],
    new Map<number, number>(),
    new Map(order.map((piece, i) => [piece, i])),
  ]
  for (let [from, to] = [0, 0]; from < order.length; from++) {
    for (; to < order.length && (reading(to) - reading(from)) / table.widths[0]! <= least; to++)
      earliest.set(to, from)
    wide.push(wide[from]! + (to - from >= choose ? 1 : 0))
  }
  const set: number[] = []
  let [first, last] = [0, order.length - 1]
  for (let piece = 0; set.length < choose; piece++) {
    const at = rank.get(piece)!
    const [from, to] = [Math.max(first, earliest.get(at)!), Math.min(last, at)]
    if (to < from || wide[to + 1] === wide[from]) continue
    set.push(piece)
    first = from
    last = to
  }
  return set
}
