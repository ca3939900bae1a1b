import { inches } from '../units/length.ts'
import type { RouteInput } from './input.ts'

/** What is lost where the wood's shrinkage is not on record, a fraction of the diameter. Common practice, no source. */
const LOST_UNKNOWN = 0.1
/** A dried cylinder has bent and lies so far off its old centres. Common practice, no source. */
const TRUING = inches(1 / 16)

type Drying = Pick<RouteInput, 'dries' | 'blank'>

const most = ({ dries }: Drying, unknown: number): number =>
  dries ? Math.max(dries.tangential, dries.radial) : unknown

/**
 * What is left, the narrower way, of the square on the lathe once it is dry, mm. Where the wood’s shrinkage is not on
 * record nothing was added to the square for it, which the blank says; it is taken as it is.
 */
export const driedSideOf = (input: Drying): number => input.blank.side * (1 - most(input, 0))

/**
 * Diameter to rough wet wood to, mm, so that the oval it dries to still holds a cylinder of `round` and the wood to
 * true it by, the narrower way too; no more than the blank has.
 */
export const wetDiameterOf = (round: number, input: Drying): number =>
  Math.min(input.blank.side, (round + TRUING) / (1 - most(input, LOST_UNKNOWN)))

/** The oval that a cylinder of `wet` mm dries to: along the rings, where wood loses most, and across them. */
export function driedOval(wet: number, input: Drying): { along: number; across: number } {
  const { tangential, radial } = input.dries ?? { tangential: LOST_UNKNOWN, radial: LOST_UNKNOWN }
  return { along: wet * (1 - tangential), across: wet * (1 - radial) }
}
