import type { Job } from '../shared/job.ts'
import { nm } from '../shared/units/length.ts'
import { length } from './session.ts'

/** A tolerance of more than this part of the least diameter is hardly meant. Common practice, no source. */
const TOLERANCE_SHARE = 1 / 4

/** Entries of a job that can be read and planned, but are hardly meant so. */
export function oddEntries({ profile, tolerance, instrument, units }: Job): string[] {
  const diameters = profile.stations.flatMap(({ diameter, then, side }) => [
    ...(diameter === undefined ? [] : [diameter]),
    ...(then === 'square' && side !== undefined ? [side] : []),
  ])
  const least = Math.min(...diameters)
  const told: string[] = []
  if (nm(tolerance.diameter) > nm(least * TOLERANCE_SHARE))
    told.push(
      `A tolerance of ±${length(tolerance.diameter, units)} is more than a quarter of the least diameter, ${length(least, units)}: is it meant so?`,
    )
  if (nm(instrument.jawWidth) === 0)
    told.push(
      'Caliper jaws of no width reach every place: enter their real width, so that narrow coves are told of.',
    )
  return told
}

/** Whether grits go from coarse to fine without a repeat. */
export const gritsInOrder = (grits: readonly number[]): boolean =>
  grits.every((grit, i) => i === 0 || grit > grits[i - 1]!)
