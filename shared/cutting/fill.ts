/** What lies in one clear run: how many of each choice, the room they take, and what they are worth. */
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

/** Most states kept at a time; more are thinned out, which can cost value but never validity. */
const STATES_MAX = 192

/** Counts the work done, so that effort can be limited without a clock. */
export interface Effort {
  steps: number
}

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
 * reached, exact up to `STATES_MAX` of them. `room` counts one kerf more than the run, for m pieces need only
 * m − 1 kerfs.
 */
export function bestFill(room: number, choices: Choice[], effort: Effort): Fill {
  const states: States = { used: [0], value: [0], from: [-1], choice: [-1], times: [0] }
  let front = [0]
  for (let c = 0; c < choices.length; c++) {
    const { room: each, limit } = choices[c]!
    let left = Math.min(limit, Math.floor(room / each))
    for (let times = 1; left > 0; times *= 2) {
      const taken = Math.min(times, left)
      left -= taken
      front = grown(states, front, room, c, choices[c]!, taken)
      effort.steps += front.length
    }
  }
  return readFill(states, front[front.length - 1]!, choices)
}

/** The front after up to so many of one choice may be added: by room taken, each worth more than the last. */
function grown(
  states: States,
  front: number[],
  room: number,
  choice: number,
  { room: each, value }: Choice,
  times: number,
): number[] {
  const merged: number[] = []
  let best = -1
  let i = 0
  let j = 0
  const [moreRoom, moreValue] = [each * times, value * times]
  const keep = (state: number) => {
    best = states.value[state]!
    merged.push(state)
  }
  while (i < front.length || j < front.length) {
    const old = i < front.length ? states.used[front[i]!]! : Number.POSITIVE_INFINITY
    const next = j < front.length ? states.used[front[j]!]! + moreRoom : Number.POSITIVE_INFINITY
    if (next > room && i >= front.length) break
    if (old <= next) {
      if (states.value[front[i]!]! > best) keep(front[i]!)
      i++
    } else {
      const from = front[j]!
      const worth = states.value[from]! + moreValue
      if (worth > best) {
        states.used.push(next)
        states.value.push(worth)
        states.from.push(from)
        states.choice.push(choice)
        states.times.push(times)
        keep(states.used.length - 1)
      }
      j++
    }
  }
  return merged.length > STATES_MAX ? thinned(merged) : merged
}

function thinned(front: number[]): number[] {
  const kept: number[] = []
  for (let i = 0; i < STATES_MAX - 1; i++)
    kept.push(front[Math.floor((i * (front.length - 1)) / (STATES_MAX - 1))]!)
  kept.push(front[front.length - 1]!)
  return kept
}

function readFill(states: States, end: number, choices: Choice[]): Fill {
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
