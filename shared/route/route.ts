import type { SizedPlace } from '../turning/calipers.ts'
import { MOISTURE_OVER_SERVICE } from '../wood/moisture.ts'
import { contextOf, type RouteContext } from './context.ts'
import type { RouteInput } from './input.ts'
import type { OperationKind } from './kinds.ts'
import type { OperationDraft, Passes } from './operation.ts'
import { betweenMountings, makers } from './operations/index.ts'
import { inPrecedence, inWorkingOrder } from './order.ts'
import { passesFor } from './passes.ts'
import { placesOf } from './places.ts'
import { withPrecedence } from './precedence.ts'
import { withRestWays } from './rest-moves.ts'

/** The order of work of a job. */
export interface Route {
  operations: OperationDraft[]
  passes: Passes
  /** What the calipers are set to, and where: for `calipersFor`. */
  places: SizedPlace[]
  /** Finished stretch by stretch, so that every piece is sized in one order. */
  slender: boolean
  /** Strips lie until they are dry. */
  stripsDry: boolean
}

const roughingKinds: ReadonlySet<OperationKind> = new Set(['shoulder', 'rough'] as OperationKind[])
const firstMounting: ReadonlySet<OperationKind> = new Set([
  'mount',
  'shoulder',
  'rough',
  'label',
  'dry',
  'plane-dried',
] as OperationKind[])

const different = (drafts: OperationDraft[]): { tools: number; speeds: number } => ({
  tools: new Set(drafts.map((draft) => draft.tool)).size,
  speeds: new Set(drafts.flatMap((draft) => draft.rpm ?? [])).size,
})

function passesOf(context: RouteContext, drafts: OperationDraft[]): Passes {
  const turning = drafts.filter((draft) => draft.cut !== undefined)
  if (turning.length === 0) return { chosen: 'one', one: 0, several: 0, why: 'Nothing is turned.' }
  const rough = turning.filter((draft) => roughingKinds.has(draft.kind))
  const rest = turning.filter((draft) => !roughingKinds.has(draft.kind))
  return passesFor({
    pieces: context.blank.count,
    roughing: different(rough),
    finishing: different(rest),
    both: different(turning),
    places: placesOf(drafts),
    oneWay: context.slender,
    calipers: context.calipers,
    costs: context.costs,
    ...(context.roughedWet && {
      forcedBy: `At ${context.moisture} % the wood is more than ${MOISTURE_OVER_SERVICE} % above the ${context.serviceMoisture} % it will have in use (common practice, no source): rough all, dry, then finish.`,
    }),
  })
}

/** Number of the mounting an operation belongs to; 0 before the first. */
function withPasses(ordered: OperationDraft[], several: boolean): OperationDraft[] {
  const mounted = ordered.findIndex((draft) => draft.kind === 'mount')
  const again = (['return', 'reverse'] as const)
    .map((kind) => ordered.findIndex((draft) => draft.kind === kind))
    .filter((at) => at >= 0)
  const last = several ? 2 : 1
  return ordered.map((draft, i) => {
    if (mounted < 0 || i < mounted) return { ...draft, pass: 0 }
    const since = again.filter((at) => i >= at).length
    return { ...draft, pass: firstMounting.has(draft.kind) ? 1 : last + since }
  })
}

/**
 * The order of work: every operation that the profile’s own features, its joints, its blank, the wood and the
 * shop’s tools ask for, each with tool, speed and ceiling, and after what it comes. `work` is for one blank.
 * Lengths mm, speeds rpm. A dangerous figure has its caution beside it; the makers of lathe and finish come first.
 */
export function routeFor(input: RouteInput): Route {
  const context = contextOf(input)
  const drafts = inWorkingOrder(
    context,
    makers.flatMap((make) => make(context)),
  )
  const passes = passesOf(context, drafts)
  const several = passes.chosen === 'several'
  const all = several ? [...drafts, ...betweenMountings.flatMap((make) => make(context))] : drafts
  const waiting = withPrecedence(inWorkingOrder(context, all))
  const ordered = inPrecedence(waiting)
  return {
    operations: withRestWays(withPasses(ordered, several)),
    passes,
    places: placesOf(ordered, context.sizedCuts),
    slender: context.slender,
    stripsDry: context.stripsDry,
  }
}
