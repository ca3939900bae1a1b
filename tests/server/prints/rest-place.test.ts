import { describe, expect, it } from 'vitest'
import { restPlace } from '../../../server/prints/rest-place.ts'
import { balusterPlan } from './plans.ts'

const { part, blank } = balusterPlan()
const place = (rest: 'none' | 'advised', perBlank: number) =>
  restPlace({
    part: { ...part, whip: { ...part.whip!, rest, restAt: 300 } },
    blank: { ...blank, stock: { ...blank.stock, perBlank } },
  })

describe('where the steady rest goes', () => {
  it('is printed of a part that wants one', () => {
    expect(place('advised', 1)).toBe(300)
  })

  it('is not printed of a stout part, nor of a stick, which whips as a whole', () => {
    expect(place('none', 1)).toBeUndefined()
    expect(place('advised', 3)).toBeUndefined()
  })
})
