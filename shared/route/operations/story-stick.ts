import { inches, nm } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Brads in the stick stand out so far. Milton & Wohlers (1919) ch. VII. */
export const BRADS = inches(1 / 8)

/** Every position of the profile struck at once on the cylinder. */
export function storyStick(context: RouteContext): OperationDraft[] {
  const { turned, parts } = context
  if (turned.length === 0) return []
  const marks = new Set(turned.flatMap((span) => [nm(span.from), nm(span.to)])).size
  const diameter = Math.max(...context.zones.map((zone) => context.roughDiameter(zone)))
  const rest = context.restAlong(turned[0]!.from, turned.at(-1)!.to)
  return [
    draftOf('story-stick', {
      name:
        parts > 1
          ? `Strike all marks from the story stick, ${parts} parts`
          : 'Strike all marks from the story stick',
      where: [turned[0]!.from, turned.at(-1)!.to],
      tool: 'story stick',
      speed: context.gaugingSpeed(),
      ...rest,
      work: { length: parts * context.length, count: parts * marks, diameter },
      why: `All at one setting and before any detail, the brads standing out ${context.text(BRADS)}: marks struck one from another creep.`,
      cautions: [rest.restThrough === undefined ? undefined : cautions.restStopped],
    }),
  ]
}
