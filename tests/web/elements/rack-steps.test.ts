import { describe, expect, it } from 'vitest'
import type { Piece } from '../../../shared/piece.ts'
import type { Operation } from '../../../shared/route/operation.ts'
import {
  nextOperation,
  numbersText,
  piecesLacking,
  pieceWords,
  rackCount,
  rackOperation,
  withStep,
} from '../../../web/elements/rack-steps.ts'

const operation = (key: string, minutesEach: number, tool = 'skew'): Operation =>
  ({ key, name: key, tool, minutesEach, minutesOnce: 0, where: null, after: [] }) as unknown as Operation

const operations = [
  operation('set-up', 0),
  operation('rough', 2, 'gouge'),
  operation('size', 1),
  operation('bead', 3),
]
const piece = (number: number, done: string[] = [], more: Partial<Piece> = {}): Piece => ({
  id: `job-${number}`,
  job: 'job',
  number,
  spare: false,
  done,
  progress: done.length / 3,
  ...more,
})

describe('steps of a piece', () => {
  it('leaves out what is done once for the batch', () => {
    expect(nextOperation(piece(1), operations)?.key).toBe('rough')
  })

  it('takes the first operation that is missing, even when a later one is done', () => {
    expect(nextOperation(piece(1, ['rough', 'bead']), operations)?.key).toBe('size')
    expect(nextOperation(piece(1, ['rough', 'size', 'bead']), operations)).toBeUndefined()
  })

  it('moves a piece on by one of its operations and not twice by the same', () => {
    const once = withStep(piece(1), 'rough', operations)
    expect(once.progress).toBeCloseTo(1 / 3, 12)
    expect(withStep(once, 'rough', operations)).toBe(once)
    expect(withStep(withStep(once, 'size', operations), 'bead', operations).progress).toBe(1)
  })

  it('says how far a piece has come, and why one is out', () => {
    expect(pieceWords(piece(3, ['rough'], { spare: true }), operations)).toBe(
      'Piece 3, spare: 1 of 3 operations done',
    )
    expect(pieceWords(piece(2, [], { spoiled: { reason: 'a catch', at: '' } }), operations)).toBe(
      'Piece 2: spoiled, a catch',
    )
  })
})

describe('the whole rack', () => {
  const rack = [
    piece(1, ['rough', 'size']),
    piece(2, ['rough']),
    piece(3, [], { spoiled: { reason: 'a catch', at: '' } }),
  ]

  it('waits for the first operation missing on a piece that is not spoiled', () => {
    expect(rackOperation(rack, operations)?.key).toBe('size')
    expect(piecesLacking(rack, 'size').map(({ number }) => number)).toEqual([2])
  })

  it('counts each piece once', () => {
    expect(rackCount(rack)).toEqual({ waiting: 0, going: 2, done: 0, spoiled: 1 })
  })
})

describe('numbersText', () => {
  it.each([
    [[], ''],
    [[3], '3'],
    [[3, 4], '3 and 4'],
    [[1, 2, 3, 4, 7], '1 to 4, 7'],
    [[1, 3, 5], '1, 3, 5'],
  ])('says %j as “%s”', (numbers, text) => {
    expect(numbersText(numbers.map((number) => ({ number })))).toBe(text)
  })
})
