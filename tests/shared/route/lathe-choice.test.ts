import { describe, expect, it } from 'vitest'
import { latheFit } from '../../../shared/blank/lathe-fit.ts'
import type { RouteInput } from '../../../shared/route/input.ts'
import { latheFor } from '../../../shared/route/lathe-choice.ts'
import type { LatheSpeeds } from '../../../shared/turning/lathe.ts'
import { inches } from '../../../shared/units/length.ts'
import { inchProfile, leg, routeInput } from './route-inputs.ts'

const lathe = (
  name: string,
  speeds: LatheSpeeds,
  more: Partial<{ centres: number; swing: number; rest: number }> = {},
) => ({
  name,
  betweenCentres: inches(more.centres ?? 48),
  swing: inches(more.swing ?? 14),
  swingOverRest: inches((more.swing ?? 14) - 3),
  speeds,
  restLength: inches(more.rest ?? 12),
})
const dial = { least: 60, most: 3200 }
const chosen = (lathes: ReturnType<typeof lathe>[], input: RouteInput = routeInput(leg())) =>
  latheFor(
    input,
    lathes,
    lathes.map((one) => latheFit(input.blank, one, 0, 'in')),
  )

describe('latheFor', () => {
  it('takes none that is too short or too low, and says so', () => {
    const choice = chosen([
      lathe('short', dial, { centres: 12 }),
      lathe('low', dial, { swing: 3 }),
      lathe('good', dial),
    ])!
    expect(choice.name).toBe('good')
    expect(choice.others.map(({ name }) => name)).toEqual(['short', 'low'])
    expect(choice.others[0]!.why).toContain('between centres')
    expect(choice.others[1]!.why).toContain('does not clear the bed')
  })

  it('chooses nothing where none takes the blank', () => {
    expect(chosen([lathe('short', dial, { centres: 12 })])).toBeUndefined()
  })

  it('puts a lathe slow enough for the diagonal before one that is not', () => {
    // A 6 in square: 8.49 in across the corners, so never above 6000/8.49 = 707 rpm until it is round.
    const newel = inchProfile([
      [0, 5, 'straight'],
      [20, 5, 'square', { side: inches(6) }],
      [30, undefined],
    ])
    const choice = chosen(
      [lathe('fast', { steps: [850, 1200, 2400] }), lathe('slow', { steps: [400, 600, 1200] })],
      routeInput(newel),
    )!
    expect(choice.name).toBe('slow')
    expect(choice.others[0]!.why).toMatch(/^No speed of it is under the ceiling for roughing/)
    expect(choice.why.join(' ')).toContain('under a ceiling of 707 rpm')
  })

  it('takes the one whose steps lie near what is wanted', () => {
    // Wanted on a 2-1/4 in square: 2000/3.18 = 629 rpm to rough, shaping up to its ceiling of 1885 rpm.
    const choice = chosen([
      lathe('coarse', { steps: [200, 3000] }),
      lathe('fine', { steps: [200, 600, 1800, 3000] }),
    ])!
    expect(choice.name).toBe('fine')
    expect(choice.others[0]!.why).toMatch(
      /^Its speeds are farther from what is wanted: roughing 200 rpm of 620 rpm/,
    )
  })

  it('takes the one whose rest needs fewer positions, the speeds being alike', () => {
    const choice = chosen([lathe('small', dial, { rest: 4 }), lathe('large', dial, { rest: 12 })])!
    expect(choice).toMatchObject({ name: 'large', rest: inches(12), positions: 1 })
    expect(choice.others[0]!.why).toBe('Its 4 in rest needs 3 positions against 1.')
  })

  it('keeps to the order of the list where all is equal', () => {
    const choice = chosen([lathe('first', dial), lathe('second', dial)])!
    expect(choice.name).toBe('first')
    expect(choice.others).toEqual([
      { name: 'second', why: 'It does as well; the one first on the shop’s list is taken.' },
    ])
  })
})
