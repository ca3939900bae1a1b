/** What lies in one clear run: how many of each size, the room they take, and what they are worth. */
export interface Fill {
  /** Indices of sizes and how many of each. */
  sizes: number[]
  counts: number[]
  /** Room taken, a kerf after each included. */
  used: number
  value: number
}

export interface Choice {
  size: number
  /** Length with one kerf. */
  room: number
  value: number
  /** How many there are at most. */
  limit: number
}

/** Counts the work done, so that effort can be limited without a clock; where there is one, it may end it. */
export interface Effort {
  steps: number
  isSpent?: () => boolean
}

/** Most states kept at a time; more are thinned out, which can cost value but never validity. */
const STATES_MAX = 192
/** The same where there are many choices: close fits abound. */
const STATES_MANY = 48
const MANY_CHOICES = 12
/** With many choices a run this nearly full is full enough. */
const NEARLY_FULL = 511 / 512

interface States {
  used: number[]
  value: number[]
  /** The state it grew from, the choice taken and how often. */
  from: number[]
  choice: number[]
  times: number[]
}

/**
 * The most valuable choices that lie side by side in a run: a bounded knapsack over the sums that can be
 * reached, exact while those are few. `room` counts one kerf more than the run, for m pieces need only m − 1
 * kerfs.
 */
export function bestFill(room: number, choices: readonly Choice[], effort: Effort): Fill {
  if (choices.length === 1) return fillOfOne(room, choices[0]!)
  const many = choices.length > MANY_CHOICES
  const states: States = { used: [0], value: [0], from: [-1], choice: [-1], times: [0] }
  let front = [0]
  for (let c = 0; c < choices.length; c++) {
    const { room: each, limit } = choices[c]!
    let left = Math.min(limit, Math.floor(room / each))
    for (let times = 1; left > 0; times *= 2) {
      const taken = Math.min(times, left)
      left -= taken
      front = grown(states, front, room, c, choices[c]!, taken)
      if (front.length > (many ? STATES_MANY : STATES_MAX))
        front = thinned(front, many ? STATES_MANY : STATES_MAX)
      effort.steps += front.length
    }
    if (many && states.used[front.at(-1)!]! >= NEARLY_FULL * room) break
  }
  return readFill(states, front.at(-1)!, choices)
}

function fillOfOne(room: number, { size, room: each, value, limit }: Choice): Fill {
  const count = Math.min(limit, Math.floor(room / each))
  return count > 0
    ? { sizes: [size], counts: [count], used: count * each, value: count * value }
    : { sizes: [], counts: [], used: 0, value: 0 }
}

/** The front after so many of one choice may be added: by room taken, each worth more than the last. */
function grown(
  states: States,
  front: number[],
  room: number,
  choice: number,
  { room: each, value }: Choice,
  times: number,
): number[] {
  const merged: number[] = []
  const [moreRoom, moreValue] = [each * times, value * times]
  let best = -1
  let [i, j] = [0, 0]
  while (i < front.length || j < front.length) {
    const old = i < front.length ? states.used[front[i]!]! : Number.POSITIVE_INFINITY
    const next = j < front.length ? states.used[front[j]!]! + moreRoom : Number.POSITIVE_INFINITY
    if (old <= next) {
      const state = front[i++]!
      if (states.value[state]! > best) {
        best = states.value[state]!
        merged.push(state)
      }
      continue
    }
    if (next > room) break
    const from = front[j++]!
    const worth = states.value[from]! + moreValue
    if (worth <= best) continue
    best = worth
    merged.push(states.used.length)
    states.used.push(next)
    states.value.push(worth)
    states.from.push(from)
    states.choice.push(choice)
    states.times.push(times)
  }
  return merged
}

/** So many of a front, evenly, the last always among them. */
function thinned(front: number[], most: number): number[] {
  const step = (front.length - 1) / (most - 1)
  const kept: number[] = []
  for (let i = 0; i < most; i++) kept.push(front[Math.floor(i * step)]!)
  kept[most - 1] = front.at(-1)!
  return kept
}

function readFill(states: States, end: number, choices: readonly Choice[]): Fill {
  const counts = new Map<number, number>()
  for (let s = end; states.from[s]! >= 0; s = states.from[s]!) {
    const { size } = choices[states.choice[s]!]!
    counts.set(size, (counts.get(size) ?? 0) + states.times[s]!)
  }
  const sizes = [...counts.keys()].sort((a, b) => a - b)
  return {
    sizes,
    counts: sizes.map((s) => counts.get(s)!),
    used: states.used[end]!,
    value: states.value[end]!,
  }
}
