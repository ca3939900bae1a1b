import type { RouteContext } from './context.ts'
import { type OperationKind, operationKinds } from './kinds.ts'
import type { OperationDraft } from './operation.ts'

const kindRank = new Map(Object.keys(operationKinds).map((kind, i) => [kind as OperationKind, i]))

/** Where a turner would put it: by phase, stretch, kind, from thick to thin, from the tail on. */
function rankOf(context: RouteContext, draft: OperationDraft): number[] {
  const own = kindRank.get(draft.kind)!
  const { stretch } = draft
  const at = draft.where ? (draft.where[0] + draft.where[1]) / 2 : 0
  const fromTail = draft.kind === 'rough' || draft.kind === 'shoulder' || draft.kind === 'true-up'
  return [
    stretch === undefined ? own : kindRank.get('size')!,
    stretch ?? 0,
    own,
    fromTail ? 0 : -(draft.caliper ?? draft.work.diameter),
    context.fromTail(at),
  ]
}

function compare(a: number[], b: number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!
  return 0
}

/** The drafts as a turner would take them up, before anything is said of what must wait. */
export function inWorkingOrder(context: RouteContext, drafts: OperationDraft[]): OperationDraft[] {
  return drafts
    .map((draft) => ({ draft, rank: rankOf(context, draft) }))
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
