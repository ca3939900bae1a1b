import { describe, expect, it } from 'vitest'
import { type RackBoard, readBoard } from '../../shared/contract/board.ts'
import type { Problem } from '../../shared/problem.ts'
import {
  alikeEntry,
  defectText,
  entryBreach,
  freshStock,
  nextStock,
  type StockEntry,
  sentStock,
  stockEntryOf,
  stockField,
} from '../../web/stock-entry.ts'

const whole: RackBoard = {
  key: 'W-7',
  species: 'walnut-black',
  width: 184.15,
  length: 2438.4,
  thickness: 63.7,
  count: 2,
  pricePerBoardFoot: 12.5,
  grade: 'FAS',
  moisture: 9.5,
  crook: 6,
  heart: { across: 92.075, below: -30 },
  trimmed: true,
  from: 'the mill',
  notes: 'behind the door',
  defects: [
    { from: 254, to: 304.8, kind: 'knot' },
    { from: 0, to: 2438.4, across: [0, 25.4], kind: 'sap' },
  ],
}
const entry = (over: Partial<StockEntry> = {}): StockEntry => ({
  ...freshStock('in', 'walnut-black'),
  key: 'W-7',
  width: '7 1/4',
  length: '8 ft',
  thickness: '2 1/2',
  ...over,
})

describe('stockEntryOf', () => {
  it('reads back as the board it was made of, in inches and in mm', () => {
    for (const units of ['in', 'mm'] as const) {
      const back = readBoard(sentStock(stockEntryOf(whole, units)), units)
      expect(back).toEqual({ ...whole, units })
    }
  })

  it('writes inches where they are exact, and mm where they are not', () => {
    expect(stockEntryOf(whole, 'in')).toMatchObject({ width: '7-1/4 in', thickness: '63.7 mm' })
  })

  it('keeps a board without end, and a price for the whole board', () => {
    const { pricePerBoardFoot: _, ...rest } = whole
    const board = { ...rest, count: null, price: 80 }
    expect(readBoard(sentStock(stockEntryOf(board, 'in')), 'in')).toEqual({ ...board, units: 'in' })
  })
})

describe('alikeEntry', () => {
  it('is the board without its name and what is wrong with it', () => {
    expect(alikeEntry(whole, 'in')).toMatchObject({
      key: '',
      defects: [],
      width: '7-1/4 in',
      moisture: '9.5',
    })
    expect(alikeEntry(whole, 'in').crook).toBeUndefined()
  })
})

describe('nextStock', () => {
  it('keeps what boards of one load have in common', () => {
    const before = entry({ moisture: '9', from: 'the mill', count: '3', crook: '1/4', heartAcross: '2' })
    expect(nextStock(before)).toEqual({
      key: '',
      units: 'in',
      species: 'walnut-black',
      thickness: '2 1/2',
      moisture: '9',
      from: 'the mill',
      priceOf: 'board-foot',
      defects: [],
    })
  })
})

describe('stockField', () => {
  it.each([
    ['key', 'Name on the board'],
    ['width', 'Width'],
    ['heartBelow', 'Heart, below the face'],
    ['defects[0].from', 'Defect 1, from'],
    ['defects[2].low', 'Defect 3, across, from'],
    ['defects[2]', 'Defect 3'],
    ['', 'The board'],
  ])('calls %j %j', (path, words) => expect(stockField(path)).toBe(words))
})

describe('sentStock', () => {
  it('leaves out what was left empty', () => {
    expect(sentStock(entry({ grade: ' ', moisture: '', notes: '' }))).toEqual({
      key: 'W-7',
      units: 'in',
      species: 'walnut-black',
      width: '7 1/4',
      length: '8 ft',
      thickness: '2 1/2',
    })
  })

  it('sends what cannot be a number as it was written, to be refused by name', () => {
    expect(sentStock(entry({ count: 'many', price: '9,5' }))).toMatchObject({
      count: 'many',
      pricePerBoardFoot: 9.5,
    })
  })

  it('has every refusal at the field it belongs to', () => {
    const refused = (over: Partial<StockEntry>) => {
      try {
        readBoard(sentStock(entry(over)), 'in')
      } catch (problem) {
        return (problem as Problem).errors.map((error) => entryBreach(error).path)
      }
      return []
    }
    expect(refused({ width: '' })).toEqual(['width'])
    expect(refused({ price: '-1' })).toEqual(['price'])
    expect(refused({ heartAcross: '2' })).toEqual(['heartBelow'])
    expect(refused({ defects: [{ kind: 'knot', from: '10' }] })).toEqual(['defects[0].to'])
    expect(refused({ defects: [{ from: '1', to: '2', low: 'wide', high: '1' }] })).toEqual(['defects[0].low'])
    expect(refused({ defects: [{ from: '1', to: '2', low: '3', high: '1' }] })).toEqual(['defects[0].high'])
  })
})

describe('defectText', () => {
  it('says what lies where', () => {
    const text = (mm: number) => `${mm}`
    expect(defectText(whole.defects![0]!, text)).toBe('knot, 254 to 304.8')
    expect(defectText({ from: 1, to: 2, across: [3, 4] }, text)).toBe('defect, 1 to 2, across 3 to 4')
  })
})
