import type { SizingOrder } from './sizing-order.ts'

/** Preset gauges made for this batch, against setting the calipers over and over. Times in minutes. */
export interface Gauges {
  /** A gauge made for every setting; at the lathe none of them is set. */
  minutes: number
  /** Setting the calipers over the batch without gauges. */
  resetMinutes: number
  /** Pieces from which a gauge for every setting takes less time; absent where no number of pieces does. */
  paysFrom?: number
  pays: boolean
  /** Gauges for no more settings than the calipers cannot hold; the calipers are set once for all others. */
  few?: { diameters: number[]; minutes: number; paysFrom?: number; pays: boolean }
  why: string
}

export interface GaugesInput {
  order: SizingOrder
  /** Resets of the calipers over so many pieces. */
  resets(pieces: number): number
  pieces: number
  calipers: number
  minutes: GaugeMinutes
}

/** Minutes to set a caliper, and to make one gauge. */
export interface GaugeMinutes {
  reset: number
  gauge: number
}

/** So many pieces that their settings repeat. */
const PIECES_MAX = 1_000

/** Fewest pieces whose resets take longer than so many minutes. */
function paysFrom({ resets, minutes }: GaugesInput, cost: number): number | undefined {
  const dearer = (pieces: number): boolean => resets(pieces) * minutes.reset > cost
  if (dearer(1)) return 1
  // A further piece asks for no reset, or for one now and then for ever.
  if (minutes.reset === 0 || resets(PIECES_MAX) === resets(1)) return undefined
  let [low, high] = [1, 2]
  while (!dearer(high)) [low, high] = [high, 2 * high]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (dearer(middle)) high = middle
    else low = middle
  }
  return high
}

/** The settings most cuts are sized to, and of those the thinner: small gauges are soon made. */
function mostWanted({ diameters, cuts }: SizingOrder, count: number): number[] {
  const wanted = diameters.map((_, setting) => cuts.filter((cut) => cut.setting === setting).length)
  return [...diameters.keys()]
    .sort((a, b) => wanted[b]! - wanted[a]! || b - a)
    .slice(0, count)
    .sort((a, b) => a - b)
    .map((setting) => diameters[setting]!)
}

function fewGauges(input: GaugesInput): Gauges['few'] {
  const { order, pieces, calipers, minutes } = input
  const over = order.diameters.length - calipers
  if (over <= 0) return undefined
  const cost = over * minutes.gauge + calipers * minutes.reset
  const from = paysFrom(input, cost)
  return {
    diameters: mostWanted(order, over),
    minutes: cost,
    ...(from !== undefined && { paysFrom: from }),
    pays: from !== undefined && from <= pieces,
  }
}

const minutesText = (minutes: number): string => `${Math.round(minutes * 10) / 10} min`
const gaugesText = (count: number): string => (count === 1 ? '1 gauge' : `${count} gauges`)

function whyOf({ order, minutes: { gauge, reset } }: GaugesInput, from: number | undefined): string {
  const both = `${gaugesText(order.diameters.length)} at ${minutesText(gauge)} against ${minutesText(reset)} for each setting of a caliper`
  if (from === undefined) return `${both}: calipers are set only once for all blanks.`
  return `${both}: one for every diameter pays from ${from} ${from === 1 ? 'blank' : 'blanks'} on, and serves the next batch of this profile as well.`
}

/**
 * Whether preset gauges pay: the minutes to make one for each setting against the minutes of all resets, and from how
 * many blanks on. A gauge is taken to cost no more at the lathe than a caliper that stands at its setting. Absent
 * where nothing is sized.
 */
export function gaugesFor(input: GaugesInput): Gauges | undefined {
  const { order, resets, pieces, minutes } = input
  if (order.diameters.length === 0) return undefined
  const cost = order.diameters.length * minutes.gauge
  const from = paysFrom(input, cost)
  const few = fewGauges(input)
  const found = {
    minutes: cost,
    resetMinutes: resets(pieces) * minutes.reset,
    ...(from !== undefined && { paysFrom: from }),
    pays: from !== undefined && from <= pieces,
    ...(few && { few }),
  }
  return { ...found, why: whyOf(input, from) }
}
