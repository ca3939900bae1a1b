import { describe, expect, it } from 'vitest'
import type { PlacedJoint } from '../../../shared/profile/joint-reach.ts'
import { jointSections } from '../../../shared/profile/joint-sections.ts'
import { profileOf, station } from './build.ts'

const post = profileOf(station(0, 40), station(300, 60), station(600, 40))
const mortise = (at: number, length: number, face: 'A' | 'B' = 'A'): PlacedJoint => ({
  kind: 'mortise',
  at,
  face,
  size: [10, length],
  depth: 20,
})
const places = (...joints: PlacedJoint[]) =>
  jointSections(post, joints).map(({ at, joints }) => [at, joints.map((joint) => joint.at)])

describe('where a part is cut across to show its joints', () => {
  it('is once for joints that some place has in common, in the middle of that', () => {
    // 75 … 125 and 100 … 150 have 100 … 125 in common; 180 … 220 stands by itself.
    expect(places(mortise(200, 40), mortise(100, 50), mortise(125, 50, 'B'))).toEqual([
      [112.5, [100, 125]],
      [200, [200]],
    ])
  })

  it('has a long joint in every section that it reaches', () => {
    expect(places(mortise(200, 200), mortise(120, 20, 'B'), mortise(280, 20, 'B'))).toEqual([
      [120, [200, 120]],
      [280, [200, 280]],
    ])
  })

  it('leaves out tenons, and has none where nothing is cut', () => {
    expect(places({ kind: 'tenon', at: 0, size: [15], depth: 30 })).toEqual([])
  })

  it('is at the thickest place of a glued pair without joints', () => {
    expect(jointSections({ ...post, split: true }, [])).toEqual([{ at: 300, joints: [] }])
  })
})
