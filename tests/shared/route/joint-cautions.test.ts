import { describe, expect, it } from 'vitest'
import { contextOf } from '../../../shared/route/context.ts'
import type { RouteJoint } from '../../../shared/route/input.ts'
import { jointCautions } from '../../../shared/route/joint-cautions.ts'
import { inches } from '../../../shared/units/length.ts'
import { inchProfile, leg, routeInput } from './route-inputs.ts'

/** A mortise 3/8 in wide and 2 in long in the 2-1/4 in square of the leg. */
const mortise = (at: number, more: Partial<RouteJoint> = {}): RouteJoint => ({
  kind: 'mortise',
  at: inches(at),
  face: 'A',
  size: [inches(3 / 8), inches(2)],
  depth: inches(1),
  stage: 'square',
  ...more,
})
const cautions = (joints: RouteJoint[], profile = leg()) =>
  jointCautions(contextOf(routeInput(profile, { joints })))

describe('jointCautions', () => {
  it('has nothing to say of a mortise that stands alone in sound wood', () => {
    expect(cautions([mortise(14)])).toEqual([[]])
  })

  it('names the joint that another meets, from both sides', () => {
    // 1-1/8 in from face to axis: mortises 1 in deep end 1/8 in from it; 3/8 in wide, they reach 3/16 in beyond it.
    expect(cautions([mortise(14), mortise(14.5, { face: 'B' })])).toEqual([
      ['It meets the mortise at 14-1/2 in.'],
      ['It meets the mortise at 14 in.'],
    ])
  })

  it('lets mortises pass that stop short of each other', () => {
    const shallow = { depth: inches(7 / 8) }
    expect(cautions([mortise(14, shallow), mortise(14, { ...shallow, face: 'B' })])).toEqual([[], []])
    expect(cautions([mortise(14), mortise(14, { face: 'C' })])).toEqual([[], []])
    expect(cautions([mortise(13), mortise(15)])).toEqual([[], []])
  })

  it('lets bored holes meet at any angle only where they do', () => {
    const hole = (angle: number): RouteJoint => ({
      kind: 'hole',
      at: inches(6),
      angle,
      size: [10],
      depth: 14,
      stage: 'turned',
    })
    const post = inchProfile([
      [0, 2],
      [12, 2],
    ])
    // 25.4 mm from face to axis: holes end 11.4 mm from it, where 10 mm holes 40° apart still share wood.
    expect(cautions([hole(0), hole(40)], post).flat()).toHaveLength(2)
    expect(cautions([hole(0), hole(90)], post)).toEqual([[], []])
  })

  it('warns where a centre would bite into the joint', () => {
    // The leg is square to its top at 16-1/2 in and driven there, without a horn.
    expect(cautions([mortise(15.4)])[0]!.join()).toContain('centre')
    expect(cautions([mortise(15.4, { depth: inches(1 / 2) })])).toEqual([[]])
  })

  it('warns where little or nothing is left of a neck', () => {
    const necked = inchProfile([
      [0, 2, 'straight'],
      [3, 1],
      [6, 2],
      [12, 2],
    ])
    const hole = (size: number, depth: number): RouteJoint => ({
      kind: 'hole',
      at: inches(3),
      angle: 0,
      size: [size],
      depth,
      stage: 'turned',
    })
    expect(cautions([hole(6, 26)], necked)[0]![0]).toContain('far side')
    expect(cautions([hole(6, 22)], necked)[0]![0]).toContain('thinnest')
    expect(cautions([hole(14, 10)], necked)[0]![0]).toContain('neck')
    expect(cautions([hole(6, 10)], necked)).toEqual([[]])
  })

  it('leaves tenons alone', () => {
    expect(cautions([{ ...mortise(16), kind: 'tenon' }])).toEqual([[]])
  })
})
