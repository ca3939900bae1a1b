import { describe, expect, it } from 'vitest'
import { putBack } from '../../shared/cutting/pick.ts'
import {
  onPile,
  restacked,
  undone,
  withBoard,
  withChange,
  withoutBoard,
  type YardTally,
} from '../../web/yard-tally.ts'
import { emptyTally, newBoard } from './yard-bench.ts'

const numbers = (tally: YardTally) => onPile(tally).map(({ number }) => number)
const pileOf = (...widths: number[]) =>
  widths.reduce((tally, width) => withBoard(tally, newBoard(width)), emptyTally())

describe('a tally', () => {
  it('numbers boards as they are pulled, each with a key of its own for the rack', () => {
    const tally = pileOf(150, 180, 150)
    expect(numbers(tally)).toEqual([1, 2, 3])
    expect(tally.boards.map(({ board }) => board.key)).toEqual(['ta11y-1', 'ta11y-2', 'ta11y-3'])
  })

  it('calls boards by their day and the number chalked on them, alike whatever the tally is renamed to', () => {
    const keys = (tally: YardTally) => tally.boards.map(({ board }) => board.key)
    const tally = [1, 2].reduce((all) => withBoard(all, newBoard(150)), emptyTally({ day: '25 Nov' }))
    expect(keys(tally)).toEqual(['25 Nov 1 (ta11y)', '25 Nov 2 (ta11y)'])
    expect(keys(withBoard({ ...tally, name: 'Oak' }, newBoard(150))).at(-1)).toBe('25 Nov 3 (ta11y)')
    // Another tally of that day has boards of those numbers too.
    const other = withBoard(emptyTally({ id: '0ther', day: '25 Nov' }), newBoard(150))
    expect(keys(tally)).not.toContain(keys(other)[0])
  })

  it('takes back every kind of change, the last first, down to an empty pile', () => {
    const states = [emptyTally()]
    const next = (edit: (tally: YardTally) => YardTally) => states.push(edit(states.at(-1)!))
    next((tally) => withBoard(tally, newBoard(150)))
    next((tally) => withBoard(tally, newBoard(180)))
    next((tally) => withBoard(tally, newBoard(200)))
    next((tally) => withChange(tally, 2, (old) => ({ ...old, taken: true })))
    next((tally) => withoutBoard(tally, 1))
    next((tally) =>
      restacked(
        tally,
        putBack(
          onPile(tally).map(({ board }) => board),
          new Set(['ta11y-3']),
        ),
      ),
    )
    expect(numbers(states.at(-1)!)).toEqual([3])
    for (const state of [...states].reverse()) {
      const i = states.indexOf(state)
      const now = states.slice(i + 1).reduce((tally) => undone(tally), states.at(-1)!)
      expect(now.boards).toEqual(state.boards)
    }
    expect(undone(emptyTally())).toEqual(emptyTally())
  })

  it('gives the number of a board that was taken back to the next', () => {
    expect(numbers(withBoard(undone(pileOf(150, 180)), newBoard(181)))).toEqual([1, 2])
  })

  it('lies after putting back as it was lifted: what stayed, then what was laid aside', () => {
    const tally = pileOf(1, 2, 3, 4, 5, 6)
    const kept = new Set(['ta11y-1', 'ta11y-4', 'ta11y-6'])
    const back = putBack(
      onPile(tally).map(({ board }) => board),
      kept,
    )
    const after = restacked(tally, back)
    // 6 is lifted first and laid aside, 5 goes back, 4 is laid on 6, 3 and 2 go back, 1 was never touched.
    expect(numbers(after)).toEqual([1, 6, 4])
    expect(
      after.boards
        .filter(({ back: gone }) => gone)
        .map(({ number }) => number)
        .sort((a, b) => a - b),
    ).toEqual([2, 3, 5])
  })

  it('keeps a board that another page pulled while boards went back', () => {
    const tally = pileOf(1, 2)
    const back = putBack(
      onPile(tally).map(({ board }) => board),
      new Set(['ta11y-2']),
    )
    expect(numbers(restacked(withBoard(tally, newBoard(3)), back))).toEqual([2, 3])
  })
})
