import { diametersOf } from '../profile/radius.ts'
import { cautions } from './cautions.ts'
import type { RouteContext } from './context.ts'
import { draftOf } from './draft.ts'
import type { Feature } from './features.ts'
import type { OperationKind } from './kinds.ts'
import type { OperationDraft } from './operation.ts'
import { featureName } from './place-name.ts'
import { removedByForming } from './removed.ts'
import { journalCaution } from './steady.ts'
import type { ToolChoice } from './tool-choice.ts'

/** What one kind of forming cut adds to what all have in common. */
export interface FormingWords {
  tool: (feature: Feature) => ToolChoice
  why: (feature: Feature) => string
  caution?: (feature: Feature) => string | undefined
}

/** One operation for each feature of a kind: its place, tool, speed and how much there is to cut. */
export function formed(context: RouteContext, kind: OperationKind, words: FormingWords): OperationDraft[] {
  const speed = context.speed('shaping', 'roughed')
  return context.features
    .filter((feature) => feature.kind === kind)
    .map((feature) => {
      const { spans, from, to, index } = feature
      const { tool, cut, caution } = words.tool(feature)
      const rest = context.restAlong(from, to)
      const total = (of: (span: Feature['spans'][number]) => number): number =>
        context.parts * spans.reduce((sum, span) => sum + of(span), 0)
      return draftOf(kind, {
        key: `${kind}-s${index}`,
        name: `Cut ${featureName(context, feature)}`,
        where: [from, to],
        tool,
        cut,
        speed,
        ...rest,
        stretch: context.stretchOf(feature),
        spans: spans.map((span) => span.index),
        work: {
          length: total((span) => span.to - span.from),
          surface: total((span) => context.sizeOf(span).surface),
          removed: total((span) => removedByForming(context, span)),
          count: context.parts * spans.length,
          diameter: Math.max(...spans.map((span) => diametersOf(span).greatest)),
        },
        why: words.why(feature),
        cautions: [
          caution,
          words.caution?.(feature),
          journalCaution(context, from, to),
          rest.restThrough === undefined ? undefined : cautions.restStopped,
        ],
      })
    })
}
