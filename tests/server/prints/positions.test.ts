import { expect, it } from 'vitest'
import { positionsOf, thicknessesText } from '../../../server/prints/positions.ts'
import { balusterPlan } from './plans.ts'

const positions = positionsOf(balusterPlan().job.profile)
const at = (inches: number) => positions.find((position) => Math.abs(position.at - inches * 25.4) < 1e-6)!

it('positions run from foot to top, steps once', () => {
  expect(positions.map((position) => position.at / 25.4)).toEqual(
    [0, 5, 5.25, 5.5, 6.5, 12, 20, 20.5, 21, 22, 30].map((x) => expect.closeTo(x, 9)),
  )
})

it('a step shows what is towards the foot first', () => {
  expect(thicknessesText(at(5.5), 'fraction')).toBe('⌀ 1-1/2 in | ⌀ 1 in')
  expect(thicknessesText(at(21), 'decimal')).toBe('⌀ 0.875 in | ⌀ 1.375 in')
})

it('a square shows its side against the round beside it', () => {
  expect(thicknessesText(at(5), 'fraction')).toBe('□ 1-3/4 in | ⌀ 1-1/2 in')
  expect(thicknessesText(at(30), 'mm')).toBe('□ 44.5 mm')
})

it('crests and roots stand with what they measure', () => {
  // The crest is the bead’s rise of 1/8 in on each side of 1-1/2 in, the root as much below 7/8 in.
  expect([at(5.25).name, thicknessesText(at(5.25), 'fraction')]).toEqual(['crest', '⌀ 1-3/4 in'])
  expect([at(20.5).name, thicknessesText(at(20.5), 'fraction')]).toEqual(['root', '⌀ 5/8 in'])
})
