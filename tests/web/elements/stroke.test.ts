import { describe, expect, it } from 'vitest'
import { Stroke } from '../../../web/elements/stroke.ts'

const turnsOf = (to: [number, number], pointerType = 'touch'): number[] => {
  const turns: number[] = []
  const stroke = new Stroke((by) => turns.push(by))
  stroke.pressed({ clientX: 200, clientY: 300 } as PointerEvent)
  stroke.lifted({ clientX: to[0], clientY: to[1], pointerType } as PointerEvent)
  stroke.lifted({ clientX: 0, clientY: 0, pointerType } as PointerEvent)
  return turns
}

describe('Stroke', () => {
  it('turns on to the left and back to the right, once a stroke', () => {
    expect(turnsOf([100, 310])).toEqual([1])
    expect(turnsOf([300, 290])).toEqual([-1])
  })

  it('takes a short, a slanting or a mouse’s way for no stroke', () => {
    expect(turnsOf([160, 300])).toEqual([])
    expect(turnsOf([100, 380])).toEqual([])
    expect(turnsOf([100, 300], 'mouse')).toEqual([])
  })
})
