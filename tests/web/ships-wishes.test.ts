import { describe, expect, it } from 'vitest'
import { askedOf, keepWishes, keptWishes, movedBy } from '../../web/ships-wishes.ts'

function shelfWith(text?: string) {
  const kept = new Map<string, string>()
  if (text !== undefined) kept.set('setwright.ships', text)
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  }
}

describe('the order set by hand', () => {
  it('is kept on the device and read back', () => {
    const shelf = shelfWith()
    keepWishes(shelf, { order: ['b', 'a'], with: ['c'] })
    expect(keptWishes(shelf)).toEqual({ order: ['b', 'a'], with: ['c'] })
  })

  it('is empty where what is kept cannot be read', () => {
    for (const text of ['{', '[]', '{"order":7,"with":[1]}', 'null'])
      expect(keptWishes(shelfWith(text))).toEqual({ order: [], with: [] })
  })

  it('asks for open jobs only, and gives way to a job that goes first', () => {
    const wishes = { order: ['b', 'gone', 'a'], with: ['gone', 'c'] }
    const open = new Set(['a', 'b', 'c'])
    expect(askedOf(wishes, open)).toEqual({ with: ['c'], order: ['b', 'a'] })
    expect(askedOf(wishes, open, 'c')).toEqual({ with: ['c'], order: [], first: 'c' })
  })

  it('moves a job one place and no further than the ends', () => {
    expect(movedBy(['a', 'b', 'c'], 'c', -1)).toEqual(['a', 'c', 'b'])
    expect(movedBy(['a', 'b', 'c'], 'a', -1)).toEqual(['a', 'b', 'c'])
    expect(movedBy(['a', 'b', 'c'], 'a', 1)).toEqual(['b', 'a', 'c'])
  })
})
