import { diametersOf } from '../profile/radius.ts'
import { nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import { type OperationKind, operationKinds } from './kinds.ts'
import type { OperationDraft } from './operation.ts'

const kindRank = new Map(Object.keys(operationKinds).map((kind, i) => [kind as OperationKind, i]))

/**
 * A place with less than this share of the thickest beside it is thin: half as thick is a sixteenth as stiff. Where to
 * draw the line: common practice, no source.
 */
const THIN = 0.5

/** Least diameter each forming cut leaves, mm, and whether the place is thin; by the key of its operation. */
function thinnessOf(context: RouteContext): Map<string, { least: number; thin: boolean }> {
  return new Map(
    context.features.map(({ kind, index, spans, from, to }) => {
      const least = Math.min(...spans.map((span) => diametersOf(span).least))
      const thickest = context.zoneAt((from + to) / 2).maxDiameter
      return [`${kind}-s${index}`, { least, thin: nm(least) < nm(THIN * thickest) }]
    }),
  )
}

/** Where a turner would put it: by phase, stretch, kind with thin places last, from thick to thin, from the tail on. */
function rankOf(
  context: RouteContext,
  draft: OperationDraft,
  formed: { least: number; thin: boolean } | undefined,
): number[] {
  const own = formed?.thin ? kindRank.get('tenon')! + 0.5 : kindRank.get(draft.kind)!
  const { stretch } = draft
  const at = draft.where ? (draft.where[0] + draft.where[1]) / 2 : 0
  const fromTail = draft.kind === 'rough' || draft.kind === 'shoulder' || draft.kind === 'true-up'
  return [
    stretch === undefined ? own : kindRank.get('size')!,
    stretch ?? 0,
    own,
    fromTail ? 0 : -(draft.caliper ?? formed?.least ?? draft.work.diameter),
    context.fromTail(at),
  ]
}

function compare(a: number[], b: number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!
  return 0
}

/** The drafts as a turner would take them up, before anything is said of what must wait. */
export function inWorkingOrder(context: RouteContext, drafts: OperationDraft[]): OperationDraft[] {
  const thinness = thinnessOf(context)
  return drafts
    .map((draft) => ({ draft, rank: rankOf(context, draft, thinness.get(draft.key)) }))
    .sort((a, b) => compare(a.rank, b.rank))
    .map(({ draft }) => draft)
}

/**
 * The drafts so that each comes after all it waits for, otherwise as they stand.
 * @throws Error when the waiting goes round in a circle: our own mistake, never the job’s
 */
export function inPrecedence(drafts: OperationDraft[]): OperationDraft[] {
  const byKey = new Map(drafts.map((draft) => [draft.key, draft]))
  const state = new Map<string, 'open' | 'done'>()
  const ordered: OperationDraft[] = []
  const visit = (draft: OperationDraft): void => {
    if (state.get(draft.key) === 'done') return
    if (state.get(draft.key) === 'open') throw new Error(`operation ${draft.key} waits for itself`)
    state.set(draft.key, 'open')
    for (const key of draft.after) visit(byKey.get(key)!)
    state.set(draft.key, 'done')
    ordered.push(draft)
  }
  for (const draft of drafts) visit(draft)
  return ordered
}
