import type { Mount } from '../turning/mount.ts'
import { inches } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import { wasteOf } from './removed.ts'

/** An end of the part that is turned, and how it comes free. Lengths mm. */
export interface TurnedEnd {
  end: 'foot' | 'top'
  at: number
  /** Finished diameter there, and of the roughed waste beyond it. */
  diameter: number
  rough: number
  waste: number
  /** Diameter of the nub that is left, 0 where the end is faced or parted. */
  nub: number
  way: 'nub' | 'faced' | 'parted'
}

/** Largest nub, and its share of a slight end. Common practice, no source. */
const NUB = inches(3 / 8)
const NUB_SHARE = 0.5

/** What holds the blank by its driven end alone, so that the tail centre can be drawn back. */
export const heldAtOneEnd = (mount: Mount): boolean =>
  mount === 'chuck' || mount === 'screw' || mount === 'jam'

/**
 * Turned ends of the part: between centres both are left on a nub; held at one end, the tail end is faced
 * clean and the driven one parted.
 */
export function turnedEnds(context: RouteContext): TurnedEnd[] {
  const { spans, zones, mount, tail } = context
  const held = heldAtOneEnd(mount)
  return (['foot', 'top'] as const).flatMap((end) => {
    const span = end === 'foot' ? spans[0]! : spans.at(-1)!
    if (span.shape === 'square') return []
    const zone = end === 'foot' ? zones[0]! : zones.at(-1)!
    const diameter = end === 'foot' ? span.d0 : span.d1
    const way = !held ? 'nub' : end === tail ? 'faced' : 'parted'
    return [
      {
        end,
        at: end === 'foot' ? span.from : span.to,
        diameter,
        rough: context.roughDiameter(zone),
        waste: wasteOf(context, zone)[end === 'foot' ? 0 : 1],
        nub: way === 'nub' ? Math.min(NUB, diameter * NUB_SHARE) : 0,
        way,
      },
    ]
  })
}
