import { nm } from '../../../shared/units/length.ts'

/** Something that lies along a board, mm from its butt end, with what is said of it. */
export interface Laid {
  from: number
  to: number
  says: string
}

/** Like neighbours, evenly spaced. */
export interface Run extends Laid {
  /** How long each is, mm. */
  each: number
  /** Their numbers, from 1. */
  numbers: number[]
}

const gaps = (laid: readonly Laid[]): number[] =>
  laid.slice(1).map(({ from }, i) => nm(from) - nm(laid[i]!.to))

/**
 * What lies along a board as runs: neighbours of one kind and length that lie as close as any here. Where a run
 * begins and ends tells the place of each in it.
 */
export function runsOf(laid: readonly Laid[]): Run[] {
  const between = gaps(laid)
  const least = Math.min(...between)
  const runs: Run[] = []
  for (const [i, one] of laid.entries()) {
    const run = runs.at(-1)
    const before = laid[i - 1]
    const isLike = before?.says === one.says && nm(before.to - before.from) === nm(one.to - one.from)
    if (run && isLike && between[i - 1] === least) {
      run.to = one.to
      run.numbers.push(i + 1)
    } else runs.push({ ...one, each: one.to - one.from, numbers: [i + 1] })
  }
  return runs
}

/** Numbers in words: `strip 1`, `strips 1–3, 5`. */
export function numbered(word: string, numbers: readonly number[]): string {
  const ranges = numbers.reduce<[number, number][]>((all, n) => {
    const last = all.at(-1)
    if (last?.[1] === n - 1) last[1] = n
    else all.push([n, n])
    return all
  }, [])
  const texts = ranges.map(([first, last]) => (first === last ? String(first) : `${first}–${last}`))
  return `${word}${numbers.length === 1 ? '' : 's'} ${texts.join(', ')}`
}

/** Texts with the places (from 0) at which each stands, in the order of their first. */
export function alike(texts: readonly string[]): Map<string, number[]> {
  const places = new Map<string, number[]>()
  for (const [i, text] of texts.entries()) places.set(text, [...(places.get(text) ?? []), i])
  return places
}
