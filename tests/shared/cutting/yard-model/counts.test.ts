import { describe, expect, it } from 'vitest'
import { fullCounts, stepsOf, undominated } from '../../../../shared/cutting/yard-model/counts.ts'

const part = (room: number, most: number) => ({ room, most })

describe('full counts', () => {
  it('leave no room for another', () => {
    // In 10: 4+3+3, 4+4, 3+3+3; 4+3 alone leaves room for a 3.
    expect(fullCounts(10, [part(4, 9), part(3, 9)], 1000)).toEqual([
      [2, 0],
      [1, 2],
      [0, 3],
    ])
  })

  it('take no more than are wanted', () => {
    expect(fullCounts(10, [part(4, 1), part(3, 1)], 1000)).toEqual([[1, 1]])
  })

  it('are given up where there are too many', () => {
    expect(fullCounts(100, [part(1, 99), part(1, 99), part(1, 99)], 1000)).toBeUndefined()
  })
})

describe('steps', () => {
  it('are found for as many rooms as a stack of boards with many defects has', () => {
    const steps = stepsOf(new Array<number>(500_000).fill(5), [part(4, 9)], 1000)!
    expect(steps).toEqual([{ room: 4, full: [[1]] }])
  })

  it('are the largest sums in the rooms, and list what fits once', () => {
    // Sums of 4 and 3: 3, 4, 6, 7, 8, 9, 10. Rooms 5 and 10 come to 4 and 10.
    const steps = stepsOf([5, 10, 5], [part(4, 9), part(3, 9)], 1000)!
    expect(steps.map(({ room }) => room)).toEqual([10, 4])
    // A single 3 is full in 4 as well; in 10 only what does not fit 4.
    expect(steps[1]!.full).toEqual([
      [1, 0],
      [0, 1],
    ])
    expect(steps[0]!.full).toEqual([
      [2, 0],
      [1, 2],
      [0, 3],
    ])
  })

  it('are none where nothing fits', () => {
    expect(stepsOf([2], [part(3, 1)], 1000)).toEqual([])
  })
})

describe('of alike vectors', () => {
  it('only those stay that no other holds', () => {
    const all = [
      [1, 2],
      [0, 2],
      [3, 0],
      [1, 2],
    ]
    expect(undominated(all, (counts) => counts)).toEqual([
      [1, 2],
      [3, 0],
    ])
  })
})
