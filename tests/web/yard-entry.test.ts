import { describe, expect, it } from 'vitest'
import {
  type BoardEntry,
  type DefectEntry,
  entryOf,
  freshDefect,
  freshEntry,
  nextEntry,
  placesAsked,
  quarterText,
  readEntry,
  saidLength,
  withEighth,
  withFeet,
  withInch,
  withInches,
} from '../../web/yard-entry.ts'

const inInches = { style: 'fraction', units: 'in' } as const
const inMm = { style: 'mm', units: 'mm' } as const
const entered = (more: Partial<BoardEntry>): BoardEntry => ({
  ...freshEntry(),
  width: '7-3/8',
  length: '8 ft 4 in',
  thickness: '2',
  ...more,
})
const boardOf = (entry: BoardEntry, ground: Parameters<typeof readEntry>[1] = inInches) => {
  const read = readEntry(entry, ground)
  if ('errors' in read) throw new Error(read.errors.map(({ message }) => message).join(' '))
  return read.board
}
const errorsOf = (entry: BoardEntry, ground: Parameters<typeof readEntry>[1] = inInches) => {
  const read = readEntry(entry, ground)
  return 'errors' in read ? read.errors : []
}

describe('the keys of the stick', () => {
  it('write whole inches, put an eighth behind them, exchange it and take it off again', () => {
    expect(withInch(7)).toBe('7')
    expect(withEighth('7', '3/8')).toBe('7-3/8')
    expect(withEighth('7-3/8', '1/2')).toBe('7-1/2')
    expect(withEighth('7-1/2', '1/2')).toBe('7')
    expect(withEighth('', '3/8')).toBe('3/8')
  })

  it('write whole feet and inches over them', () => {
    expect(withFeet(8)).toBe('8 ft')
    expect(withInches('8 ft', 4)).toBe('8 ft 4 in')
    expect(withInches('8 ft 4 in', 11)).toBe('8 ft 11 in')
    expect(withInches('8 ft 4 in', 4)).toBe('8 ft')
  })

  it('write the thickness of what is sold by quarters', () => {
    expect(quarterText('5/4', 'fraction')).toBe('1-1/4')
    expect(quarterText('8/4', 'mm')).toBe('50.8')
  })

  it('are read out as lengths are said', () => {
    expect(saidLength('8 ft 4 in', 'fraction')).toBe('8 ft 4 in')
    expect(saidLength('100', 'fraction')).toBe('8 ft 4 in')
    expect(saidLength('185', 'mm')).toBe('185.0 mm')
    expect(saidLength('8-', 'fraction')).toBe('8-')
  })
})

describe('a board that is entered', () => {
  it('is read in millimetres, with price, crook and grade', () => {
    const entry = entered({ price: '9.50', crook: '1/2' })
    const ground = { ...inInches, grade: 'FAS' }
    expect(boardOf(entry, ground).board).toEqual({
      units: 'in',
      width: 187.325,
      length: 2540,
      thickness: 50.8,
      count: 1,
      pricePerBoardFoot: 9.5,
      grade: 'FAS',
      crook: 12.7,
    })
    expect(boardOf(entered({ price: '40', priceOf: 'board' })).board).toMatchObject({ price: 40 })
    expect(boardOf(entered({ nominal: '8/4' })).nominal).toBe('8/4')
  })

  it('is refused by the field, with what was read and what is allowed', () => {
    expect(errorsOf(entered({ width: '' }))).toEqual([
      { path: 'width', message: expect.stringContaining('Width is not entered yet') },
    ])
    const [wide] = errorsOf(entered({ width: '7-' }))
    expect(wide).toEqual({ path: 'width', message: expect.stringMatching(/Width: read “7-”; .*above 0/) })
    expect(errorsOf(entered({ length: '90 ft' }))[0]?.message).toMatch(/read “90 ft”; .*up to 787/)
    expect(errorsOf(entered({ thickness: '0' })).map(({ path }) => path)).toEqual(['thickness'])
    expect(errorsOf(entered({ price: '-4' }))[0]?.message).toMatch(/Price: read “-4”; .*from 0 to 1000000/)
    expect(errorsOf(entered({ crook: 'some' }))[0]?.path).toBe('crook')
  })

  const defect = (kind: Parameters<typeof freshDefect>[0], more: Partial<DefectEntry>): DefectEntry => ({
    ...freshDefect(kind),
    ...more,
  })

  it.each([
    [
      'a knot between two places',
      defect('knot', { at: ['410', '450', '', ''] }),
      { from: 410, to: 450, kind: 'knot' },
    ],
    [
      'its ends keyed the other way round',
      defect('knot', { at: ['450', '410', '', ''] }),
      { from: 410, to: 450, kind: 'knot' },
    ],
    [
      'a split at the butt end',
      defect('split', { at: ['150', '', '', ''] }),
      { from: 0, to: 150, kind: 'split' },
    ],
    [
      'a split at the far end',
      defect('split', { along: 'last', at: ['150', '', '', ''] }),
      { from: 2250, to: 2400, kind: 'split' },
    ],
    [
      'sap along the near edge',
      defect('sap', { at: ['', '', '25', ''] }),
      { from: 0, to: 2400, across: [0, 25], kind: 'sap' },
    ],
    [
      'sap along the far edge',
      defect('sap', { across: 'last', at: ['', '', '25', ''] }),
      { from: 0, to: 2400, across: [160, 185], kind: 'sap' },
    ],
    [
      'pith as a stripe',
      defect('pith', { at: ['', '', '80', '100'] }),
      { from: 0, to: 2400, across: [80, 100], kind: 'pith' },
    ],
    [
      'a knot of a patch',
      defect('knot', { across: 'between', at: ['0', '40', '30', '60'] }),
      { from: 0, to: 40, across: [30, 60], kind: 'knot' },
    ],
  ] as const)('holds %s, and comes back into the keys as it is', (_, entry, expected) => {
    const ground = { ...inMm }
    const first = boardOf(
      { ...freshEntry(), width: '185', length: '2400', thickness: '52', defects: [entry] },
      ground,
    )
    expect(first.board.defects).toEqual([expected])
    const pulled = { number: 1, ...first, board: { ...first.board, key: 'k-1' } }
    expect(boardOf(entryOf(pulled, 'mm'), ground).board).toEqual(first.board)
  }) // prettier-ignore

  it('is refused where a defect would be all of it, or lies off it', () => {
    const base = { ...freshEntry(), width: '185', length: '2400', thickness: '52' }
    const all = { ...base, defects: [defect('stain', { along: 'whole' })] }
    expect(errorsOf(all, inMm)).toEqual([
      { path: 'defects[0]', message: expect.stringContaining('all of the board') },
    ])
    const off = { ...base, defects: [defect('knot', { at: ['2300', '2500', '', ''] })] }
    expect(errorsOf(off, inMm)[0]?.message).toMatch(/Defect 1 \(knot\): read “2500”; .*up to 2400/)
  })

  it('asks for as many places as its reaches need', () => {
    expect(placesAsked({ along: 'between', across: 'whole' })).toEqual([0, 1])
    expect(placesAsked({ along: 'whole', across: 'first' })).toEqual([2])
    expect(placesAsked({ along: 'last', across: 'between' })).toEqual([0, 2, 3])
  })

  it('keeps every length to the nanometre when it is changed', () => {
    const odd = {
      units: 'in',
      width: 187.4,
      length: 2504.44,
      thickness: 49.2125,
      count: 1,
      key: 'k-1',
    } as const
    for (const style of ['fraction', 'decimal', 'mm'] as const) {
      const ground = { style, units: 'in' } as const
      const { board } = boardOf(entryOf({ number: 1, board: odd }, style), ground)
      expect(board).toMatchObject({ width: odd.width, length: odd.length, thickness: odd.thickness })
    }
  })
})

describe('the next board', () => {
  it('starts from the last one without its width and its defects', () => {
    const last = entered({ price: '9', crook: '1', defects: [freshDefect('knot')] })
    expect(nextEntry(last)).toEqual({ ...last, width: '', crook: '', defects: [] })
  })

  it('does not take over what the last board was asked as a whole', () => {
    expect(nextEntry(entered({ price: '70', priceOf: 'board' }))).toMatchObject({
      price: '',
      priceOf: 'board',
    })
  })

  it('is what was being entered before a board was changed', () => {
    const before = entered({ width: '6' })
    expect(nextEntry({ ...entered({}), mends: 3, before })).toEqual(before)
  })
})
