import { expect, it } from 'vitest'
import {
  countText,
  lookMark,
  lookText,
  massText,
  minutesText,
  rangeText,
  sizeText,
  thicknessText,
  woodText,
} from '../../../server/prints/figures.ts'
import { balusterPlan, knobPlan } from './plans.ts'

it('minutes are said as a turner says them', () => {
  expect([0.64, 9.94, 42.4, 99.4, 125.4, 600].map(minutesText)).toEqual([
    '0.6 min',
    '9.9 min',
    '42 min',
    '99 min',
    '2 h 05 min',
    '10 h 00 min',
  ])
})

it('sizes and ranges carry their unit once', () => {
  expect(sizeText([50.8, 774.7], 'fraction')).toBe('2 × 30-1/2 in')
  expect(rangeText([10, 25.04], 'mm')).toBe('10.0 – 25.0 mm')
})

it('masses, counts and woods are written out', () => {
  expect([massText(712.4), massText(1080)]).toEqual(['712 g', '1.08 kg'])
  expect([countText(1, 'piece'), countText(3, 'half', 'halves')]).toEqual(['1 piece', '3 halves'])
  expect([woodText('maple-sugar'), woodText('maple-sugar', 'Maple, sugar')]).toEqual([
    'Maple sugar',
    'Maple, sugar',
  ])
})

it('the thickest place is a square or a diameter', () => {
  expect(thicknessText(balusterPlan().part, 'fraction')).toBe('1-3/4 in square')
  expect(thicknessText(knobPlan().part, 'mm')).toBe('⌀ 33.0 mm')
})

it('a joint looks from its face, from A where none is said, or at its angle', () => {
  expect([{ face: 'C' as const }, {}, { angle: -30 }].map(lookText)).toEqual([
    'C',
    'A',
    '30° from face A towards D',
  ])
  expect([{ face: 'C' as const }, {}, { angle: -30 }, { angle: 0 }].map(lookMark)).toEqual([
    'C',
    'A',
    '30° to D',
    '0°',
  ])
})
