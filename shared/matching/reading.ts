import { caliperSetting, type StageLeavings } from '../turning/calipers.ts'
import { nm } from '../units/length.ts'

/** Which stage of the work a reading belongs to. */
export type ReadingStage = 'sized' | 'turned' | 'sanded' | 'finished'
export type ReadingKind = 'diameter' | 'position' | 'length' | 'side'
export type Verdict = 'in' | 'over' | 'under'

/** A target with what it may be over and under; lengths mm. */
export interface Limits {
  target: number
  plus: number
  minus: number
}

/** Narrower than any gauge tells apart, mm: what is divided by less would leave the range of numbers. */
const NARROWEST = 1e-100

/**
 * Whether there is room between the limits. Without it a reading can still be in, but nothing is measured in
 * widths of such a tolerance.
 *
 * @example hasWidth({ target: 50, plus: 0.8, minus: 0 }) // true
 * @example hasWidth({ target: 50, plus: 0, minus: 0 }) // false
 */
export const hasWidth = ({ plus, minus }: Limits): boolean => plus + minus > NARROWEST

/** A limit that falls on half a nanometre counts on the side that lets the reading in. */
const HALF = 0.501

/** The largest reading that is still in, integer nanometres. */
export const upperNm = ({ target, plus }: Limits): number => Math.floor((target + plus) * 1e6 + HALF)

/** The smallest reading that is still in, integer nanometres. */
export const lowerNm = ({ target, minus }: Limits): number => Math.ceil((target - minus) * 1e6 - HALF)

/**
 * What a reading says: `in` (limits inclusive), `over` (wood can still come off) or `under`. Lengths mm,
 * compared on integer nanometres.
 *
 * @example verdictOf(50.8, { target: 50, plus: 0.8, minus: 0.8 }) // 'in'
 * @example verdictOf(50.81, { target: 50, plus: 0.8, minus: 0.8 }) // 'over'
 */
export function verdictOf(value: number, limits: Limits): Verdict {
  const reading = nm(value)
  if (reading < lowerNm(limits)) return 'under'
  return reading > upperNm(limits) ? 'over' : 'in'
}

/** What is measured: squares are not turned, tenons are neither sanded nor finished. */
interface Measured {
  kind?: ReadingKind
  tenon?: boolean
  /** The piece gets a film finish; oil and wax build nothing. */
  film?: boolean
}

/**
 * What a station should read at a stage of the work when `target` is its finished size; lengths mm. Film
 * comes on top of the sanded size, so sanding goes that much under the target; sanding takes `turned` and the
 * finishing cuts take `sizing`, as the calipers are set.
 *
 * @example stageTarget(50, 'turned', { sizing: 1.6, turned: 0.4, film: 0.1 }) // 50.4
 * @example stageTarget(50, 'sanded', { sizing: 1.6, turned: 0.4, film: 0.1 }, { film: true }) // 49.9
 */
export function stageTarget(
  target: number,
  stage: ReadingStage,
  { sizing, turned, film }: StageLeavings,
  measured: Measured = {},
): number {
  const { kind = 'diameter' } = measured
  if (kind === 'position' || kind === 'length' || stage === 'finished') return target
  const cut = kind !== 'side'
  const left = {
    sizing: cut && stage === 'sized' ? sizing : 0,
    turned: cut && stage !== 'sanded' ? turned : 0,
    film,
  }
  return caliperSetting(target, left, measured)
}
