import { describe, expect, it } from 'vitest'
import type { Board } from '../../../shared/cutting/board.ts'
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

  it('takes what a yard commonly brings, as many as needed', () => {
    expect(cutOrderFor(cutting({ pricePerBoardFoot: 7.5 })).boards).toEqual([
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

  // 7 × 86 in: three strips of 2 in with two kerfs are 6-1/4 in, four blanks of 20 in and three kerfs 80-3/8 in.
  const own = (key: string, over: Partial<Board> = {}) => board(key, 7, 86, { onHand: true, ...over })

  it('takes boards on hand before the yard’s', () => {
    const order = cutOrderFor(cutting({ onHand: [own('mine', { width: 2 * inch })], pricePerBoardFoot: 7.5 }))
    expect(order.boards.map(({ key, onHand }) => [key, onHand])).toEqual([
      ['mine', true],
      ['6 × 96 in', undefined],
      ['7.5 × 120 in', undefined],
    ])
  })

  it('takes them alone where they are enough', () => {
    expect(cutOrderFor(cutting({ onHand: [own('a'), own('b')] })).boards.map(({ key }) => key)).toEqual([
      'a',
      'b',
    ])
  })

  it('leaves out boards too thin, too narrow or too short for a single blank', () => {
    const onHand = [
      own('thin', { thickness: 1.99 * inch }),
      own('narrow', { width: 1.9 * inch }),
      own('short', { length: 19.9 * inch }),
      own('just', { width: 2 * inch, length: 20 * inch }),
    ]
    expect(cutOrderFor(cutting({ onHand })).boards.map(({ key }) => key)).toEqual([
      'just',
      '6 × 96 in',
      '7.5 × 120 in',
    ])
  })

  it('takes layers of a glue-up from boards on hand', () => {
    const blank = {
      ...cutting().blank,
      sawn: 3 * inch,
      layers: 3,
      layerThickness: inch,
      thickness: 1.25 * inch,
      count: 1,
    }
    const order = cutOrderFor(cutting({ blank, onHand: [own('mine', { thickness: 1.125 * inch })] }))
    expect(order.boards.map(({ key }) => key)).toEqual(['mine'])
  })

  it('tells a board on hand from one of the yard with the same name', () => {
    const order = cutOrderFor(cutting({ onHand: [own('6 × 96 in', { width: 2 * inch })] }))
    expect(order.boards.map(({ key }) => key)).toEqual(['6 × 96 in', '6 × 96 in, to buy', '7.5 × 120 in'])
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
