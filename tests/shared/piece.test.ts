import { describe, expect, it } from 'vitest'
import { handOf, numberedPieces } from '../../shared/piece.ts'

describe('handOf', () => {
  it('makes pairs of neighbouring numbers, the left one first', () => {
    expect([1, 2, 3, 4].map(handOf)).toEqual(['left', 'right', 'left', 'right'])
  })

  it('makes as many left as right hands of an even quantity', () => {
    const hands = numberedPieces(8, 8).map(({ number }) => handOf(number))
    expect(hands.filter((hand) => hand === 'left')).toHaveLength(4)
  })
})
