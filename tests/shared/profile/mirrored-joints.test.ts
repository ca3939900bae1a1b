import { describe, expect, it } from 'vitest'
import type { PlacedJoint } from '../../../shared/profile/joint-reach.ts'
import { isHanded, jointsOfHand, mirroredJoint } from '../../../shared/profile/mirrored-joints.ts'

const mortise = (more: Partial<PlacedJoint> = {}): PlacedJoint => ({
  kind: 'mortise',
  at: 300,
  face: 'A',
  size: [10, 60],
  depth: 25,
  ...more,
})

describe('mirroredJoint', () => {
  it('changes B and D about, leaves A and C, and turns an angle the other way', () => {
    const faces = (['A', 'B', 'C', 'D'] as const).map((face) => mirroredJoint(mortise({ face })).face)
    expect(faces).toEqual(['A', 'D', 'C', 'B'])
    const angles = [0, 30, -45, 180].map((angle) => mirroredJoint({ ...mortise(), angle }).angle)
    expect(angles).toEqual([0, -30, 45, -180])
  })

  it('leaves place, size and depth, and twice is as before', () => {
    const joint = mortise({ face: 'B' })
    expect(mirroredJoint(joint)).toEqual({ ...joint, face: 'D' })
    expect(mirroredJoint(mirroredJoint(joint))).toEqual(joint)
  })
})

describe('the hands of a pair', () => {
  it('are the joints as drawn and their mirror image', () => {
    const joints = [mortise({ face: 'B' }), mortise({ at: 100 })]
    expect(jointsOfHand(joints, 'left')).toEqual(joints)
    expect(jointsOfHand(joints, 'right').map(({ face }) => face)).toEqual(['D', 'A'])
  })

  it('differ where two joints on neighbouring faces differ', () => {
    // a leg whose side rail is lower than its front rail
    expect(isHanded([mortise(), mortise({ face: 'B', at: 280 })])).toBe(true)
    expect(isHanded([mortise(), mortise({ face: 'B', depth: 20 })])).toBe(true)
  })

  it('are alike where a turn about the axis brings one to the other', () => {
    // a leg with equal rails: turned by a quarter, the right one is a left one
    expect(isHanded([mortise(), mortise({ face: 'B' })])).toBe(false)
    expect(isHanded([mortise(), mortise({ face: 'C', at: 280 })])).toBe(false)
    expect(isHanded([{ ...mortise(), angle: 17 }])).toBe(false)
    expect(isHanded([0, 120, 240].map((angle) => ({ ...mortise(), angle })))).toBe(false)
  })

  it('differ by three joints in no regular order', () => {
    expect(isHanded([0, 30, 100].map((angle) => ({ ...mortise(), angle })))).toBe(true)
  })

  it('are not told by tenons, nor by nothing', () => {
    expect(isHanded([mortise({ kind: 'tenon', face: 'B' })])).toBe(false)
    // Beside a mortise a tenon on a neighbouring face would tell the hands apart, did it look anywhere.
    expect(isHanded([mortise(), mortise({ kind: 'tenon', face: 'B', at: 0 })])).toBe(false)
    expect(isHanded([])).toBe(false)
  })
})
