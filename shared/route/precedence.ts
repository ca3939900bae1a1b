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
  crosscut: [['plane']],
  'face-layers': [['crosscut']],
  glue: [['face-layers'], ['crosscut']],
  'plane-blank': [['glue']],
  corners: [['plane-blank']],
  'plane-square': [['plane-blank']],
  'square-ends': [['plane-blank']],
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
  'plane-dried': [['dry']],
  remount: [['plane-dried']],
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
  blend: [['sand'], ...formed],
  end: [['blend'], ['sand'], ...formed],
  'sand-squares': [['end']],
  'check-set': [['sand-squares']],
  return: [['check-set']],
  'finish-on-lathe': [['return']],
  'joint-round': [['finish-on-lathe']],
  part: [['joint-round']],
  reverse: [['part']],
  'jam-face': [['reverse']],
  'pare-ends': [['part']],
  nub: [['part']],
  split: [['nub'], ['jam-face'], ['pare-ends']],
  finish: [['split']],
  pack: [['finish']],
}

/** Drafts of one kind in working order, and again by where they start, in nanometres. */
interface Alike {
  drafts: OperationDraft[]
  starts: { from: number; to: number; draft: OperationDraft }[]
  longest: number
}

type ByKind = Map<OperationKind, Alike>

function byKindOf(drafts: OperationDraft[]): ByKind {
  const byKind: ByKind = new Map()
  for (const draft of drafts) {
    const alike = byKind.get(draft.kind) ?? { drafts: [], starts: [], longest: 0 }
    byKind.set(draft.kind, alike)
    alike.drafts.push(draft)
    const [from, to] = draft.where
      ? draft.where.map(nm)
      : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    alike.starts.push({ from: from!, to: to!, draft })
    alike.longest = Math.max(alike.longest, to! - from!)
  }
  for (const alike of byKind.values()) alike.starts.sort((a, b) => a.from - b.from)
  return byKind
}

/** Those whose wood meets the draft’s own. */
function touching(draft: OperationDraft, { drafts, starts, longest }: Alike): OperationDraft[] {
  if (!draft.where) return drafts
  const [from, to] = draft.where.map(nm) as [number, number]
  let [low, high] = [0, starts.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (starts[middle]!.from < from - longest) low = middle + 1
    else high = middle
  }
  const found: OperationDraft[] = []
  for (let i = low; i < starts.length && starts[i]!.from <= to; i++)
    if (starts[i]!.to >= from && starts[i]!.draft !== draft) found.push(starts[i]!.draft)
  return found
}

function found(draft: OperationDraft, [kind, relation = 'all']: Need, byKind: ByKind): OperationDraft[] {
  const alike = byKind.get(kind)
  if (!alike) return []
  if (relation === 'first') return alike.drafts.slice(0, 1)
  const of = relation === 'touch' ? touching(draft, alike) : alike.drafts
  const { stretch } = draft
  if (stretch === undefined) return of
  // A later stretch cannot be waited for: sanding takes its own stretch, all others what is done by then.
  return of.filter(
    (other) =>
      other.stretch === undefined ||
      (draft.kind === 'sand' ? other.stretch === stretch : other.stretch <= stretch),
  )
}

/** Collects the keys a draft waits for as if it were of that kind; a kind is asked only once. */
function waitsFor(
  draft: OperationDraft,
  kind: OperationKind,
  byKind: ByKind,
  waiting: { keys: Set<string>; asked: Set<OperationKind> },
): void {
  if (waiting.asked.has(kind)) return
  waiting.asked.add(kind)
  let any = false
  for (const need of needs[kind]) {
    for (const other of found(draft, need, byKind)) {
      waiting.keys.add(other.key)
      any = true
    }
  }
  if (!any) for (const [missing] of needs[kind]) waitsFor(draft, missing, byKind, waiting)
}

/** For each stretch, what has to be done in the last one before it: its sanding, or else its cutting. */
function earlierStretches(drafts: OperationDraft[]): Map<number, OperationDraft[]> {
  const stretches = new Map<number, OperationDraft[]>()
  for (const draft of drafts) {
    if (draft.stretch === undefined) continue
    const stretch = stretches.get(draft.stretch)
    if (stretch) stretch.push(draft)
    else stretches.set(draft.stretch, [draft])
  }
  const order = [...stretches.keys()].sort((a, b) => a - b)
  return new Map(
    order.slice(1).map((at, i) => {
      const before = stretches.get(order[i]!)!
      const sanded = before.filter((draft) => draft.kind === 'sand')
      return [at, sanded.length > 0 ? sanded : before]
    }),
  )
}

/**
 * The keys each draft has to wait for. Drafts come in working order; on slender work every stretch also waits
 * until the one nearer the tail is finished.
 */
export function withPrecedence(drafts: OperationDraft[]): OperationDraft[] {
  const byKind = byKindOf(drafts)
  const earlier = earlierStretches(drafts)
  return drafts.map((draft) => {
    const keys = new Set<string>()
    waitsFor(draft, draft.kind, byKind, { keys, asked: new Set() })
    const before = draft.stretch === undefined ? [] : (earlier.get(draft.stretch) ?? [])
    for (const other of before) keys.add(other.key)
    return { ...draft, after: [...keys] }
  })
}
