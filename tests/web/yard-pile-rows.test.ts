import { describe, expect, it } from 'vitest'
import { quickCut } from '../../shared/cutting/quick.ts'
import { choiceOf, orderOf, wantedOrder } from '../../web/yard-order.ts'
import { pileRows } from '../../web/yard-pile-rows.ts'
import { withBoard, withChange, type YardTally } from '../../web/yard-tally.ts'
import { emptyTally, legsOrder, needOf, newBoard } from './yard-bench.ts'

describe('the rows of the pile', () => {
  const needs = [
    needOf({ order: legsOrder({ blanks: [{ key: 'blank', side: 50, length: 700, count: 3 }] }) }),
  ]
  const rowsOf = (tally: YardTally) => {
    const order = orderOf(tally)
    const choice = order && choiceOf(tally, order, quickCut(order))
    return pileRows(tally, { choice, wanted: wantedOrder(needs), style: 'mm' })
  }
  // Three blanks of 700 mm, two kerfs of 3 and two ends of 10 are 2,126 mm: one strip of one board.
  const two = [150, 60].reduce((tally, width) => withBoard(tally, newBoard(width)), emptyTally({ needs }))

  it('say of each board, the top first, whether it is kept', () => {
    expect(rowsOf(two).map(({ number, fate }) => [number, fate])).toEqual([
      [2, 'keep'],
      [1, 'back'],
    ])
  })

  it('say nothing of that while blanks are missing, and put what went back last', () => {
    const thin = withBoard(emptyTally({ needs }), newBoard(150, { thickness: 40 }))
    const rows = rowsOf(withChange(withBoard(thin, newBoard(53)), 2, (old) => ({ ...old, back: true })))
    expect(rows.map(({ number, fate }) => [number, fate])).toEqual([
      [1, ''],
      [2, 'gone'],
    ])
    expect(rows[0]!.caution).toMatch(/^Too thin .* 50.0 mm thick/)
  })

  it('name a price that is wanting only where others have one', () => {
    expect(rowsOf(two).map(({ worth }) => worth)).not.toContainEqual(expect.stringContaining('price'))
    const priced = withBoard(two, newBoard(170, { price: 12 }))
    expect(rowsOf(priced).map(({ worth }) => worth)).toEqual([
      expect.stringMatching(/ bd ft · 12.00 EUR$/),
      expect.stringMatching(/no price yet$/),
      expect.stringMatching(/no price yet$/),
    ])
  })

  it('tell defects and crook', () => {
    const tally = withBoard(
      emptyTally({ needs }),
      newBoard(150, { crook: 6, defects: [{ from: 410, to: 450, kind: 'knot' }] }),
    )
    expect(rowsOf(tally)[0]!.defects).toEqual(['knot 410.0 mm to 450.0 mm', 'crook 6.0 mm over the length'])
  })
})
