import { nm } from '../units/length.ts'
import type { Allowances } from './allowances.ts'
import type { Blank } from './blank.ts'
import type { Mount } from './mount.ts'

/** One end of the part: turned (its diameter) or left square (its side). Lengths mm. */
export interface PartEnd {
  square: boolean
  /** Diameter there, or the side where it is square. */
  diameter: number
  /** Left long and trimmed after glue-up. */
  trimLater?: boolean
}

/** How far a joint reaches along the part, mm from the foot. */
export interface JointReach {
  from: number
  to: number
}

export interface StickInput {
  part: { length: number }
  ends: { foot: PartEnd; top: PartEnd }
  joints: JointReach[]
  mount: Mount
  allowances: Allowances
}

/** The end that is driven: the square end if just one is square, else the thicker one, at a tie the top. */
export function drivenEnd({ foot, top }: StickInput['ends']): 'foot' | 'top' {
  if (foot.square !== top.square) return foot.square ? 'foot' : 'top'
  return nm(foot.diameter) > nm(top.diameter) ? 'foot' : 'top'
}

function endWaste(end: 'foot' | 'top', input: StickInput, driven: boolean): number {
  const { allowances, part, joints, mount } = input
  const { square, trimLater } = input.ends[end]
  if (!square) return allowances.endWaste + (driven ? allowances[mount] : 0)
  const near = joints.some((joint) => {
    const distance = end === 'foot' ? joint.from : part.length - joint.to
    return nm(distance) <= nm(allowances.hornReach)
  })
  return near || trimLater ? allowances.horn : 0
}

/**
 * Where the length of a stick for `parts` parts goes: the parts, waste or horn at either end with what the
 * mount takes at the driven one, and what is parted off between them. Lengths mm.
 */
export function lengthPartsOf(input: StickInput, parts: number): Blank['lengthParts'] {
  const driven = drivenEnd(input.ends)
  return {
    parts: parts * input.part.length,
    foot: endWaste('foot', input, driven === 'foot'),
    top: endWaste('top', input, driven === 'top'),
    between: (parts - 1) * input.allowances.between,
    mount: input.mount,
    drivenEnd: driven,
  }
}

/** Length of a stick for so many parts, mm. */
export function stickLength(input: StickInput, parts: number): number {
  const { parts: wood, foot, top, between } = lengthPartsOf(input, parts)
  return wood + foot + top + between
}
