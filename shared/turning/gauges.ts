import type { SizingOrder } from './sizing-order.ts'
import type { SizingWays } from './sizing-ways.ts'

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
  ways: SizingWays
  pieces: number
  calipers: number
  /** Each cut is made on all blanks before the next, so that more pieces ask for no more resets. */
  byOperation: boolean
  minutes: GaugeMinutes
}

/** Minutes to set a caliper, and to make one gauge. */
export interface GaugeMinutes {
  reset: number
  gauge: number
}

/** Fewest pieces whose resets take longer than so many minutes. */
function paysFrom(
  { ways, order, calipers, byOperation, minutes }: GaugesInput,
  cost: number,
): number | undefined {
  const dearer = (pieces: number): boolean => ways.fewest(pieces).resets * minutes.reset > cost
  if (dearer(1)) return 1
  const each = order.diameters.length - calipers
  if (byOperation || minutes.reset === 0 || each <= 0) return undefined
  // At least `each` resets come with every piece, so that it has paid by then.
  let [low, high] = [1, 2 + Math.ceil(cost / minutes.reset / each)]
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

function whyOf(
  { order, byOperation, minutes: { gauge, reset } }: GaugesInput,
  found: Omit<Gauges, 'why'>,
): string {
  const count = order.diameters.length
  const both = `${gaugesText(count)} at ${minutesText(gauge)} against ${minutesText(reset)} for each setting of a caliper`
  if (found.paysFrom !== undefined)
    return `${both}: one for every diameter pays from ${found.paysFrom} ${found.paysFrom === 1 ? 'blank' : 'blanks'} on, and serves the next batch of this profile as well.`
  if (byOperation)
    return `${both}: each cut is made on all blanks before the next, so the calipers are seldom set.`
  return `${both}: the calipers hold all settings at once and are set only once.`
}

/**
 * Whether preset gauges pay: the minutes to make one for each setting against the minutes of all resets, and from how
 * many blanks on. A gauge is taken to cost no more at the lathe than a caliper that stands at its setting. Absent
 * where nothing is sized.
 */
export function gaugesFor(input: GaugesInput): Gauges | undefined {
  const { order, ways, pieces, minutes } = input
  if (order.diameters.length === 0) return undefined
  const cost = order.diameters.length * minutes.gauge
  const from = paysFrom(input, cost)
  const few = fewGauges(input)
  const found = {
    minutes: cost,
    resetMinutes: ways.fewest(pieces).resets * minutes.reset,
    ...(from !== undefined && { paysFrom: from }),
    pays: from !== undefined && from <= pieces,
    ...(few && { few }),
  }
  return { ...found, why: whyOf(input, found) }
}
