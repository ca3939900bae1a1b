import { describe, expect, it } from 'vitest'
import { newSheet, withDiameter, withOriginal, withOriginalChange, withPlace } from '../../web/sheet-file.ts'
import { onwardPlace, placeBehind, unreadPlace } from '../../web/sheet-way.ts'

const three = withDiameter(withPlace(newSheet('in'), 2, {}), 0, 0, 0, '1')
const down = withOriginalChange(three, 0, { datum: { name: 'seat', towards: 'foot' } })

describe('the way along a piece', () => {
  it('goes up from the foot, to a station beyond the last', () => {
    expect([0, 1, 2, 3].map((place) => onwardPlace(three, 0, place))).toEqual([1, 2, 3, 3])
    expect([3, 1, 0].map((place) => placeBehind(three, 0, place))).toEqual([2, 0, 0])
  })

  it('goes down where the tape does, to a station below the first', () => {
    expect([2, 1, 0, -1].map((place) => onwardPlace(down, 0, place))).toEqual([1, 0, -1, -1])
    expect([-1, 0, 2].map((place) => placeBehind(down, 0, place))).toEqual([0, 1, 2])
  })

  it('goes on at the first station that was not read', () => {
    expect(unreadPlace(three, 0)).toBe(1)
    expect(unreadPlace(down, 0)).toBe(2)
    expect(unreadPlace(withOriginal(three), 1)).toBe(0)
    const whole = withDiameter(withDiameter(three, 0, 1, 0, '2'), 0, 2, 0, '2')
    expect(unreadPlace(whole, 0)).toBe(3)
  })
})
