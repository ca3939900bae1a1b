import { describe, expect, it } from 'vitest'
import type { Operation } from '../../../shared/route/operation.ts'
import { changesText, latheChanges } from '../../../web/elements/lathe-changes.ts'

const at = (change: Partial<Operation>): Operation =>
  ({
    key: 'x',
    kind: 'bead',
    name: 'x',
    stage: 'turning',
    pass: 1,
    where: null,
    tool: '',
    ...change,
  }) as Operation

const order: Operation[] = [
  at({ tool: 'crosscut saw', stage: 'milling', pass: 0 }),
  at({ kind: 'mount', tool: 'spur centre', stage: 'set-up', rpm: 350, rpmCeiling: 2100, restPosition: 1 }),
  at({ tool: '1 in skew', rpm: 1200, rpmCeiling: 2100, restPosition: 1 }),
  at({ tool: 'pencil', stage: 'handwork' }),
  at({ tool: '1 in skew', rpm: 1200, rpmCeiling: 2100, restPosition: 1 }),
  at({ tool: '3/8 in spindle gouge', rpm: 1700, rpmCeiling: 2100, restPosition: 2, caliper: 36.5125 }),
  at({ kind: 'sand', tool: 'abrasive paper', stage: 'sanding', rpm: 800, rpmCeiling: 2100 }),
  at({ tool: '1 in skew', rpm: 1200, rpmCeiling: 2100, restPosition: 2, caliper: 36.5125 }),
  at({ kind: 'part', tool: '1 in skew', rpmCeiling: 300 }),
]

const said = (index: number) => changesText(latheChanges(order, index, 'fraction'))

describe('latheChanges', () => {
  it('says all that is set for the first mounting, from nothing', () => {
    expect(said(1)).toBe('spur centre, 350 rpm, rest to 1')
  })

  it('says from what to what, and only what changes', () => {
    expect(said(2)).toBe('spur centre → 1 in skew, 350 → 1200 rpm')
    expect(said(5)).toBe('1 in skew → 3/8 in spindle gouge, 1200 → 1700 rpm, rest to 2, caliper 1-7/16 in')
  })

  it('says nothing away from the lathe, and takes the lathe up as it was left', () => {
    expect(said(0)).toBe('')
    expect(said(3)).toBe('')
    expect(said(4)).toBe('')
  })

  it('takes the rest away to sand, and puts it back where it stood before', () => {
    expect(latheChanges(order, 6, 'fraction').rest).toBe('rest away')
    expect(latheChanges(order, 7, 'fraction').rest).toBe('rest to 2')
  })

  it('follows a cut over the positions of the rest, and starts the next where it ended', () => {
    const over = [
      ...order.slice(0, 3),
      at({ tool: 'gouge', rpm: 1200, rpmCeiling: 2100, restPosition: 1, restThrough: 3 }),
      at({ tool: 'gouge', rpm: 1200, rpmCeiling: 2100, restPosition: 3 }),
    ]
    expect(latheChanges(over, 3, 'fraction').rest).toBe('rest from 1 to 3')
    expect(latheChanges(over, 4, 'fraction').rest).toBeUndefined()
  })

  it('leaves a caliper that is set already', () => {
    expect(latheChanges(order, 7, 'fraction').caliper).toBeUndefined()
  })

  it('names no speed where none is safe', () => {
    expect(latheChanges(order, 8, 'fraction').speed).toBeUndefined()
  })

  it('leads through the whole order: what each left is what the next starts from', () => {
    let speed = ''
    order.forEach((_, i) => {
      const { speed: change } = latheChanges(order, i, 'mm')
      const from = change?.includes('→') ? change.split(' → ')[0] : undefined
      if (from) expect(from).toBe(speed)
      if (change) speed = change.replace(' rpm', '').split(' → ').at(-1)!
    })
    expect(speed).toBe('1200')
  })
})
