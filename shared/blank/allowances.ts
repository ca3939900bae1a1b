import { z } from 'zod'
import { lengthOf } from '../input.ts'
import { inches, MM_PER_INCH, type Units } from '../units/length.ts'

/** What is added to the finished part on the way from board to piece. Lengths mm. */
export interface Allowances {
  /** On the diameter, to true up a square that is turned all over. */
  rounding: number
  /** Rounding up of the side of such a square: to whole multiples of this. */
  sideStep: number
  /** Per mm of blank beyond `bowFree`: a long stick springs when it is sawn. */
  bowPerMm: number
  bowFree: number
  /** Planing of a part left square from rough stock, up to 6/4 and from 8/4. */
  planingThin: number
  planingThick: number
  endWaste: number
  horn: number
  /** A joint this near a square end asks for the horn. */
  hornReach: number
  spur: number
  chuck: number
  cup: number
  screw: number
  jam: number
  between: number
  stickMax: number
  minMachine: number
  jointing: number
  /** Left on the diameter after the sizing cut, and off the tool for sanding. */
  sizing: number
  turned: number
  /** Gained on the diameter by a film finish. */
  film: number
  /** Cheap-wood blanks to practise on. */
  practice: number
}

/** The shop's defaults; `allowanceSources` says where each comes from. */
export function defaultAllowances(units: Units): Allowances {
  return {
    rounding: units === 'in' ? inches(1 / 8) : 3,
    sideStep: units === 'in' ? inches(1 / 16) : 1,
    bowPerMm: 1 / 384, // 1/32 in per foot
    bowFree: inches(24),
    planingThin: inches(3 / 16),
    planingThick: inches(1 / 4),
    endWaste: inches(1 / 2),
    horn: inches(3 / 4),
    hornReach: inches(2),
    spur: inches(1 / 4),
    chuck: inches(1 / 2),
    cup: 0,
    screw: 0,
    jam: 0,
    between: inches(1 / 4),
    stickMax: inches(12),
    minMachine: inches(12),
    jointing: inches(1 / 16),
    sizing: inches(1 / 16),
    turned: inches(1 / 64),
    film: 0.1,
    practice: 0,
  }
}

const CP = 'common practice, no source'

export const allowanceSources: Record<keyof Allowances, string> = {
  rounding: 'lathe makers’ manuals: 1/8 to 1/4 in over the largest diameter; the least of it taken',
  sideStep: CP,
  bowPerMm: CP,
  bowFree: CP,
  planingThin: 'hardwood surfaced-thickness table (after NHLA rules): 4/4 to 6/4 lose 3/16 in on two sides',
  planingThick: 'hardwood surfaced-thickness table (after NHLA rules): 8/4 and up lose 1/4 in on two sides',
  endWaste: CP,
  horn: CP,
  hornReach: CP,
  spur: CP,
  chuck: CP,
  cup: CP,
  screw: CP,
  jam: CP,
  between: CP,
  stickMax: CP,
  minMachine: `${CP}; the machine maker’s minimum comes first`,
  jointing: CP,
  sizing: 'Milton & Wohlers, A Course in Wood Turning (1919), ch. V: calipers 1/16 in over',
  turned: CP,
  film: CP,
  practice: CP,
}

/** Allowances as a job or shop file may hold them, all optional. */
export function allowancesSchema(units: Units) {
  const size = lengthOf(units).optional()
  return z.object({
    rounding: size,
    sideStep: lengthOf(units, { least: 1e-3 }).optional(),
    bowPerMm: z.number().min(0).max(1).optional(),
    bowFree: size,
    planingThin: size,
    planingThick: size,
    endWaste: size,
    horn: size,
    hornReach: size,
    spur: size,
    chuck: size,
    cup: size,
    screw: size,
    jam: size,
    between: size,
    stickMax: size,
    minMachine: size,
    jointing: size,
    sizing: size,
    turned: size,
    film: size,
    practice: z.number().int().min(0).max(10).optional(),
    /** One figure for planing, whatever the stock. */
    planing: size,
    /** Bow per foot beyond two feet, as a length. */
    bow: size,
  }) // prettier-ignore
}

/** Allowances as the program uses them: `planing` is one figure for both, `bow` is per foot. */
export function allowancesFrom({
  planing,
  bow,
  ...rest
}: Partial<Allowances> & { planing?: number; bow?: number }): Partial<Allowances> {
  const given = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined))
  return {
    ...given,
    ...(planing !== undefined && { planingThin: planing, planingThick: planing }),
    ...(bow !== undefined && { bowPerMm: bow / (12 * MM_PER_INCH) }),
  }
}
