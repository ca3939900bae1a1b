import { FIBRE_SATURATION } from './density.ts'

/** Above the moisture in use by more than this, % MC, no part is finish-turned or glued up. Common practice, no source. */
export const MOISTURE_OVER_SERVICE = 2

/**
 * Whether wood at a moisture content is too wet to be finish-turned for use at another, both % MC.
 *
 * @example tooWet(10, 8) // false
 * @example tooWet(10.1, 8) // true
 */
export const tooWet = (moisture: number, inUse: number): boolean => moisture > inUse + MOISTURE_OVER_SERVICE

/** Moisture of a wood as it is sawn, as it is turned and in use, all % MC. */
interface Drying {
  sawn: number
  turned: number
  inUse: number
}

/**
 * Whether wood dries as strips, before it is on the lathe: sawn wetter than it is turned, or never rough-turned wet,
 * for it is slender or glued up of layers that must be dry before glue.
 *
 * @example driesAsStrips({ sawn: 15, turned: 8, inUse: 8 }, false) // true
 * @example driesAsStrips({ sawn: 25, turned: 25, inUse: 8 }, false) // false
 * @example driesAsStrips({ sawn: 25, turned: 25, inUse: 8 }, true) // true
 */
export const driesAsStrips = ({ sawn, turned, inUse }: Drying, isTurnedDry: boolean): boolean =>
  tooWet(sawn, turned) || (isTurnedDry && tooWet(turned, inUse))

/**
 * Whether there is free water in the wood: at fibre saturation (30 % MC; Wood Handbook FPL-GTR-282 ch. 4) and above
 * it has not begun to shrink.
 *
 * @example isUnshrunk(30) // true
 */
export const isUnshrunk = (moisture: number): boolean => moisture >= FIBRE_SATURATION
