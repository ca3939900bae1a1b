/** Something laid side by side with others: the room one takes with its kerf, nanometres, and how many are of use. */
export interface Part {
  room: number
  most: number
}

/** Counted vectors, by the place of their part. */
export type Counts = readonly number[]

/** Calls for every vector of counts that fits; gives up, answering false, after so many. */
function everyCounts(
  room: number,
  parts: readonly Part[],
  most: number,
  take: (counts: number[], rest: number) => void,
): boolean {
  const counts = parts.map(() => 0)
  let seen = 0
  const from = (p: number, rest: number): boolean => {
    if (p === parts.length) {
      take(counts, rest)
      return ++seen <= most
    }
    const { room: each, most: wanted } = parts[p]!
    for (let n = Math.min(wanted, Math.floor(rest / each)); n >= 0; n--) {
      counts[p] = n
      if (!from(p + 1, rest - n * each)) return false
    }
    return true
  }
  return from(0, room)
}

/** Whether none of the parts that are still of use has room in the rest. */
const isFull = (counts: Counts, rest: number, parts: readonly Part[]): boolean =>
  parts.every(({ room, most }, p) => room > rest || counts[p]! >= most)

/** Every full vector for a room; `undefined` where there are too many to look through. */
export function fullCounts(room: number, parts: readonly Part[], most: number): Counts[] | undefined {
  const full: Counts[] = []
  const done = everyCounts(room, parts, most, (counts, rest) => {
    if (isFull(counts, rest, parts) && counts.some((n) => n > 0)) full.push([...counts])
  })
  return done ? full : undefined
}

/** A step of a chain: a room that parts fill to the last, and the full vectors that no lower step holds. */
export interface Step {
  room: number
  full: Counts[]
}

/**
 * The rooms, each brought down to the largest sum of parts in it, largest first. What a lower step holds is not
 * listed again in the higher. `undefined` where there are too many vectors.
 */
export function stepsOf(rooms: readonly number[], parts: readonly Part[], most: number): Step[] | undefined {
  const widest = rooms.reduce((most, room) => Math.max(most, room), 0)
  const sums = new Set<number>()
  if (!everyCounts(widest, parts, most, (_, rest) => sums.add(widest - rest))) return undefined
  const reached = Float64Array.from(sums).sort()
  const down = new Set(rooms.map((room) => lastUpTo(reached, room)))
  down.delete(0)
  const steps = [...down].sort((a, b) => a - b).map((room): Step => ({ room, full: [] }))
  if (steps.length === 0) return []
  const tops = Float64Array.from(steps, (s) => s.room)
  everyCounts(steps.at(-1)!.room, parts, most, (counts, rest) => {
    const sum = steps.at(-1)!.room - rest
    if (sum === 0) return
    const step = steps[firstFrom(tops, sum)]!
    if (isFull(counts, step.room - sum, parts)) step.full.push([...counts])
  })
  return steps.reverse()
}

/** The last of ascending numbers that is not above a limit. */
const lastUpTo = (ascending: Float64Array, limit: number): number =>
  ascending[firstFrom(ascending, limit + 1) - 1] ?? 0

/** The place of the first of ascending numbers that is not below a limit. */
function firstFrom(ascending: Float64Array, limit: number): number {
  let [low, high] = [0, ascending.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (ascending[middle]! < limit) low = middle + 1
    else high = middle
  }
  return low
}

/** Whether the first has at least as many of everything. */
export const holdsAll = (counts: Counts, others: Counts): boolean => counts.every((n, p) => n >= others[p]!)

/** Those that no other holds altogether, each once. */
export function undominated<T>(all: readonly T[], counts: (one: T) => Counts): T[] {
  const kept: T[] = []
  for (const one of all) {
    if (kept.some((other) => holdsAll(counts(other), counts(one)))) continue
    const rest = kept.filter((other) => !holdsAll(counts(one), counts(other)))
    kept.splice(0, kept.length, ...rest, one)
  }
  return kept
}
