import { nm } from '../units/length.ts'
import type { Span } from './profile.ts'
import { spanRadius, spanSection, spanTurns } from './radius.ts'
import { sectionModulus } from './section.ts'
import { evenPlaces } from './top-between.ts'

/** A narrow place that breaks before the wood beside it. Lengths mm. */
export interface WeakNeck {
  /** Station that opens its span. */
  index: number
  at: number
  diameter: number
  /** Load it carries over what the weakest place of the rest carries, each loaded where it stands. */
  share: number
}

/** A neck is told of when it carries less than this share of what the rest carries. Common practice, no source. */
const NECK_SHARE = 0.5

const LOOKS = 24

interface Look {
  index: number
  x: number
  diameter: number
  /** Section modulus, mm³. */
  modulus: number
}

/** Both ends of every span, its crest or root, the middle of the part, and places between. */
function looksOf(spans: readonly Span[]): Look[] {
  const middle = (spans.at(-1)?.to ?? 0) / 2
  return spans.flatMap((span) =>
    [...evenPlaces(span.from, span.to, LOOKS), ...spanTurns(span), middle]
      .filter((x) => x >= span.from && x <= span.to)
      .sort((a, b) => a - b)
      .map((x) => ({
        index: span.index,
        x,
        diameter: 2 * spanRadius(span, x),
        modulus: sectionModulus(spanSection(span, x)),
      })),
  )
}

/**
 * The strongest section going one way that is no farther off than its own diameter: what has thicker wood no nearer
 * than that is no neck but a slender length. It goes by the thicker wood, so that a neck is none the less one for
 * being thin. Common practice, no source.
 */
function strongest(looks: readonly Look[], i: number, way: 1 | -1, reach: number): number {
  const { x } = looks[i]!
  let most = looks[i]!.modulus
  for (let k = i + way; k >= 0 && k < looks.length; k += way) {
    const { x: there, diameter, modulus } = looks[k]!
    const off = Math.abs(there - x)
    if (off > reach) break
    if (nm(off) <= nm(diameter)) most = Math.max(most, modulus)
  }
  return most
}

/**
 * Narrow places (roots of coves, fillets, steps) that carry less than half of what the rest of the part carries. A
 * bar between its ends carries F = σ·W·L/x(L−x) at a place x: W is the section modulus, for a round πd³/32, so
 * strength goes with the cube of the diameter, and most is asked of the middle (beam on two supports, Roark’s
 * Formulas; Wood Handbook FPL-GTR-282 ch. 9). The rest is the part with its necks filled up to the thinner of the two
 * sides beside them.
 *
 * @example weakNecks([{ index: 0, shape: 'straight', from: 0, to: 100, d0: 40, d1: 40, station: { at: 0, then: 'straight' } }]) // []
 */
export function weakNecks(spans: readonly Span[]): WeakNeck[] {
  const length = spans.at(-1)?.to ?? 0
  const inner = looksOf(spans).filter(({ x }) => nm(x) > 0 && nm(x) < nm(length))
  const asked = ({ x }: Look): number => x * (length - x)
  const thickest = Math.max(...inner.map(({ diameter }) => diameter))
  const filled = inner.map((_, i) =>
    Math.min(strongest(inner, i, 1, thickest), strongest(inner, i, -1, thickest)),
  )
  const rest = Math.min(...inner.map((look, i) => filled[i]! / asked(look)))
  const necks: WeakNeck[] = []
  let open: WeakNeck | undefined
  inner.forEach((look, i) => {
    const share = look.modulus / asked(look) / rest
    if (!(share < NECK_SHARE) || look.modulus >= filled[i]!) {
      open = undefined
      return
    }
    const { index, x: at, diameter } = look
    if (!open) {
      open = { index, at, diameter, share }
      necks.push(open)
    } else if (share < open.share) Object.assign(open, { index, at, diameter, share })
  })
  return necks
}
