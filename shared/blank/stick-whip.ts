import type { Beam } from '../profile/beam.ts'
import type { Profile } from '../profile/profile.ts'
import { roundSection, squareSection } from '../profile/section.ts'
import {
  type BarWood,
  beamOfStretches,
  restFor,
  type Stretch,
  stretchesOf,
  type Whip,
} from '../profile/whip.ts'

/** A stick of several parts, end to end with gaps left at the thickness of the stick; lengths mm. */
interface Stick {
  profile: Profile
  parts: number
  partLength: number
  between: number
  /** Diameter of the stick where nothing is cut. */
  diameter: number
}

/**
 * How the finished stick whips between centres, before anything is parted from it. Its slenderness goes by the
 * stick, not by a neck: parts are finished one after another with the stock behind them still thick.
 */
export function stickWhip(stick: Stick, wood: BarWood): Whip {
  const { parts, partLength, between } = stick
  const pitch = partLength + between
  const gap = (from: number): Stretch => ({
    from,
    to: from + between,
    section: () => roundSection(stick.diameter / 2),
  })
  const stretches = Array.from({ length: parts }, (_, i) => [
    ...stretchesOf(stick.profile, i * pitch),
    ...(i < parts - 1 && between > 0 ? [gap(i * pitch + partLength)] : []),
  ]).flat()
  const beam = beamOfStretches(stretches, wood)
  return { ...beam, ...restFor(parts * pitch - between, beam.sag, stick.diameter) }
}

/** How the square blank itself bends between centres. */
export const blankBeam = (blank: { side: number; length: number }, wood: BarWood): Beam =>
  beamOfStretches([{ from: 0, to: blank.length, section: () => squareSection(blank.side) }], wood)
