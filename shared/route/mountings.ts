import { MOISTURE_OVER_SERVICE } from '../wood/moisture.ts'
import type { RouteContext } from './context.ts'
import type { OperationKind } from './kinds.ts'
import type { OperationDraft, Passes } from './operation.ts'
import { remountedFor } from './operations/remount.ts'
import { type PassInput, passesFor } from './passes.ts'
import { placesOf } from './places.ts'

/** Where the first stay on the lathe ends: the set is checked, or the part is cut off. */
const lastBefore: ReadonlySet<OperationKind> = new Set<OperationKind>([
  'check-set',
  'return',
  'part',
  'reverse',
])

/** What is done to a blank from its mounting until it comes off for good, the lathe turning or stopped. */
function onTheLathe(ordered: readonly OperationDraft[]): OperationDraft[] {
  const mounted = ordered.findIndex(({ kind }) => kind === 'mount')
  if (mounted < 0) return []
  const off = ordered.findIndex(({ kind }, i) => i > mounted && lastBefore.has(kind))
  return ordered
    .slice(mounted + 1, off < 0 ? undefined : off)
    .filter(({ stage }) => stage === 'turning' || stage === 'sanding' || stage === 'layout')
}

/** Held by one end, wood that was taken out does not run as it did. Common practice, no source. */
const HELD_FAST =
  'What is taken out of it does not come back as true: each blank stays on the lathe until it is turned.'
/** Slender work that was taken off has lost its steady and its truth. Common practice, no source. */
const SLENDER =
  'Slender work stays on the lathe once its steady rest is set: taken off, it does not run as it did.'

/**
 * Whether a blank may be taken off after each operation. Between centres it comes back to its own marks; not once the
 * steady rest of slender work is set, and not once an end is turned to a nub that would have to bear it again.
 */
function breaksAllowed(
  context: RouteContext,
  operations: readonly OperationDraft[],
): Pick<PassInput, 'mayBreak' | 'whyNoBreak'> {
  const betweenCentres = context.mount === 'spur' || context.mount === 'cup'
  const thin = operations.findIndex(({ stretch, kind }) => stretch !== undefined || kind === 'journal')
  const nub = operations.findIndex(({ kind }) => kind === 'end')
  const last = Math.min(...[thin, nub, operations.length].filter((at) => at >= 0))
  const mayBreak = operations.map((_, i) => betweenCentres && i + 1 <= last)
  return { mayBreak, ...(betweenCentres ? thin >= 0 && { whyNoBreak: SLENDER } : { whyNoBreak: HELD_FAST }) }
}

/** Index of the last that is so, -1 where none is. */
const lastOf = (drafts: readonly OperationDraft[], isSo: (draft: OperationDraft) => boolean): number =>
  drafts.reduce((last, draft, i) => (isSo(draft) ? i : last), -1)

const roughing: ReadonlySet<OperationKind> = new Set<OperationKind>(['shoulder', 'rough'])

/** What wood too wet to be finished at once forces: all roughed, then dried. */
function forcedOf(context: RouteContext, operations: readonly OperationDraft[]): Pick<PassInput, 'forced'> {
  const { roughedWet, moisture, serviceMoisture } = context
  const after = lastOf(operations, ({ kind }) => roughing.has(kind))
  if (!roughedWet || after < 0 || after === operations.length - 1) return {}
  const why = `At ${moisture} % the wood is more than ${MOISTURE_OVER_SERVICE} % above the ${serviceMoisture} % it will have in use (common practice, no source): rough all, dry, then finish.`
  return { forced: { after, why } }
}

/** One mounting a blank or several, for a work in its order. */
export function passesOf(context: RouteContext, ordered: readonly OperationDraft[]): Passes {
  const operations = onTheLathe(ordered)
  const mount = ordered.find(({ kind }) => kind === 'mount')
  if (!mount || operations.length === 0)
    return { chosen: 'one', one: 0, several: 0, why: 'Nothing is turned.' }
  return passesFor({
    pieces: context.blank.count,
    mount,
    operations,
    ...breaksAllowed(context, operations),
    ...forcedOf(context, operations),
    places: placesOf([...ordered]),
    calipers: context.calipers,
    ...(context.gaugeMinutes !== undefined && { gaugeMinutes: context.gaugeMinutes }),
    ...(context.costs && { costs: context.costs }),
  })
}

/**
 * The operations with the blank taken off and mounted again wherever the passes say so: what comes before a break is
 * done on all blanks before what comes after it. Where all dry in between, that mounting is there already.
 */
export function withBreaks(
  context: RouteContext,
  ordered: OperationDraft[],
  { segments = [] }: Passes,
): OperationDraft[] {
  let result = ordered
  segments.slice(1).forEach(({ operations: [first] }, i) => {
    const at = result.findIndex(({ key }) => key === first)
    const before = result.slice(0, at)
    const since = lastOf(before, ({ kind }) => kind === 'mount' || kind === 'remount')
    const done = new Set(segments[i]!.operations)
    // The mounting that follows the drying stands between the two segments already.
    if (before[since]?.kind === 'remount' && !before.slice(since).some(({ key }) => done.has(key))) return
    const remounted = { ...remountedFor(context, i + 2), after: before.slice(since).map(({ key }) => key) }
    const later = new Set(segments.slice(i + 1).flatMap(({ operations }) => operations))
    const rest = result
      .slice(at)
      .map((draft) => (later.has(draft.key) ? { ...draft, after: [...draft.after, remounted.key] } : draft))
    result = [...before, remounted, ...rest]
  })
  return result
}
