import { nm } from '../units/length.ts'
import type { OperationKind } from './kinds.ts'
import type { OperationDraft } from './operation.ts'

/** Which of a kind must come first: `all` of them, the `first` alone, or those that `touch` the same wood. */
type Relation = 'all' | 'first' | 'touch'
type Need = readonly [OperationKind, Relation?]

const formed: readonly Need[] = [
  ['straight'],
  ['step-face'],
  ['bead'],
  ['cove'],
  ['ovolo'],
  ['cavetto'],
  ['ogee'],
  ['curve'],
  ['taper'],
  ['tenon'],
]

/** Beside a place: its sizing cut, the straights it runs from and the faces it ends at. */
const sized: readonly Need[] = [['story-stick'], ['size', 'touch']]
const beside: readonly Need[] = [...sized, ['step-face', 'touch'], ['straight', 'touch']]

/**
 * What must come before each kind, and why it must: wood that is gone cannot be held, measured or marked. Where
 * a job has nothing of all that a kind waits for, what those would have waited for takes their place.
 */
const needs: Record<OperationKind, readonly Need[]> = {
  rip: [],
  'rest-strips': [['rip']],
  plane: [['rest-strips']],
  glue: [['plane']],
  crosscut: [['glue']],
  corners: [['crosscut']],
  'plane-square': [['crosscut']],
  'square-ends': [['crosscut']],
  mortise: [['square-ends'], ['plane-square']],
  bore: [['square-ends'], ['plane-square']],
  'cut-tenon': [['square-ends'], ['plane-square']],
  'strike-shoulders': [['mortise'], ['bore'], ['cut-tenon'], ['square-ends'], ['plane-square']],
  centres: [['corners'], ['square-ends'], ['plane-square']],
  mount: [['centres'], ['strike-shoulders'], ['mortise'], ['bore'], ['cut-tenon']],
  shoulder: [['mount']],
  rough: [['mount'], ['shoulder', 'touch']],
  label: [['rough', 'first']],
  dry: [['rough'], ['label']],
  remount: [['dry']],
  'true-up': [['remount']],
  journal: [['true-up']],
  'story-stick': [['journal'], ['true-up']],
  size: [['story-stick']],
  straight: sized,
  'step-face': [...sized, ['straight', 'touch']],
  bead: beside,
  cove: [...beside, ['bead', 'touch']],
  ovolo: beside,
  cavetto: beside,
  ogee: beside,
  curve: beside,
  taper: beside,
  tenon: [...sized, ['step-face', 'touch']],
  sand: formed,
  end: [['sand'], ...formed],
  'finish-on-lathe': [['end'], ['sand']],
  'joint-round': [['finish-on-lathe']],
  'check-set': [['joint-round']],
  part: [['check-set']],
  'jam-face': [['part']],
  nub: [['check-set'], ['part']],
  split: [['nub'], ['jam-face']],
  finish: [['split']],
  pack: [['finish']],
}

/** Kinds done stretch by stretch on slender work, from the tail to the driven end. */
export const byStretch: ReadonlySet<OperationKind> = new Set([
  'size',
  ...formed.map(([kind]) => kind),
  'sand',
] as OperationKind[])

const touches = (a: OperationDraft, b: OperationDraft): boolean =>
  !a.where || !b.where || (nm(a.where[0]) <= nm(b.where[1]) && nm(b.where[0]) <= nm(a.where[1]))

/** Drafts by kind, each kind in working order. */
type ByKind = Map<OperationKind, OperationDraft[]>

function found(
  draft: OperationDraft,
  [kind, relation = 'all']: Need,
  drafts: ByKind,
  slender: boolean,
): OperationDraft[] {
  let of = drafts.get(kind) ?? []
  if (relation === 'first') of = of.slice(0, 1)
  if (relation === 'touch') of = of.filter((other) => other !== draft && touches(draft, other))
  if (!slender || !byStretch.has(draft.kind) || !byStretch.has(kind)) return of
  // A later stretch cannot be waited for: sanding takes its own stretch, all others what is done by then.
  return of.filter((other) =>
    draft.kind === 'sand'
      ? other.restPosition === draft.restPosition
      : other.restPosition! <= draft.restPosition!,
  )
}

function waitsFor(
  draft: OperationDraft,
  kind: OperationKind,
  drafts: ByKind,
  slender: boolean,
  keys: Set<string>,
): void {
  const first = needs[kind].flatMap((need) => found(draft, need, drafts, slender))
  for (const other of first) keys.add(other.key)
  if (first.length === 0) for (const [missing] of needs[kind]) waitsFor(draft, missing, drafts, slender, keys)
}

/** The last stretch before this one whose sanding, or else whose cutting, has to be done. */
function earlierStretch(draft: OperationDraft, drafts: ByKind): OperationDraft[] {
  const nearer = [...drafts.values()]
    .flat()
    .filter((other) => byStretch.has(other.kind) && other.restPosition! < draft.restPosition!)
  const last = Math.max(0, ...nearer.map((other) => other.restPosition!))
  const there = nearer.filter((other) => other.restPosition === last)
  const sanded = there.filter((other) => other.kind === 'sand')
  return sanded.length > 0 ? sanded : there
}

/**
 * The keys each draft has to wait for. Drafts come in working order; on slender work every stretch also waits
 * until the one nearer the tail is finished.
 */
export function withPrecedence(drafts: OperationDraft[], slender: boolean): OperationDraft[] {
  const byKind: ByKind = new Map()
  for (const draft of drafts) byKind.set(draft.kind, [...(byKind.get(draft.kind) ?? []), draft])
  const stretches = new Map<number, OperationDraft[]>()
  return drafts.map((draft) => {
    const keys = new Set<string>()
    waitsFor(draft, draft.kind, byKind, slender, keys)
    if (slender && byStretch.has(draft.kind)) {
      const at = draft.restPosition!
      const earlier = stretches.get(at) ?? earlierStretch(draft, byKind)
      stretches.set(at, earlier)
      for (const other of earlier) keys.add(other.key)
    }
    return { ...draft, after: [...keys] }
  })
}
