import { inches, nm } from '../units/length.ts'
import { clearOf, jawsReach, type Measuring, slopeAllows, slopeError } from './jaws.ts'
import { type Span, samePlace } from './profile.ts'
import { spanRadius, spanTurns } from './radius.ts'
import { sizeText } from './size-text.ts'

/** A caution about a place to measure, and the nearest better one, mm from the foot. */
interface Judgement {
  caution?: string
  better?: number
}

/** The nearest place on the spans beside a station where jaws reach and the slope allows. */
function betterPlace(
  spans: Span[],
  beside: Span[],
  at: number,
  measuring: Measuring,
): { x: number; span: Span } | undefined {
  const clear = clearOf(measuring.jawWidth)
  const step = inches(1 / 64)
  const candidates = beside.flatMap((span) => {
    const inner = [span.from + clear, span.to - clear, (span.from + span.to) / 2, ...spanTurns(span)]
    const scan = Array.from({ length: Math.min(400, Math.floor((span.to - span.from) / step)) }, (_, k) =>
      samePlace(span.from, at) ? span.from + (k + 1) * step : span.to - (k + 1) * step,
    )
    return [...inner, ...scan]
      .filter((x) => nm(x) >= nm(span.from) && nm(x) <= nm(span.to))
      .map((x) => ({ span, x, distance: nm(Math.abs(x - at)) }))
  })
  return candidates
    .sort((a, b) => a.distance - b.distance)
    .find(({ span, x }) => jawsReach(spans, span, x, measuring) && slopeAllows(span, x, measuring))
}

/** What is wrong with measuring where the spans `beside` meet, and where would be better; nothing where all is well. */
export function judged(spans: Span[], beside: Span[], at: number, measuring: Measuring): Judgement {
  const reach = beside.every((span) => jawsReach(spans, span, at, measuring))
  const steep = beside.find((span) => !slopeAllows(span, at, measuring))
  if (reach && !steep) return {}
  const say = (mm: number): string => sizeText(mm, measuring.style)
  const better = betterPlace(spans, beside, at, measuring)
  const off = steep && slopeError(steep, at, measuring.position)
  const why = !reach
    ? `Jaws ${say(measuring.jawWidth)} wide do not reach the wood at ${say(at)}`
    : `At ${say(at)} the outline is so steep that ${say(measuring.position)} along the part changes the diameter by ${Number.isFinite(off) ? say(off!) : 'any amount'}`
  return better === undefined
    ? { caution: `${why}; no place beside it is better.` }
    : {
        caution: `${why}; the nearest better place is ${say(better.x)} from the foot, ${say(2 * spanRadius(better.span, better.x))} across.`,
        better: better.x,
      }
}
