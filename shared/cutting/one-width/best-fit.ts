import { type Demand, type StripCut, shortestLeft, takeOff, timesOf } from './demand.ts'

/** A cut of one place after another; the same place twice in a row counts up. */
function add(cut: StripCut, place: number, count: number): void {
  if (cut.places.at(-1) === place) cut.counts[cut.counts.length - 1]! += count
  else {
    cut.places.push(place)
    cut.counts.push(count)
  }
}

/**
 * Best fit decreasing: long ones first, each into the fullest strip that still takes it. Strips are kept by the
 * room left in them.
 */
export function bestFit({ room, lengths }: Demand, left: Int32Array): StripCut[] {
  const cuts: StripCut[] = []
  // Ascending by room; equal rooms in the order they came.
  const open: { room: number; cut: StripCut }[] = []
  const placeOf = (least: number): number => {
    let [low, high] = [0, open.length]
    while (low < high) {
      const mid = (low + high) >> 1
      if (open[mid]!.room < least) low = mid + 1
      else high = mid
    }
    return low
  }
  const shortest = lengths[shortestLeft(left)] ?? 0
  left.forEach((count, place) => {
    const length = lengths[place]!
    for (let n = count; n > 0; ) {
      const at = placeOf(length)
      const strip = at < open.length ? open.splice(at, 1)[0]! : { room, cut: emptyCut() }
      if (strip.cut.places.length === 0) cuts.push(strip.cut)
      // The strip stays the fullest that takes it as long as it takes it at all.
      const taken = Math.min(n, Math.floor(strip.room / length))
      add(strip.cut, place, taken)
      strip.room -= taken * length
      n -= taken
      if (strip.room >= shortest) open.splice(placeOf(strip.room), 0, strip)
    }
  })
  return cuts
}

const emptyCut = (): StripCut => ({ places: [], counts: [], copies: 1 })

/**
 * The fullest strip after strip: each begins with the longest length left and is then filled as full as a look
 * at so many ways can, full ones cut as often as they can be had.
 */
export function fullestFit(demand: Demand, left: Int32Array, waysMax: number): StripCut[] {
  const { room, lengths } = demand
  const own = left.slice()
  const cuts: StripCut[] = []
  for (let first = 0; first < own.length; ) {
    if (own[first] === 0) {
      first++
      continue
    }
    own[first] = own[first]! - 1
    const rest = fullest(demand, own, first, room - lengths[first]!, waysMax)
    own[first] = own[first]! + 1
    const cut = emptyCut()
    add(cut, first, 1)
    for (const [i, place] of rest.places.entries()) add(cut, place, rest.counts[i]!)
    cut.copies = timesOf(cut, own)
    takeOff(cut, own)
    cuts.push(cut)
  }
  return cuts
}

/** The lengths, none longer than the first, that fill a room best: depth first, long ones first. */
function fullest(demand: Demand, left: Int32Array, first: number, room: number, waysMax: number) {
  const { lengths } = demand
  const shortest = shortestLeft(left)
  const least = shortest >= first ? lengths[shortest]! : Number.POSITIVE_INFINITY
  const taken = { places: [] as number[], counts: [] as number[] }
  let best = { places: [] as number[], counts: [] as number[] }
  let [bestRoom, ways] = [room, 0]
  const fitting = (from: number, rest: number): number => {
    let [low, high] = [from, shortest + 1]
    while (low < high) {
      const mid = (low + high) >> 1
      if (lengths[mid]! > rest) low = mid + 1
      else high = mid
    }
    return low
  }
  const look = (from: number, rest: number): void => {
    if (rest < bestRoom) {
      bestRoom = rest
      best = { places: [...taken.places], counts: [...taken.counts] }
    }
    if (rest < least) return
    for (let place = fitting(from, rest); place <= shortest && bestRoom > 0 && ways < waysMax; place++) {
      const most = Math.min(left[place]!, Math.floor(rest / lengths[place]!))
      ways++
      for (let n = most; n > 0 && bestRoom > 0 && ways < waysMax; n--) {
        ways++
        taken.places.push(place)
        taken.counts.push(n)
        look(place + 1, rest - n * lengths[place]!)
        taken.places.pop()
        taken.counts.pop()
      }
    }
  }
  if (room >= least) look(first, room)
  return best
}
