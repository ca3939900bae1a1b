import { describe, expect, it } from 'vitest'
import { isAboutTallies, TallyShelf } from '../../web/yard-shelf.ts'
import { onPile, withBoard } from '../../web/yard-tally.ts'
import { emptyTally, newBoard, storageBench } from './yard-bench.ts'

describe('the shelf of tallies', () => {
  it('loses no board when two pages work on one tally', () => {
    const { storage } = storageBench()
    const [one, two] = [new TallyShelf(storage), new TallyShelf(storage)]
    const known = one.keep(emptyTally())
    one.change(known, 't1', (tally) => withBoard(tally, newBoard(150)))
    two.change(known, 't2', (tally) => withBoard(tally, newBoard(180)))
    expect(onPile(one.of('ta11y')!).map(({ number, board }) => [number, board.width])).toEqual([
      [1, 150],
      [2, 180],
    ])
  })

  it('goes on from what the page knew where another page threw the tally away', () => {
    const { storage } = storageBench()
    const [one, two] = [new TallyShelf(storage), new TallyShelf(storage)]
    const known = one.change(emptyTally(), 't1', (tally) => withBoard(tally, newBoard(150)))
    two.drop('ta11y')
    expect(onPile(one.change(known, 't2', (tally) => withBoard(tally, newBoard(180))))).toHaveLength(2)
  })

  it('lists the one changed last first and passes over what it cannot read', () => {
    const { storage, kept } = storageBench()
    const shelf = new TallyShelf(storage)
    shelf.keep(emptyTally({ id: 'a', changedAt: '2026-03-01' }))
    shelf.keep(emptyTally({ id: 'b', changedAt: '2026-03-02' }))
    kept.set('setwright.tally.c', '{"id":')
    kept.set('setwright.tally.d', '{"id":"d"}')
    kept.set('setwright.other', '{}')
    expect(shelf.all().map(({ id }) => id)).toEqual(['b', 'a'])
  })

  it('holds a tally as long as the page where the device is full, and says so', () => {
    const { storage, state } = storageBench()
    const shelf = new TallyShelf(storage)
    const known = shelf.keep(emptyTally())
    state.full = true
    shelf.change(known, 't1', (tally) => withBoard(tally, newBoard(150)))
    expect(shelf.keeps).toBe(false)
    expect(onPile(shelf.of('ta11y')!)).toHaveLength(1)
    expect(shelf.all()).toHaveLength(1)
    state.full = false
    shelf.change(known, 't2', (tally) => withBoard(tally, newBoard(180)))
    expect(shelf.keeps).toBe(true)
    expect(onPile(new TallyShelf(storage).of('ta11y')!)).toHaveLength(2)
  })

  it('heeds changes of other pages that are about tallies', () => {
    expect(isAboutTallies({ key: 'setwright.tally.a' })).toBe(true)
    expect(isAboutTallies({ key: null })).toBe(true)
    expect(isAboutTallies({ key: 'setwright.outbox' })).toBe(false)
  })
})
