import type { Station } from '../../shared/profile/profile.ts'
import { type LengthStyle, limitText, nm } from '../../shared/units/length.ts'
import type { CompareEnd } from './compare-layout.ts'

/** Less than this shows on no caliper, mm. */
const SHOWN_MM = 0.005

/** Whether two lengths are the same as far as a caliper can tell, mm. */
export const isSame = (a: number, b: number): boolean => nm(Math.abs(a - b)) < nm(SHOWN_MM)

/** How long the two are, and by how much one is longer; lengths mm. */
export function lengthWords(a: number, b: number, style: LengthStyle): string {
  if (isSame(a, b)) return `Both are ${limitText(a, style)} long.`
  const [longer, by] = a > b ? ['A', a - b] : ['B', b - a]
  return `A is ${limitText(a, style)} long, B ${limitText(b, style)}: ${longer} is longer by ${limitText(by, style)}.`
}

/** Where two profiles differ most, counted from the end they are laid together at; lengths mm. */
export interface Widest {
  fromEnd: number
  /** What each measures across there. */
  a: number
  b: number
  /** What B has there: its station and the shape that begins at it. */
  on: { index: number; station: Station }
}

const placeText = (fromEnd: number, end: CompareEnd, style: LengthStyle): string =>
  isSame(fromEnd, 0) ? `at the ${end}` : `${limitText(fromEnd, style)} from the ${end}`

/** Where the two differ most in diameter, and by how much. */
export function widestWords(widest: Widest | undefined, end: CompareEnd, style: LengthStyle): string {
  if (!widest) return 'They have no length in common.'
  const { fromEnd, a, b, on } = widest
  if (isSame(a, b)) return 'As far as both reach they are equally thick everywhere.'
  const than = `${limitText(Math.abs(b - a), style)} ${b > a ? 'thicker' : 'thinner'}`
  const where = on.station.name
    ? `in “${on.station.name}”`
    : `in the ${on.station.then} after station ${on.index}`
  return (
    `Largest difference: B is ${than} than A, ${placeText(fromEnd, end, style)}, ${where} of B. ` +
    `A is ${limitText(a, style)} across there, B ${limitText(b, style)}.`
  )
}

/** Where one is left square and the other turned; the stretches are counted from the common end, mm. */
export function unlikeWords(
  stretches: readonly { from: number; to: number }[],
  end: CompareEnd,
  style: LengthStyle,
): string | undefined {
  if (stretches.length === 0) return undefined
  const told = stretches.map(({ from, to }) => `${limitText(from, style)} to ${limitText(to, style)}`)
  return `One is left square and the other turned ${told.join(', ')} from the ${end}.`
}
