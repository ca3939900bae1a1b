import { describe, expect, it } from 'vitest'
import { actOfKey } from '../../../web/elements/drawing-act.ts'

const pressed = (key: string, more = {}) => ({
  key,
  altKey: false,
  shiftKey: false,
  repeat: false,
  ...more,
})

describe('a key in the drawing', () => {
  it('moves the station along the part, changes its diameter, or with Alt the size of its span', () => {
    const nudge = { act: 'nudge', steps: -1, merge: false }
    expect(actOfKey(pressed('ArrowLeft'), 2, 5)).toEqual({ ...nudge, field: 'at' })
    expect(actOfKey(pressed('ArrowDown'), 2, 5)).toEqual({ ...nudge, field: 'diameter' })
    expect(actOfKey(pressed('ArrowDown', { altKey: true }), 2, 5)).toEqual({ ...nudge, field: 'size' })
  })

  it('makes eight steps with Shift; held down it is one change', () => {
    expect(actOfKey(pressed('ArrowRight', { shiftKey: true, repeat: true }), 2, 5)).toEqual({
      act: 'nudge',
      field: 'at',
      steps: 8,
      merge: true,
    })
  })

  it('goes to other stations, no further than the ends, and with Shift takes them along', () => {
    expect(actOfKey(pressed('PageUp'), 5, 5)).toEqual({ act: 'pick', index: 5, extend: false })
    expect(actOfKey(pressed('PageDown'), 0, 5)).toEqual({ act: 'pick', index: 0, extend: false })
    expect(actOfKey(pressed('End', { shiftKey: true }), 1, 5)).toEqual({
      act: 'pick',
      index: 5,
      extend: true,
    })
  })

  it('does nothing with other keys', () => {
    expect(actOfKey(pressed('a'), 2, 5)).toBeUndefined()
  })
})
