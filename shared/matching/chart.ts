import { nm } from '../units/length.ts'
import { moments } from './moments.ts'

/** 3/d2 for ranges of two, as factor tables print it (d2 = 1.128; ASTM E2587). */
export const E2 = 2.66

/** Western Electric rules (NIST/SEMATECH e-Handbook 6.3.2): this many in a row on one side of the centre. */
const RUN = 8

export const OUTSIDE = 'outside the limits'
export const ONE_SIDE = `${RUN} in a row on one side of the centre`

/**
 * How far each reading lies from the one before it, in the order of work.
 *
 * @example movingRanges([5, 7, 4]) // [2, 3]
 */
export function movingRanges(readings: readonly number[]): number[] {
  return readings.slice(1).map((reading, i) => Math.abs(reading - readings[i]!))
}

interface ChartLimits {
  centre: number
  meanRange: number
  upper: number
  lower: number
}

/**
 * Limits of a chart of single readings: mean ± 2.66 times the mean moving range (NIST/SEMATECH e-Handbook
 * 6.3.2.2). Needs two readings or more.
 *
 * @example individualsLimits([10, 12, 11]) // {"centre": 11, "meanRange": 1.5, "upper": 14.99, "lower": 7.01}
 */
export function individualsLimits(readings: readonly number[], factor = E2): ChartLimits {
  const centre = moments(readings).mean
  const meanRange = moments(movingRanges(readings)).mean
  return { centre, meanRange, upper: centre + factor * meanRange, lower: centre - factor * meanRange }
}

/** A reading, by its place in the order of work, that chance alone hardly explains. */
interface Signal {
  index: number
  rule: string
}

/** Readings outside the limits, and from the eighth in a row on one side of the centre on. */
export function chartSignals(readings: readonly number[], limits: ChartLimits): Signal[] {
  let [run, side] = [0, 0]
  return readings.flatMap((reading, index) => {
    const x = nm(reading)
    const now = Math.sign(x - nm(limits.centre))
    run = now !== 0 && now === side ? run + 1 : Math.abs(now)
    side = now
    const signals: Signal[] = []
    if (x > nm(limits.upper) || x < nm(limits.lower)) signals.push({ index, rule: OUTSIDE })
    if (run >= RUN) signals.push({ index, rule: ONE_SIDE })
    return signals
  })
}
