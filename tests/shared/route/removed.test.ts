import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { solidOf } from '../../../shared/profile/solid.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { inchProfile, routeInput } from './route-inputs.ts'

/** Wood that all operations take, and what the blank has more than the part. */
function taken(
  profile: Profile,
  more: Partial<RouteInput> = {},
): { removed: number; over: number; input: RouteInput } {
  const input = routeInput(profile, more)
  const { operations } = routeFor(input)
  return {
    removed: operations.reduce((sum, operation) => sum + operation.work.removed, 0),
    over: input.blank.side ** 2 * input.blank.length - solidOf(profile).volume,
    input,
  }
}

const side = { side: inches(2) }
const ring = { rise: inches(1 / 8) }

describe('the wood removed', () => {
  it('is all that the blank has more than the part, where nothing is sawn off at the ends', () => {
    const plain = inchProfile([
      [0, undefined, 'square', side],
      [3, 1, 'bead', ring],
      [4, 1, 'cove', { depth: 3 }],
      [5, 1.5],
      [5, 1.25],
      [9, 1.75, 'square', side],
      [12, undefined],
    ])
    const { removed, over } = taken(plain)
    expect(Math.abs(removed / over - 1)).toBeLessThan(1e-4)
  })

  it('counts rounded shoulders, whichever side they are on', () => {
    const rounded = inchProfile([
      [0, undefined, 'square', { ...side, shoulder: 'rounded' }],
      [3, 1, 'curve'],
      [6, 1.5, 'curve'],
      [9, 1, 'square', { ...side, shoulder: ['rounded', 'square'] }],
      [12, undefined],
    ])
    const { removed, over } = taken(rounded)
    expect(Math.abs(removed / over - 1)).toBeLessThan(1e-4)
  })

  it('counts a second square that is smaller, brought down by hand', () => {
    const two = inchProfile([
      [0, undefined, 'square', { side: inches(1.5) }],
      [3, 1],
      [9, 1.5, 'square', side],
      [12, undefined],
    ])
    const { removed, over } = taken(two)
    expect(Math.abs(removed / over - 1)).toBeLessThan(1e-4)
  })

  it('is no less and no more whether wood is turned wet or dry, sized often or seldom', () => {
    const profile = inchProfile([
      [0, undefined, 'square', side],
      [3, 1],
      [9, 1.5, 'square', side],
      [12, undefined],
    ])
    const checks = [4, 5, 6, 7, 8].map((at, i) => ({
      key: `k${i}`,
      at: inches(at),
      kind: 'diameter' as const,
      target: inches(1 + (at - 3) / 12),
    }))
    // What shrinks away is cut by no tool, so the wet wood here is taken to keep its size.
    const wet = { moisture: 20, dries: { tangential: 0, radial: 0 } }
    for (const more of [{}, wet, { checks }]) {
      const { removed, over } = taken(profile, more)
      expect(Math.abs(removed / over - 1)).toBeLessThan(1e-4)
    }
  })

  it('leaves out no more than the ends that are sawn off on their nubs', () => {
    const profile = inchProfile([
      [0, 1.5, 'ovolo'],
      [3, 1],
      [9, 1.5],
    ])
    const { removed, over, input } = taken(profile)
    const { foot, top } = input.blank.lengthParts
    expect(removed).toBeLessThan(over)
    // At most a cylinder of the roughed diameter, 1-37/64 in, as long as the waste of both ends.
    expect(over - removed).toBeLessThan((Math.PI / 4) * inches(1.5 + 5 / 64) ** 2 * (foot + top))
  })

  it('is taken from big squares at the saw before the lathe', () => {
    const profile = inchProfile([
      [0, 5],
      [6, 5],
    ])
    const { operations } = routeFor(routeInput(profile))
    const by = (kind: string) => operations.find((operation) => operation.kind === kind)!.work.removed
    const { blank } = routeInput(profile)
    // A square sawn to a regular octagon loses 1 − 2(√2 − 1) of itself: 17.16 %.
    expect(by('corners') / (blank.side ** 2 * blank.length)).toBeCloseTo(0.1716, 4)
    expect(by('rough')).toBeLessThan(by('corners'))
  })
})
