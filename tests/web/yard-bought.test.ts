import { describe, expect, it } from 'vitest'
import { readBoard } from '../../shared/contract/board.ts'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { inches } from '../../shared/units/length.ts'
import { boughtBoards } from '../../web/yard-bought.ts'
import { onPile, withBoard } from '../../web/yard-tally.ts'
import { emptyTally, needOf, newBoard } from './yard-bench.ts'

describe('boards that were bought', () => {
  const terms = { ...usualTerms, name: 'Mill' }
  const size = { width: inches(7.375), length: inches(96), thickness: inches(2) }
  const tally = withBoard(
    emptyTally({ terms, needs: [needOf()] }),
    newBoard(0, { ...size, pricePerBoardFoot: 9, crook: 6, defects: [{ from: 0, to: 90, kind: 'split' }] }),
  )

  it('go to the rack with their wood, what was paid, and where they are from', () => {
    const [board] = boughtBoards(tally, onPile(tally))
    expect(board).toEqual({
      key: 'ta11y-1',
      units: 'mm',
      ...size,
      count: 1,
      crook: 6,
      defects: [{ from: 0, to: 90, kind: 'split' }],
      species: 'maple-sugar',
      // Tallied: 5 square feet × 2 in at 9.00.
      price: 90,
      from: 'Mill, Saturday',
    })
  })

  it('are read by the rack as they are sent', () => {
    const [board] = boughtBoards(tally, onPile(tally))
    expect(readBoard(JSON.parse(JSON.stringify(board)), 'in')).toEqual(board)
  })

  it('are called alike however often they are bought, the tally renamed in between too', () => {
    const dated = withBoard(emptyTally({ day: '25 Nov' }), newBoard(150))
    const keys = (name: string) => boughtBoards({ ...dated, name }, onPile(dated)).map(({ key }) => key)
    expect(keys('Saturday')).toEqual(['25 Nov 1 (ta11y)'])
    expect(keys('Sunday')).toEqual(keys('Saturday'))
    const [board] = boughtBoards(dated, onPile(dated))
    expect(readBoard(board, 'mm').key).toBe('25 Nov 1 (ta11y)')
  })
})
