import { lengthText, nm, styleOf, type Units } from '../units/length.ts'
import type { LatheFit } from './blank.ts'

/** What has to be known of a lathe to say whether a blank goes on it. Lengths mm. */
export interface LatheSize {
  name: string
  betweenCentres: number
  /** Twice the centre height over the bed. */
  swing: number
  /** The same over the base of the tool rest. */
  swingOverRest: number
}

/**
 * Whether a blank goes on a lathe, and what stands against it: its length against the length between centres
 * less what the mount takes, its diagonal against the swing over the bed and over the base of the tool rest,
 * which must pass under it. Limits are inclusive; the lathe's own manual comes first.
 */
export function latheFit(
  blank: { length: number; diagonal: number },
  lathe: LatheSize,
  mountTakes: number,
  units: Units,
): LatheFit {
  const text = (mm: number) => lengthText(mm, styleOf(units))
  const room = lathe.betweenCentres - mountTakes
  const why: string[] = []
  if (nm(blank.length) > nm(room)) {
    why.push(
      `The blank is ${text(blank.length)} long; ${lathe.name} holds ${text(lathe.betweenCentres)} between centres` +
        (mountTakes > 0 ? `, ${text(room)} with this mount.` : '.'),
    )
  }
  if (nm(blank.diagonal) > nm(lathe.swing)) {
    why.push(
      `Its diagonal of ${text(blank.diagonal)} does not clear the bed: the swing is ${text(lathe.swing)}.`,
    )
  } else if (nm(blank.diagonal) > nm(lathe.swingOverRest)) {
    why.push(
      `Its diagonal of ${text(blank.diagonal)} does not clear the base of the tool rest: the swing over it is ${text(lathe.swingOverRest)}.`,
    )
  }
  return { name: lathe.name, fits: why.length === 0, why }
}
