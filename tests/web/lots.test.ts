import { describe, expect, it } from 'vitest'
import type { Lot } from '../../shared/wood/lot.ts'
import { withoutLot, withoutWeighing, withWeighing } from '../../web/lots.ts'

const weighing = (mass: number) => ({ mass, volume: 1e6, moisture: 8 })
const lots: Lot[] = [
  { name: 'barn', species: 'ash-white', weighings: [weighing(600), weighing(610)] },
  { name: 'loft', species: 'cherry-black', weighings: [] },
]

describe('the lots of a shop', () => {
  it('take another weighing at the end of their own, and leave the others alone', () => {
    const after = withWeighing(lots, { name: 'barn', species: 'ash-white', weighing: weighing(620) })
    expect(after[0]!.weighings.map(({ mass }) => mass)).toEqual([600, 610, 620])
    expect(after[1]).toBe(lots[1])
    expect(lots[0]!.weighings).toHaveLength(2)
  })

  it('take a weighing once that is sent again', () => {
    const at = '2026-05-04T10:00:00.000Z'
    const entry = { name: 'barn', species: 'ash-white', weighing: { ...weighing(620), at } }
    const once = withWeighing(lots, entry)
    expect(once[0]!.weighings).toHaveLength(3)
    expect(withWeighing(once, entry)).toEqual(once)
    const later = { ...entry, weighing: { ...weighing(620), at: '2026-05-04T10:05:00.000Z' } }
    expect(withWeighing(once, later)[0]!.weighings).toHaveLength(4)
  })

  it('begin with the first weighing of a name not known', () => {
    const after = withWeighing(lots, { name: 'May', species: 'ash-white', weighing: weighing(500) })
    expect(after.at(-1)).toEqual({ name: 'May', species: 'ash-white', weighings: [weighing(500)] })
  })

  it('lose one weighing that is taken back and stay, even with none', () => {
    const once = withoutWeighing(lots, 'barn', 0)
    expect(once[0]!.weighings).toEqual([weighing(610)])
    expect(withoutWeighing(once, 'barn', 0)[0]).toEqual({ ...lots[0], weighings: [] })
  })

  it('are gone where they are deleted', () => {
    expect(withoutLot(lots, 'barn')).toEqual([lots[1]])
  })
})
