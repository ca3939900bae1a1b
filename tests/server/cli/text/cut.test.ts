import { describe, expect, it } from 'vitest'
import { cutText } from '../../../../server/cli/text/cut.ts'
import { readCutOrder } from '../../../../shared/cutting/order.ts'
import { quickCut } from '../../../../shared/cutting/quick.ts'

const order = (more: Record<string, unknown>) =>
  readCutOrder({
    units: 'in',
    kerf: '1/8',
    endTrim: '1',
    edgeTrim: '1/8',
    blanks: [{ key: 'layer', side: '2 7/16', length: '17 3/4', count: 12 }],
    boards: [{ key: 'A', width: '6', length: '10 ft', thickness: '2 1/2', count: 1 }],
    ...more,
  })
const told = (more: Record<string, unknown>): string =>
  cutText(quickCut(order(more)), { style: 'fraction', boardsGiven: true })

describe('a cutting plan for a person', () => {
  it('tells like strips once, and neighbours of one kind together', () => {
    // Six times 17-3/4 in and five kerfs of 1/8 in from the trim of 1 in on: 1 + 106-1/2 + 5/8 = 108-1/8 in.
    expect(told({ process: 'rip-first' })).toContain(
      'strips 1–2, 2-7/16 in wide: 6 × layer 17-3/4 in, at 1…108-1/8 in\n',
    )
  })

  it('tells like sections together, with how many blanks each gives', () => {
    // Two strips of 2-7/16 in and a kerf take 5 of the 5-3/4 in between the edge trims.
    expect(told({ process: 'crosscut-first' })).toContain(
      'sections 1–6, 17-3/4 in long, at 1…108-1/8 in: 2 × layer 2-7/16 in wide\n',
    )
  })

  it('begins anew behind a defect', () => {
    const boards = [
      {
        key: 'A',
        width: '6',
        length: '10 ft',
        thickness: '2 1/2',
        count: 2,
        defects: [{ from: '40', to: '42' }],
      },
    ]
    const text = told({ process: 'rip-first', boards })
    // In front of the defect two blanks end at 1 + 35-1/2 + 1/8 in; behind it the first begins at 42 in.
    expect(text).toMatch(/2 × layer 17-3\/4 in, at 1…36-5\/8 in; 4 × layer\s+17-3\/4 in, at 42…/)
  })

  it('tells boards cut alike once', () => {
    const blanks = [{ key: 'layer', side: '2 7/16', length: '17 3/4', count: 24 }]
    const boards = [{ key: 'A', width: '6', length: '10 ft', thickness: '2 1/2', count: 2 }]
    expect(told({ process: 'rip-first', blanks, boards })).toMatch(/^ {2}2 boards A \(2-1\/2 × 6 × 120 in\)/m)
  })

  it('tells boards on hand from those that are bought', () => {
    // 2-1/2 × 6 × 120 in are 12-1/2 board feet; one board of each holds the 24 layers.
    const blanks = [{ key: 'layer', side: '2 7/16', length: '17 3/4', count: 24 }]
    const board = { width: '6', length: '10 ft', thickness: '2 1/2', count: 1 }
    const boards = [
      { ...board, key: 'A', onHand: true },
      { ...board, key: 'B' },
    ]
    expect(told({ blanks, boards }).replace(/\s+/g, ' ')).toContain(
      '2 boards, 12.50 board feet on hand, bought 12.50 board feet',
    )
  })

  it('keeps to 80 columns however keys are named', () => {
    const key = 'a long name for a layer of the '.repeat(2).trim()
    const text = told({ blanks: [{ key, side: '2 7/16', length: '17 3/4', count: 12 }] })
    for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
  })

  it('says that no boards were given, and what is wanting', () => {
    const text = cutText(quickCut(order({ boards: [] })), { style: 'fraction', boardsGiven: false })
    expect(text).toContain('No boards were given')
    expect(text).toContain('12 blanks layer still to be cut')
    expect(text).not.toMatch(/proven|Cost|these boards/)
  })
})
