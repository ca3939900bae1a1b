/** Sets of small whole numbers as words of 32 bits. */
export type Bits = Uint32Array

export const wordsFor = (n: number): number => (n + 31) >>> 5

export const hasBit = (bits: Bits, i: number): boolean => (bits[i >>> 5]! & (1 << (i & 31))) !== 0

export const setBit = (bits: Bits, i: number): void => {
  bits[i >>> 5]! |= 1 << (i & 31)
}

export const clearBit = (bits: Bits, i: number): void => {
  bits[i >>> 5]! &= ~(1 << (i & 31))
}

/** How many bits of a word are set (Warren, Hacker's Delight, 2nd ed., fig. 5-2). */
function onesOf(word: number): number {
  let x = word - ((word >>> 1) & 0x55555555)
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333)
  x = (x + (x >>> 4)) & 0x0f0f0f0f
  return Math.imul(x, 0x01010101) >>> 24
}

/** How many numbers are in both sets. */
export function countBoth(a: Bits, b: Bits): number {
  let count = 0
  for (let w = 0; w < a.length; w++) count += onesOf(a[w]! & b[w]!)
  return count
}

export const countBits = (a: Bits): number => countBoth(a, a)

/** The set of the numbers given. */
export function bitsOf(numbers: Iterable<number>, n: number): Bits {
  const bits = new Uint32Array(wordsFor(n))
  for (const i of numbers) setBit(bits, i)
  return bits
}

/** The numbers of a set, ascending. */
export function numbersOf(bits: Bits): number[] {
  const numbers: number[] = []
  for (let w = 0; w < bits.length; w++)
    for (let word = bits[w]!; word !== 0; word &= word - 1)
      numbers.push((w << 5) + 31 - Math.clz32(word & -word))
  return numbers
}
