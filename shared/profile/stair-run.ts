import { nm } from '../units/length.ts'

/** Parts that fill a run between two posts with equal clear gaps, at their least diameter. Lengths mm. */
export interface StairRun {
  run: number
  /** The least number that leaves every gap smaller than the ball. */
  count: number
  /** Clear between neighbours, and between the last and the post. */
  clear: number
  /** Centre to centre. */
  spacing: number
  /** From the post to the centre of the first part. */
  first: number
}

/**
 * The least number of parts of that diameter that leaves no clear gap a ball of `gap` passes: with n parts the run
 * has n + 1 equal gaps, (run − n·diameter)/(n + 1), strictly smaller than the ball (to the nanometre).
 *
 * @example stairRun(1000, 100, 25).count // 8
 */
export function stairRun(run: number, gap: number, diameter: number): StairRun {
  const [whole, ball, part] = [nm(run), nm(gap), nm(diameter)]
  const count = Math.max(0, Math.floor((whole - ball) / (ball + part)) + 1)
  const clear = (run - count * diameter) / (count + 1)
  return { run, count, clear, spacing: clear + diameter, first: clear + diameter / 2 }
}
