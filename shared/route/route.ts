import type { SizedPlace } from '../turning/calipers.ts'
import { contextOf, type RouteContext } from './context.ts'
import type { RouteInput } from './input.ts'
import type { OperationKind } from './kinds.ts'
import { passesOf, withBreaks } from './mountings.ts'
import type { OperationDraft, Passes } from './operation.ts'
import { betweenMountings, makers } from './operations/index.ts'
import { inPrecedence, inWorkingOrder } from './order.ts'
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

/** Every time a blank goes on the lathe. */
const mountings: ReadonlySet<OperationKind> = new Set<OperationKind>([
  'mount',
  'remount',
  'return',
  'reverse',
])

/** Number of the mounting an operation belongs to; 0 before the first. */
function withPasses(ordered: OperationDraft[]): OperationDraft[] {
  let pass = 0
  return ordered.map((draft) => {
    if (mountings.has(draft.kind)) pass += 1
    return { ...draft, pass }
  })
}

/** The drafts in working order, each after what it waits for. */
const ordered = (context: RouteContext, drafts: OperationDraft[]): OperationDraft[] =>
  inPrecedence(withPrecedence(inWorkingOrder(context, drafts)))

/**
 * The order of work: every operation that the profile’s own features, its joints, its blank, the wood and the
 * shop’s tools ask for, each with tool, speed and ceiling, and after what it comes. `work` is for one blank.
 * Lengths mm, speeds rpm. A dangerous figure has its caution beside it; the makers of lathe and finish come first.
 */
export function routeFor(input: RouteInput): Route {
  const context = contextOf(input)
  const made = makers.flatMap((make) => make(context))
  const once = ordered(context, made)
  const passes = passesOf(context, once)
  const several = passes.chosen === 'several'
  const dried = several && context.roughedWet
  const all = dried ? ordered(context, [...made, ...betweenMountings.flatMap((make) => make(context))]) : once
  const operations = withPasses(several ? withBreaks(context, all, passes) : all)
  return {
    operations: withRestWays(operations),
    passes,
    places: placesOf(operations, context.sizedCuts),
    slender: context.slender,
    stripsDry: context.stripsDry,
  }
}
