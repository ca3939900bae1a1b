import type { Plan } from '../../shared/plan.ts'
import type { RailBending } from '../../shared/profile/stair-bending.ts'
import type { StairRun } from '../../shared/profile/stair-run.ts'
import { feetText } from '../../shared/units/feet.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { lengthBelow, lengthDown } from '../../shared/units/length-below.ts'
import { countText } from './figures.ts'

function runText({ run, count, clear, spacing, first }: StairRun, style: LengthStyle): string {
  const length = (mm: number) => lengthText(mm, style)
  const feet = feetText(run, style)
  const filled = `${length(run)}${feet ? ` (${feet})` : ''} takes ${countText(count, 'part')}`
  return count === 0
    ? filled
    : `${filled}, ${lengthDown(spacing, style)} centre to centre, the first ${length(first)} from the post; ${lengthDown(clear, style)} clear at the thinnest`
}

const bendingText = (bending: RailBending, style: LengthStyle): string =>
  `${bending.load.toFixed(0)} N over ${lengthText(bending.over, style)}, all on one part: ${bending.stress.toFixed(1)} MPa at ${lengthText(bending.at, style)} from the foot; clear wood breaks at ${bending.rupture.toFixed(0)} MPa, a reserve of ${bending.reserve.toFixed(1)}`

/** What stair parts are for, as a heading. */
export const stairHeading = ({ use }: NonNullable<Plan['stair']>): string =>
  use === 'guard' ? 'In a guard' : 'On a stair'

/** Spacing, count and bending of stair parts, each under its name; what is not known is left out. */
export function stairFigures(
  stair: NonNullable<Plan['stair']>,
  style: LengthStyle,
): [string, string | undefined][] {
  const length = (mm: number) => lengthText(mm, style)
  const [from, to] = stair.between
  return [
    ['shows', `${length(from)} to ${length(to)} from the foot`],
    ['thinnest', `${length(stair.least.diameter)} at ${length(stair.least.at)}`],
    [
      'centres',
      `at most ${lengthBelow(stair.spacingBelow, style)}, so that a ball of ${length(stair.gap)} does not pass`,
    ],
    ['run', stair.run && runText(stair.run, style)],
    ['bending', stair.bending && bendingText(stair.bending, style)],
  ]
}
