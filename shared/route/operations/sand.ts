import type { Span } from '../../profile/profile.ts'
import { diametersOf } from '../../profile/radius.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { Feature } from '../features.ts'
import { gritCaution } from '../grits.ts'
import type { OperationDraft } from '../operation.ts'
import { stretchName } from '../place-name.ts'
import { removedBySanding } from '../removed.ts'
import { journalCaution } from '../steady.ts'

/** Features by the stretch they are sanded in: all at once, or on slender work by position of the rest. */
function stretches(context: RouteContext): Map<number, Feature[]> {
  const found = new Map<number, Feature[]>()
  for (const feature of context.features) {
    if (feature.kind === 'tenon') continue
    const at = context.stretchOf(feature) ?? 1
    found.set(at, [...(found.get(at) ?? []), feature])
  }
  return found
}

function stretch(context: RouteContext, position: number, features: Feature[]): OperationDraft {
  const spans = features.flatMap((feature) => feature.spans).sort((a, b) => a.index - b.index)
  const total = (of: (span: Span) => number): number =>
    context.parts * spans.reduce((sum, span) => sum + of(span), 0)
  const where: [number, number] = [spans[0]!.from, spans.at(-1)!.to]
  const masked = context.features.some((feature) => feature.kind === 'tenon')
  return draftOf('sand', {
    key: context.slender ? `sand-p${position}` : 'sand',
    name: context.slender
      ? `Sand ${stretchName(context, ...where)} through ${context.grits.join(', ')}`
      : `Sand through ${context.grits.join(', ')}`,
    where,
    tool: 'abrasive paper',
    speed: context.speed('sanding', 'shaped'),
    ...(context.slender && { stretch: position }),
    work: {
      length: total((span) => span.to - span.from),
      surface: total((span) => context.sizeOf(span).surface),
      removed: total((span) => removedBySanding(context, span)),
      count: context.grits.length,
      diameter: Math.max(...spans.map((span) => diametersOf(span).greatest)),
    },
    why: `Each grit takes out the scratches of the one before${masked ? '; tenons are left as they came off the tool' : ''}; crisp edges are not rounded over.`,
    cautions: [cautions.dust, gritCaution(context.grits), journalCaution(context, ...where)],
  })
}

/** Sanding of all that is turned but tenons. */
export function sand(context: RouteContext): OperationDraft[] {
  if (context.grits.length === 0) return []
  return [...stretches(context)].map(([position, features]) => stretch(context, position, features))
}
