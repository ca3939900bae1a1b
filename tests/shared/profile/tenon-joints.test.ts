import { describe, expect, it } from 'vitest'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { tenonEndOf, withTenons } from '../../../shared/profile/tenon-joints.ts'

/** A turned rung, 300 mm: tenons of 20 mm, 25 mm long, at both ends of a 30 mm round. */
const rung = (more: Partial<Profile['stations'][number]> = {}): Profile => ({
  split: false,
  stations: [
    { at: 0, diameter: 20, then: 'straight', ...more },
    { at: 25, diameter: 20, then: 'straight' },
    { at: 25, diameter: 30, then: 'straight' },
    { at: 275, diameter: 30, then: 'straight' },
    { at: 275, diameter: 20, then: 'straight' },
    { at: 300, diameter: 20, then: 'straight' },
  ],
})
const tolerance = { diameter: 0.8, position: 1.5 }
const joint = (at: number, size = [20], depth = 25) => ({ kind: 'tenon', at, size, depth }) as const
const marked = (profile: Profile, ...joints: Parameters<typeof withTenons>[1]): number[] =>
  withTenons(profile, joints, tolerance).stations.flatMap((station, i) => (station.tenon ? [i] : []))

describe('withTenons', () => {
  it('knows the span of a tenon by its end, its middle or its shoulder, at either end', () => {
    for (const at of [0, 12.5, 25]) expect(marked(rung(), joint(at)), `at ${at}`).toEqual([0])
    for (const at of [300, 287.5, 275]) expect(marked(rung(), joint(at)), `at ${at}`).toEqual([4])
    expect(marked(rung(), joint(0), joint(300))).toEqual([0, 4])
  })

  it('takes a tenon of two straights, and a length that agrees within the position tolerance', () => {
    const stepped = rung()
    stepped.stations.splice(1, 0, { at: 10, diameter: 20, then: 'straight' })
    expect(marked(stepped, joint(0))).toEqual([0, 1])
    expect(marked(rung(), joint(0, [20], 24))).toEqual([0])
    expect(marked(rung(), joint(0, [20], 23))).toEqual([])
  })

  it('leaves what is no tenon: another diameter, a bead, the body, a mortise, a square', () => {
    expect(marked(rung(), joint(0, [12]))).toEqual([])
    expect(marked(rung(), joint(0, [12, 40]))).toEqual([])
    expect(marked(rung({ then: 'bead', rise: 2 }), joint(0))).toEqual([])
    expect(marked(rung(), joint(150))).toEqual([])
    expect(marked(rung(), joint(25, [30]))).toEqual([])
    expect(marked(rung(), { ...joint(0), kind: 'mortise' })).toEqual([])
    expect(marked(rung({ then: 'square', side: 40 }), joint(0))).toEqual([])
  })

  it('lets the station have the last word, and changes nothing else', () => {
    expect(marked(rung({ tenon: false }), joint(0))).toEqual([])
    const before = rung()
    const after = withTenons(before, [joint(0)], tolerance)
    expect(before).toEqual(rung())
    expect(after.stations.slice(1)).toEqual(before.stations.slice(1))
  })
})

describe('tenonEndOf', () => {
  it('says which end a tenon is at and how far in it goes', () => {
    const spans = spansOf(rung())
    expect(tenonEndOf(spans, joint(0))).toEqual({ end: 'foot', reach: 25 })
    expect(tenonEndOf(spans, joint(12.5))).toEqual({ end: 'foot', reach: 25 })
    expect(tenonEndOf(spans, joint(275))).toEqual({ end: 'top', reach: 25 })
    expect(tenonEndOf(spans, joint(150))).toBeUndefined()
  })
})
