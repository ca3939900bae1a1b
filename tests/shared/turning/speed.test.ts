import { describe, expect, it } from 'vitest'
import { rimSpeed, type SpeedInput, speedFor } from '../../../shared/turning/speed.ts'
import { inches } from '../../../shared/units/length.ts'

const dial = { name: 'Dial lathe', speeds: { least: 50, most: 4000 } }
const belt = { name: 'Belt lathe', speeds: { steps: [400, 600, 850, 1200, 1700, 2400, 3000] } }

/** A 2-1/4 in square, seen across its corners, about to be roughed. */
const square: SpeedInput = {
  lathe: dial,
  diameter: inches(2.25) * Math.SQRT2,
  trueness: 'square',
  work: 'roughing',
  corners: true,
}
const round: SpeedInput = { lathe: dial, diameter: inches(2), trueness: 'round', work: 'shaping' }

describe('the ceiling', () => {
  it('is 6000 over the diagonal in inches while there are corners', () => {
    // 6000 / (2.25 · 1.41421) = 1885.6
    expect(speedFor(square).rpmCeiling).toBeCloseTo(1885.62, 1)
    expect(speedFor(square).ceilingBy).toContain('6000')
  })

  it('is 9000 over the diameter once it is round and sound', () => {
    expect(speedFor({ ...round, diameter: inches(3) }).rpmCeiling).toBeCloseTo(3000, 9)
  })

  it('stays at 6000 for anything glued up or not true, round or not', () => {
    for (const trueness of ['glued-up', 'untrue'] as const)
      expect(speedFor({ ...round, trueness }).rpmCeiling).toBeCloseTo(3000, 9)
  })

  it('is half the speed at which it whips, when that is least', () => {
    const slender = speedFor({ ...round, criticalRpm: 1800 })
    expect(slender.rpmCeiling).toBe(900)
    expect(slender.ceilingBy).toBe('half the 1800 rpm at which it whips')
  })

  it('is the limit of lathe, plate or chuck, when that is least', () => {
    expect(speedFor({ ...round, lathe: { ...dial, limitRpm: 1100 } }).rpmCeiling).toBe(1100)
    expect(speedFor({ ...round, accessoryRpm: 700 }).rpmCeiling).toBe(700)
    expect(speedFor({ ...round, diameter: inches(1), lathe: belt })).toMatchObject({
      rpmCeiling: 3000,
      ceilingBy: 'top speed of the Belt lathe',
    })
  })
})

describe('the speed', () => {
  it('is some 600 rpm for a 2-1/4 in square', () => {
    expect(speedFor(square).rpm).toBe(620)
    expect(speedFor({ ...square, lathe: belt }).rpm).toBe(600)
  })

  it('rises when it is round, and again for shaping', () => {
    expect(speedFor({ ...round, work: 'roughing' }).rpm).toBe(1500)
    expect(speedFor(round).rpm).toBe(3250)
  })

  it('falls again for sanding and once more for finishing', () => {
    const rpm = (work: SpeedInput['work']) => speedFor({ ...round, work }).rpm!
    expect(rpm('sanding')).toBeLessThan(rpm('shaping'))
    expect(rpm('finishing')).toBeLessThan(rpm('sanding'))
  })

  it('stays below shaping in sanding even where the ceiling holds both down', () => {
    const held = { ...round, criticalRpm: 2000 }
    expect(speedFor({ ...held, work: 'sanding' }).rpm).toBeLessThan(speedFor(held).rpm!)
  })

  it('is the lathe’s lowest for a finish, and on a dial as low as most belts go', () => {
    const small = { ...round, diameter: inches(1), work: 'finishing' } as const
    expect(speedFor({ ...small, lathe: belt })).toMatchObject({ rpm: 400 })
    expect(speedFor(small).rpm).toBe(400)
    // 2000 over 8 in: 250.
    expect(speedFor({ ...small, diameter: inches(8) }).rpm).toBe(250)
    const big = speedFor({ ...small, diameter: inches(8), lathe: belt })
    expect(big.rpm).toBe(400)
    expect(big.caution).toContain('250 rpm would be better')
  })

  it('starts every mounting at the lathe’s slowest', () => {
    expect(speedFor({ ...square, lathe: belt, work: 'start' }).rpm).toBe(400)
    expect(speedFor({ ...square, work: 'start' }).rpm).toBe(50)
  })

  it('is lower with an open mortise, and says why', () => {
    const open = speedFor({ ...square, openMortise: true })
    expect(open.rpm).toBeLessThan(speedFor(square).rpm!)
    expect(open.caution).toContain('mortise')
  })

  it('is the slowest there is, with a word, where that is fast for the work but under the ceiling', () => {
    const big = speedFor({ ...square, diameter: inches(8), lathe: belt })
    expect(big).toMatchObject({ rpm: 400, rpmCeiling: 750 })
    expect(big.caution).toContain('cut lightly')
  })

  it('does not exist where even the slowest is above the ceiling; then it says what would help', () => {
    const huge = speedFor({ ...square, diameter: inches(20), lathe: belt })
    expect(huge.rpm).toBeUndefined()
    expect(huge.rpmCeiling).toBe(300)
    expect(huge.caution).toMatch(/slowest of the Belt lathe, 400 rpm.*would help/)
    const whipping = speedFor({ ...round, lathe: belt, criticalRpm: 700 })
    expect(whipping.rpm).toBeUndefined()
    expect(whipping.caution).toContain('steady rest')
  })

  it('does not exist without a lathe, but its ceiling does', () => {
    const none = speedFor({ ...round, lathe: undefined })
    expect(none.rpm).toBeUndefined()
    expect(none.rpmCeiling).toBe(4500)
    expect(none.caution).toContain('no lathe')
  })
})

describe('rimSpeed', () => {
  it('is the way round in a second', () => {
    // 1 m across goes π m a turn.
    expect(rimSpeed(1000, 60)).toBeCloseTo(Math.PI, 12)
  })
})
