import { type Limits, lowerNm, upperNm, type Verdict, verdictOf } from '../../shared/matching/reading.ts'
import { type LengthStyle, lengthText, limitText, nm } from '../../shared/units/length.ts'

/** A shape beside the colour and the word, so that none of them stands alone. */
export const verdictSymbols: Record<Verdict, string> = { in: '✓', over: '▲', under: '▼' }
export const verdictNames: Record<Verdict, string> = { in: 'In', over: 'Over', under: 'Under' }

/** A small difference without its sign: hundredths of a mm, thousandths of an inch. */
export function differenceText(mm: number, style: LengthStyle): string {
  const size = Math.abs(mm)
  if (style === 'mm') return size > 0 && size < 0.005 ? 'under 0.01 mm' : `${size.toFixed(2)} mm`
  const inch = size / 25.4
  if (inch > 0 && inch < 0.0005) return 'under 0.001 in'
  const whole = style === 'fraction' && size > 0 && isSixtyFourth(size)
  return whole ? lengthText(size, 'fraction') : `${inch.toFixed(3)} in`
}

/** A difference with its sign, always as a decimal: `+0.12 mm`, `−0.003 in`. */
export function signedText(mm: number, style: LengthStyle): string {
  const figure = style === 'mm' ? Math.abs(mm).toFixed(2) : Math.abs(mm / 25.4).toFixed(3)
  const sign = Number(figure) === 0 ? '' : mm > 0 ? '+' : '−'
  return `${sign}${figure} ${style === 'mm' ? 'mm' : 'in'}`
}

/** A reading as it was taken: a fraction only where it is one, else hundredths of a mm or thousandths of an inch. */
export function readingText(mm: number, style: LengthStyle): string {
  if (style === 'mm') return `${mm.toFixed(2)} mm`
  return style === 'fraction' && isSixtyFourth(mm)
    ? lengthText(mm, 'fraction')
    : `${(mm / 25.4).toFixed(3)} in`
}

/** The style in which all of these lengths can stand in one sentence: decimals once one of them is no sixty-fourth. */
export const commonStyle = (style: LengthStyle, ...lengths: number[]): LengthStyle =>
  style === 'fraction' && !lengths.every(isSixtyFourth) ? 'decimal' : style

function isSixtyFourth(mm: number): boolean {
  const part = (nm(mm) / 396_875) % 1
  return part < 0.01 || part > 0.99
}

/** The readings that are in: `1-23/32 to 1-25/32 in`. */
export function limitsText({ target, plus, minus }: Limits, style: LengthStyle): string {
  const [low, high] = [target - minus, target + plus]
  const common = commonStyle(style, low, high)
  return `${limitText(low, common).replace(/ (in|mm)$/, '')} to ${limitText(high, common)}`
}

interface VerdictWords {
  verdict: Verdict
  /** How far off and what that means for the wood. */
  lead: string
  detail: string
}

/** What a reading means at the lathe: how far over or under, and whether wood can still come off. */
export function verdictWords(
  value: number,
  limits: Limits & { fixed?: boolean },
  style: LengthStyle,
): VerdictWords {
  const verdict = verdictOf(value, limits)
  const off = value - limits.target
  const fromTarget =
    nm(off) === 0
      ? 'right on the target'
      : `${differenceText(off, style)} ${off > 0 ? 'above' : 'below'} the target`
  if (verdict === 'over') {
    const beyond = (nm(value) - upperNm(limits)) / 1e6
    return {
      verdict,
      lead: `${differenceText(beyond, style)} over: wood can still come off`,
      detail: `${fromTarget}; take ${differenceText(off, style)} off the diameter, half of it each side`,
    }
  }
  if (verdict === 'under') {
    const beyond = (lowerNm(limits) - nm(value)) / 1e6
    return {
      verdict,
      lead: `${differenceText(beyond, style)} under: wood cannot go back on`,
      detail: `${fromTarget}; ${limits.fixed ? 'it has to fit, so a spare takes its place' : 'a spare, or the set brought down to it'}`,
    }
  }
  return { verdict, lead: fromTarget, detail: `in from ${limitsText(limits, style)}` }
}

/**
 * Whether a reading is so far from its target that a slip of the finger is likelier than the wood: more than
 * 15 % and 3 mm off (common practice, no source).
 */
export const isUnlikely = (value: number, target: number): boolean =>
  Math.abs(value - target) > Math.max(3, 0.15 * target)
