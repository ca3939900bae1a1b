import { describe, expect, it } from 'vitest'
import type { RackBoard } from '../../shared/contract/board.ts'
import { readCutOrder } from '../../shared/cutting/order.ts'
import { orderFromHand } from '../../web/order-from-hand.ts'

const order = readCutOrder({
  units: 'mm',
  kerf: 3,
  endTrim: 10,
  edgeTrim: 3,
  blanks: [{ key: 'blank', side: 50, length: 400, count: 4 }],
  boards: [{ key: 'yard', width: 200, length: 2400, thickness: 50, count: null }],
})
const board = (key: string, more: Partial<RackBoard> = {}): RackBoard => ({
  key,
  width: 150,
  length: 2000,
  thickness: 52,
  count: 1,
  ...more,
})

describe('orderFromHand', () => {
  it('takes the boards of its wood and those of none, with their defects, and keeps the rest of the order', () => {
    const defects = [{ from: 100, to: 130 }]
    const hand = [
      board('a', { species: 'ash-white', defects }),
      board('b', { species: 'oak-white' }),
      board('c'),
    ]
    const made = orderFromHand(order, 'ash-white', hand)
    expect(made.boards.map(({ key }) => key)).toEqual(['a', 'c'])
    expect(made.boards[0]!.defects).toEqual(defects)
    expect({ ...made, boards: [] }).toEqual({ ...order, boards: [] })
  })

  it('counts prices only where every board has one, as an order must', () => {
    const some = orderFromHand(order, 'ash-white', [board('a', { price: 40 }), board('b')])
    const all = orderFromHand(order, 'ash-white', [
      board('a', { price: 40 }),
      board('b', { pricePerBoardFoot: 9 }),
    ])
    expect(some.boards.some((b) => b.price !== undefined)).toBe(false)
    expect(all.boards.map((b) => b.price ?? b.pricePerBoardFoot)).toEqual([40, 9])
    for (const made of [some, all]) expect(() => readCutOrder(JSON.parse(JSON.stringify(made)))).not.toThrow()
  })
})
