import { describe, expect, it } from 'vitest'
import { routeFor } from '../../../shared/route/route.ts'
import { inches } from '../../../shared/units/length.ts'
import { leg, routeInput } from './route-inputs.ts'

/** A leg with a square of 2-1/4 in that stands so much over it on the lathe, as wood does that has still to dry. */
function wetLeg(over: number, moisture: number, rest: 'none' | 'advised' = 'none') {
  const dry = routeInput(leg(), { moisture, whip: { at: inches(3), criticalRpm: 3000, rest } })
  const side = inches(2.25) + over
  const shrinkage = { across: over, onLathe: over, from: moisture, to: 8, share: over / side }
  return routeFor({ ...dry, blank: { ...dry.blank, side, shrinkage } }).operations
}

const name = (list: ReturnType<typeof wetLeg>, key: string) => list.find((o) => o.key === key)?.name
const keys = (list: ReturnType<typeof wetLeg>) => list.map(({ key }) => key)

describe('a square on wood that has still to dry', () => {
  it('is planed so much over, roughed, dried, and only then brought to its side', () => {
    const list = wetLeg(inches(1 / 16), 20)
    expect(name(list, 'plane')).toMatch(/to 2-5\/16 in square/)
    expect(name(list, 'plane-dried')).toBe('Plane the dried square true to 2-1/4 in')
    const order = keys(list).filter((key) => ['plane', 'dry', 'plane-dried', 'remount'].includes(key))
    expect(order).toEqual(['plane', 'dry', 'plane-dried', 'remount'])
    expect(list.find(({ key }) => key === 'plane-dried')!.pass).toBe(1)
    expect(list.find(({ key }) => key === 'remount')!.after).toContain('plane-dried')
  })

  it('is never sawn down as if it were a smaller one', () => {
    expect(keys(wetLeg(inches(1 / 16), 20)).filter((key) => key.startsWith('plane-square'))).toEqual([])
    expect(keys(wetLeg(inches(1 / 64), 10)).filter((key) => key.startsWith('plane-square'))).toEqual([])
  })

  it('takes away what stands over on four faces', () => {
    const { work } = wetLeg(inches(1 / 16), 20).find(({ key }) => key === 'plane-dried')!
    // 4-1/2 in of square: (2-5/16)² − (2-1/4)² of section
    expect(work.removed).toBeCloseTo((inches(2.3125) ** 2 - inches(2.25) ** 2) * inches(4.5), 6)
  })

  it('is planed to its side at once where slender parts are dried as squares first', () => {
    const list = wetLeg(inches(1 / 16), 20, 'advised')
    expect(name(list, 'plane')).toMatch(/to 2-1\/4 in square/)
    expect(keys(list)).not.toContain('plane-dried')
  })

  it('is left as it is where the wood is dry enough to finish', () => {
    expect(keys(wetLeg(inches(1 / 64), 10))).not.toContain('plane-dried')
  })
})
