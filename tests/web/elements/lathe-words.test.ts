import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import type { Operation } from '../../../shared/route/operation.ts'
import { latheCall, latheTool, latheWhere } from '../../../web/elements/lathe-words.ts'

const profile: Profile = {
  split: false,
  stations: [
    { at: 0, diameter: 20, then: 'bead', name: 'foot bead' },
    { at: 10, diameter: 20, then: 'cove', name: 'neck' },
    { at: 30, diameter: 20, then: 'straight' },
    { at: 40, diameter: 20 },
  ] as Profile['stations'],
}

const operation = (change: Partial<Operation>): Operation =>
  ({ kind: 'bead', name: 'Cut it', where: null, tool: '', ...change }) as Operation

const call = (change: Partial<Operation>) => latheCall(operation(change), profile, 'fraction')

describe('latheCall', () => {
  it('names a feature by its own name and what it is, without its place', () => {
    expect(call({ name: 'Cut the foot bead', spans: [0] })).toBe('Cut the foot bead')
    expect(call({ kind: 'cove', name: 'Cut the neck (cove)', spans: [1] })).toBe('Cut the neck cove')
    expect(call({ kind: 'straight', name: 'Cut the straight at 1-3/4 in', spans: [2] })).toBe(
      'Cut the straight',
    )
    expect(call({ name: 'Cut the 5 beads from 2 in to 4-1/2 in', spans: [0, 1, 2] })).toBe('Cut the 5 beads')
  })

  it('says which place is sized, by name or by where it lies', () => {
    expect(call({ kind: 'size', caliperStation: 's1', where: [10, 10] })).toBe('Size the neck')
    expect(call({ kind: 'size', caliperStation: 's2', where: [31.75, 31.75] })).toBe('Size at 1-1/4 in')
  })

  it('shortens a sentence that it has no words for to its first part', () => {
    expect(call({ kind: 'end', name: 'Square the foot and turn its waste to a 3/8 in nub' })).toBe(
      'Square the foot',
    )
    expect(call({ kind: 'finish-on-lathe', name: 'Oil it on the lathe' })).toBe('Oil it')
  })

  it('is short enough for three lines of a phone', () => {
    for (const kind of ['mount', 'rough', 'journal', 'blend', 'check-set', 'strike-shoulders'] as const)
      expect(call({ kind, name: 'x'.repeat(80) }).length).toBeLessThanOrEqual(24)
  })
})

describe('latheTool', () => {
  it('keeps the size and the name it is asked for by', () => {
    expect(latheTool(operation({ tool: '1/8 in parting tool' }), [])).toBe('1/8 in parting')
    expect(latheTool(operation({ tool: '3/4 in roughing gouge' }), [])).toBe('3/4 in roughing')
    expect(latheTool(operation({ tool: '3/8 in spindle gouge' }), [])).toBe('3/8 in spindle gouge')
  })

  it('is the grits for sanding', () => {
    expect(latheTool(operation({ kind: 'sand', tool: 'abrasive paper' }), [120, 180])).toBe('120, 180')
    expect(latheTool(operation({ kind: 'sand', tool: 'abrasive paper' }), [])).toBe('abrasive paper')
  })
})

describe('latheWhere', () => {
  it('gives one place or a stretch, with its unit', () => {
    expect(latheWhere({ where: [469.9, 469.9] }, 'fraction')).toBe('at 18-1/2 in')
    expect(latheWhere({ where: [0, 355.6] }, 'fraction')).toBe('0 – 14 in')
    expect(latheWhere({ where: [0, 355.6] }, 'mm')).toBe('0.0 – 355.6 mm')
    expect(latheWhere({ where: null }, 'mm')).toBe('')
  })
})
