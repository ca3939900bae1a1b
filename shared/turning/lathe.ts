import type { PulleyDrive } from './pulleys.ts'

/**
 * Speeds of a lathe, rpm: its belt or gear steps, with the pulleys they were worked out from where it told those, or the
 * ends of a variable range.
 */
export type LatheSpeeds =
  | { steps: number[] }
  | ({ steps: number[] } & PulleyDrive)
  | { least: number; most: number }

/** What turning needs to know of a lathe. Lengths mm, speeds rpm. */
export interface TurningLathe {
  name: string
  speeds: LatheSpeeds
  /** Lower limit set by a chuck, a faceplate or the maker’s plate. */
  limitRpm?: number
  /** Length of the tool rest. */
  restLength: number
  /** Lengths of further tool rests, where there are any. */
  rests?: number[]
}

/** Grain of a variable drive, rpm: nobody sets a dial closer. Common practice, no source. */
const DIAL_STEP = 10

/**
 * Slowest speed of the lathe, rpm.
 *
 * @example slowestRpm({ steps: [850, 400, 1200] }) // 400
 */
export const slowestRpm = (speeds: LatheSpeeds): number =>
  'steps' in speeds ? Math.min(...speeds.steps) : speeds.least

/**
 * Fastest speed of the lathe, rpm.
 *
 * @example fastestRpm({ least: 60, most: 3200 }) // 3200
 */
export const fastestRpm = (speeds: LatheSpeeds): number =>
  'steps' in speeds ? Math.max(...speeds.steps) : speeds.most

/**
 * The highest speed the lathe has that is not above `rpm`; `undefined` when its slowest is faster than that.
 * A variable drive is set down to a whole 10 rpm.
 *
 * @example speedNotAbove({ steps: [400, 600, 850] }, 800) // 600
 * @example speedNotAbove({ least: 60, most: 3200 }, 628.9) // 620
 * @example speedNotAbove({ steps: [700, 1200] }, 500) // undefined
 */
export function speedNotAbove(speeds: LatheSpeeds, rpm: number): number | undefined {
  if ('steps' in speeds) {
    const reachable = speeds.steps.filter((step) => step <= rpm)
    return reachable.length === 0 ? undefined : Math.max(...reachable)
  }
  if (rpm < speeds.least) return undefined
  const set = Math.floor(Math.min(rpm, speeds.most) / DIAL_STEP) * DIAL_STEP
  return Math.max(set, speeds.least)
}
