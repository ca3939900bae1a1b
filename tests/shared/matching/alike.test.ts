import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { alikeGroup } from '../../../shared/matching/alike.ts'
import { type Bits, bitsOf, hasBit, setBit, wordsFor } from '../../../shared/matching/bits.ts'

/** Any pairs at all, not only those that readings make. */
const friendships = fc
  .integer({ min: 1, max: 12 })
  .chain((n) => fc.tuple(fc.constant(n), fc.array(fc.boolean(), { minLength: n * n, maxLength: n * n })))

function likesOf(n: number, pairs: boolean[]): Bits[] {
  const likes = Array.from({ length: n }, () => new Uint32Array(wordsFor(n)))
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      if (pairs[a * n + b]) {
        setBit(likes[a]!, b)
        setBit(likes[b]!, a)
      }
  return likes
}

/** The size of the largest group by trying every subset. */
function largestByTrying(n: number, likes: Bits[]): number {
  let largest = 0
  for (let subset = 0; subset < 1 << n; subset++) {
    const group = [...Array(n).keys()].filter((i) => subset & (1 << i))
    if (group.length > largest && group.every((a) => group.every((b) => a === b || hasBit(likes[a]!, b))))
      largest = group.length
  }
  return largest
}

describe('alikeGroup', () => {
  it('finds a group exactly when trying every subset does', () => {
    fc.assert(
      fc.property(friendships, ([n, pairs]) => {
        const likes = likesOf(n, pairs)
        const largest = largestByTrying(n, likes)
        for (let need = 0; need <= n; need++) {
          const found = alikeGroup(likes, bitsOf(likes.keys(), n), need, { steps: 1e9 })
          if (need > largest) expect(found).toBe('none')
          else {
            const group = found as number[]
            expect(new Set(group).size).toBe(need)
            expect(group.every((a) => group.every((b) => a === b || hasBit(likes[a]!, b)))).toBe(true)
          }
        }
      }),
      { numRuns: 300 },
    )
  })

  it('takes pieces only from those it may', () => {
    const everyone = likesOf(5, Array<boolean>(25).fill(true))
    expect(alikeGroup(everyone, bitsOf([1, 3, 4], 5), 3, { steps: 1e6 })).toEqual([1, 3, 4])
    expect(alikeGroup(everyone, bitsOf([1, 3], 5), 3, { steps: 1e6 })).toBe('none')
  })

  it('says that it does not know when its steps run out', () => {
    const n = 70
    const pairs = Array.from({ length: n * n }, (_, i) => (i * 7919) % 13 < 6)
    const likes = likesOf(n, pairs)
    expect(alikeGroup(likes, bitsOf(likes.keys(), n), 12, { steps: 50 })).toBe('unknown')
  })
})
