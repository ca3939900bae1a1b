import { describe, expect, it } from 'vitest'
import {
  newSheet,
  withDiameter,
  withFirstOnTop,
  withOriginal,
  withOriginalChange,
  withPlace,
  withReading,
} from '../../web/sheet-file.ts'
import { belongsOnTop, onwardPlace, openPlace, placeBehind, unreadPlace } from '../../web/sheet-way.ts'

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

  it('finds the first place without a diameter, though its position is laid out already', () => {
    const laid = [0, 1, 2].reduce(
      (sheet, i) => withReading(sheet, 0, i, { at: String(i) }),
      withDiameter(newSheet('in'), 0, 0, 0, '1'),
    )
    expect(openPlace(laid, 0)).toBe(1)
    const read = [1, 2].reduce((sheet, i) => withDiameter(sheet, 0, i, 0, '1'), laid)
    expect(openPlace(read, 0)).toBe(3)
  })

  it('goes on at the first station that was not read', () => {
    expect(unreadPlace(three, 0)).toBe(1)
    expect(unreadPlace(down, 0)).toBe(2)
    expect(unreadPlace(withOriginal(three), 1)).toBe(0)
    const whole = withDiameter(withDiameter(three, 0, 1, 0, '2'), 0, 2, 0, '2')
    expect(unreadPlace(whole, 0)).toBe(3)
  })
})

describe('a place above what positions are counted from', () => {
  // Read downward from the shoulder: shoulder 0, bead 4, foot 15 1/2.
  const bare = withOriginalChange(newSheet('in'), 0, { datum: { name: 'shoulder', towards: 'foot' } })
  const read = (ats: (string | undefined)[]) =>
    ats.reduce((sheet, at, i) => (at === undefined ? sheet : withReading(sheet, 0, i, { at })), bare)
  const leg = read(['-1', '15 1/2', '4', '0'])

  it('belongs on top where the tape runs down', () => {
    expect(belongsOnTop(leg, 0, 0)).toBe(true)
    expect(withFirstOnTop(leg).originals[0]!.readings.map(({ at }) => at)).toEqual(['15 1/2', '4', '0', '-1'])
    expect(belongsOnTop(withOriginalChange(leg, 0, { datum: undefined }), 0, 0)).toBe(false)
    expect(belongsOnTop({ ...leg, way: 'span' }, 0, 0)).toBe(false)
  })

  it('stays where it is otherwise', () => {
    expect(belongsOnTop(read(['16', '15 1/2', '4', '0']), 0, 0)).toBe(false)
    expect(belongsOnTop(read(['3', '15 1/2', '4', '0']), 0, 0)).toBe(false)
    expect(belongsOnTop(read([undefined, '15 1/2', '4', '0']), 0, 0)).toBe(false)
    expect(belongsOnTop(leg, 0, 1)).toBe(false)
    expect(belongsOnTop(withDiameter(leg, 0, 0, 0, '1'), 0, 0)).toBe(false)
    expect(belongsOnTop(withReading(bare, 0, 0, { at: '-1' }), 0, 0)).toBe(false)
  })
})
