import { expect, it } from 'vitest'
import { fineFigure, fineText } from '../../../../server/cli/text/fine.ts'

it('differences are told to a hundredth of a millimetre or a thousandth of an inch', () => {
  expect(fineText(0.254, 'mm')).toBe('0.25 mm')
  expect(fineText(-0.254, 'fraction')).toBe('-0.010 in')
  expect(fineText(25.4, 'decimal')).toBe('1.000 in')
})

it('nothing is told without a sign', () => {
  expect([fineFigure(-0.001, 'mm'), fineFigure(-0.001, 'fraction'), fineFigure(0, 'mm')]).toEqual([
    '0.00',
    '0.000',
    '0.00',
  ])
})
