import { inches, nm } from '../units/length.ts'
import type { Span } from './profile.ts'

/** Width of the straight a steady rest runs on. Common practice, no source. */
const JOURNAL = inches(2)

/** Where a steady rest runs: the middle of its journal and the journal’s ends, mm from the foot. */
export interface RestPlace {
  at: number
  from: number
  to: number
}

/** Turned stretches from the foot up, between parts left square. */
function turnedStretches(spans: Span[]): { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = []
  let open: { from: number; to: number } | undefined
  for (const { shape, from, to } of spans) {
    if (shape === 'square') open = undefined
    else if (open) open.to = to
    else {
      open = { from, to }
      stretches.push(open)
    }
  }
  return stretches
}

/**
 * Where a steady rest stands: in the turned wood at the limberest place, or nearest to it where that is left square,
 * on a straight 2 in wide as far as the turned stretch allows. None on a part that is left square all over.
 */
export function restPlace(spans: Span[], limberest: number): RestPlace | undefined {
  const away = ({ from, to }: { from: number; to: number }): number =>
    nm(Math.max(from - limberest, limberest - to, 0))
  const [first, ...others] = turnedStretches(spans)
  if (!first) return undefined
  const stretch = others.reduce((near, one) => (away(one) <= away(near) ? one : near), first)
  const at = Math.min(Math.max(limberest, stretch.from), stretch.to)
  const width = Math.min(JOURNAL, stretch.to - stretch.from)
  const from = Math.min(Math.max(stretch.from, at - width / 2), stretch.to - width)
  return { at, from, to: from + width }
}
