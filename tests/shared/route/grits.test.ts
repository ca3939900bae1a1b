import { expect, it } from 'vitest'
import { gritCaution, gritJumps } from '../../../shared/route/grits.ts'

it('a sequence that skips too much is named with the step that skips', () => {
  expect(gritJumps([120, 240, 320])).toEqual([[120, 240]])
  expect(gritCaution([120, 240])).toContain('From 120 to 240')
})

it('a gentle sequence, a single grit and none at all pass without a word', () => {
  for (const grits of [[120, 150, 180, 220], [180], []]) expect(gritCaution(grits)).toBeUndefined()
})
