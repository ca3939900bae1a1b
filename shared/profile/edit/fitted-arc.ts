import { nm } from '../../units/length.ts'
import type { Station } from '../profile.ts'

/** The field that holds the sagitta of a bead or a cove. */
export const sagittaField = (then: Station['then']): 'rise' | 'depth' | undefined =>
  then === 'bead' ? 'rise' : then === 'cove' ? 'depth' : undefined

/**
 * The same with its bead or cove brought down to the half round where the width (mm) allows no more.
 *
 * @example fittedArc({ then: 'bead', rise: 6 }, 8) // { then: 'bead', rise: 4 }
 */
export function fittedArc<T extends Pick<Station, 'then' | 'rise' | 'depth'>>(span: T, width: number): T {
  const field = sagittaField(span.then)
  const sagitta = field && span[field]
  if (field === undefined || sagitta === undefined || nm(sagitta) <= nm(width / 2)) return span
  return { ...span, [field]: width / 2 }
}
