import { describe, expect, it } from 'vitest'
import { contextOf } from '../../../shared/route/context.ts'
import { handCaution, makesHands } from '../../../shared/route/hands.ts'
import type { RouteInput, RouteJoint } from '../../../shared/route/input.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { inchProfile, leg, routeInput } from './route-inputs.ts'

const mortise = (more: Partial<RouteJoint> = {}): RouteJoint => ({
  kind: 'mortise',
  at: inches(14),
  face: 'A',
  size: [inches(3 / 8), inches(2)],
  depth: inches(3 / 4),
  stage: 'square',
  ...more,
})

const pair = [mortise(), mortise({ face: 'B', at: inches(13.5) })]
const input = (more: Partial<RouteInput>) => routeInput(leg(), { joints: pair, mirrored: true, ...more })
const operation = (more: Partial<RouteInput>, kind: string) =>
  routeFor(input(more)).operations.filter((o) => o.kind === kind)

describe('the hands of a mirrored pair', () => {
  it('are told at the joints that the mirror moves', () => {
    expect(handCaution(contextOf(input({})), pair)).toBe(
      'Right hands are marked out in mirror image, face B of a left hand is face D of a right hand: mark L or R on the blank before anything is cut.',
    )
  })

  it('are not told by tenons, which look along the axis', () => {
    const tenon = mortise({ kind: 'tenon', face: 'B', at: 0, size: [15], depth: 20, stage: 'turned' })
    expect(handCaution(contextOf(input({})), [tenon])).toBeUndefined()
  })

  it('are told where the mortises are cut in the square', () => {
    const [mortises] = operation({}, 'mortise')
    expect(mortises!.caution).toMatch(/Right hands are marked out in mirror image/)
    expect(operation({ mirrored: false }, 'mortise')[0]!.caution ?? '').not.toMatch(/hand/)
  })

  it('are told by their angles where joints are cut in the round', () => {
    const hole = (angle: number, at: number): RouteJoint => ({
      kind: 'hole',
      at: inches(at),
      angle,
      size: [10],
      depth: 14,
      stage: 'turned',
    })
    const post = inchProfile([
      [0, 2],
      [12, 2],
    ])
    const { operations } = routeFor(routeInput(post, { joints: [hole(0, 3), hole(40, 6)], mirrored: true }))
    const round = operations.find((o) => o.kind === 'joint-round')!
    expect(round.caution).toMatch(
      /40° from face A towards B of a left hand is 40° from face A towards D of a right hand/,
    )
    expect(round.caution).not.toMatch(/\b0° from face A of a left hand is 0°/)
  })

  it('are written on the blank with its number', () => {
    expect(operation({}, 'label')[0]!.name).toMatch(/its hand, L or R/)
    expect(operation({ mirrored: false }, 'label')[0]!.name).not.toMatch(/hand/)
  })

  it('are not spoken of where both come out alike', () => {
    const alike = [mortise(), mortise({ face: 'B' })]
    expect(makesHands(input({ joints: alike }))).toBe(false)
    expect(operation({ joints: alike }, 'mortise')[0]!.caution ?? '').not.toMatch(/Right hands/)
    expect(operation({ joints: alike }, 'label')[0]!.name).not.toMatch(/hand/)
  })
})
