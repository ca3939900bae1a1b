import type { Blank } from './blank.ts'

/** Where each part of a stick starts, and the gaps between them that are parted; mm from the foot end of the blank. */
export interface StickPlaces {
  starts: number[]
  gaps: [from: number, to: number][]
}

/**
 * The parts of a blank one after the other, foot end first, with what is parted off between them.
 *
 * @example stickPlaces({ stock: { perBlank: 2, sticks: 1 }, lengthParts: { foot: 10, between: 6 } }, 40) // { starts: [10, 56], gaps: [[50, 56]] }
 */
export function stickPlaces(
  {
    stock: { perBlank },
    lengthParts,
  }: Pick<Blank, 'stock'> & { lengthParts: Pick<Blank['lengthParts'], 'foot' | 'between'> },
  partLength: number,
): StickPlaces {
  const gap = perBlank > 1 ? lengthParts.between / (perBlank - 1) : 0
  const starts = Array.from({ length: perBlank }, (_, i) => lengthParts.foot + i * (partLength + gap))
  return { starts, gaps: starts.slice(1).map((start) => [start - gap, start]) }
}
