import { describe, expect, it } from 'vitest'
import { readCutOrder } from '../../../shared/cutting/order.ts'
import { type BlankCutting, cutOrderFor } from '../../../shared/cutting/order-for-blank.ts'
import { board, inch } from './orders.ts'

const cutting = (over: Partial<BlankCutting> = {}): BlankCutting => ({
  units: 'in',
  blank: {
    sawn: 2 * inch,
    length: 20 * inch,
    layers: 1,
    layerThickness: 2 * inch,
    thickness: 2 * inch,
    count: 9,
  },
  yardBoards: [
    { width: 6 * inch, length: 96 * inch },
    { width: 7.5 * inch, length: 120 * inch },
  ],
  kerf: inch / 8,
  endTrim: inch,
  edgeTrim: 0,
  minOffcut: 12 * inch,
  priceBy: 'exact',
  currency: 'USD',
  ...over,
}) // prettier-ignore

describe('cutOrderFor', () => {
  it('asks for as many blanks as are cut, as wide as they are sawn', () => {
    expect(cutOrderFor(cutting()).blanks).toEqual([
      { key: 'blank', side: 2 * inch, length: 20 * inch, count: 9, thickness: 2 * inch },
    ])
  })

  it('asks for every layer of a glue-up', () => {
    const blank = {
      ...cutting().blank,
      sawn: 3 * inch,
      layers: 3,
      layerThickness: 1.0625 * inch,
      thickness: 1.25 * inch,
    }
    const order = cutOrderFor(cutting({ blank }))
    expect(order.blanks[0]).toMatchObject({ count: 27, side: 3 * inch, thickness: 1.0625 * inch })
    expect(order.boards[0]!.thickness).toBe(1.25 * inch)
  })

  it('takes the boards at hand, else what a yard commonly brings, as many as needed', () => {
    const own = [board('mine', 6, 80)]
    expect(cutOrderFor(cutting({ boards: own })).boards).toBe(own)
    expect(cutOrderFor(cutting({ boards: [], pricePerBoardFoot: 7.5 })).boards).toEqual([
      {
        key: '6 × 96 in',
        width: 6 * inch,
        length: 96 * inch,
        thickness: 2 * inch,
        count: null,
        pricePerBoardFoot: 7.5,
      },
      {
        key: '7.5 × 120 in',
        width: 7.5 * inch,
        length: 120 * inch,
        thickness: 2 * inch,
        count: null,
        pricePerBoardFoot: 7.5,
      },
    ])
  })

  it('lists a size once however often the shop has it', () => {
    const twice = [...cutting().yardBoards, ...cutting().yardBoards]
    expect(cutOrderFor(cutting({ yardBoards: twice })).boards).toHaveLength(2)
  })

  it('makes an order that reads back as it is', () => {
    const order = cutOrderFor(cutting({ pricePerBoardFoot: 7.5 }))
    expect(readCutOrder(JSON.parse(JSON.stringify(order)))).toEqual(order)
  })
})
