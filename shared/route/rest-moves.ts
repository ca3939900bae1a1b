import type { OperationKind } from './kinds.ts'
import type { Operation, OperationDraft } from './operation.ts'

/** Every mounting sets the rest in its first position and starts with the speed down. */
const mountings: ReadonlySet<OperationKind> = new Set<OperationKind>([
  'mount',
  'remount',
  'return',
  'reverse',
])
/** Cut from the tail towards the driven end, whatever way the rest stands. */
const fromTheTail: ReadonlySet<OperationKind> = new Set<OperationKind>(['rough', 'true-up'])

type OnRest = Pick<Operation, 'kind' | 'stage' | 'restPosition' | 'restThrough'>
/** The position of the rest, or `away` while it is sanded and coated. */
type Standing = number | 'away' | undefined

/** Where the rest stands before and after an operation; the same as before where it says nothing of it. */
const wayOf = ({ stage, restPosition, restThrough }: OnRest): [Standing, Standing] => {
  if (restPosition !== undefined) return [restPosition, restThrough ?? restPosition]
  return stage === 'sanding' || stage === 'finish' ? ['away', 'away'] : [undefined, undefined]
}

/**
 * How often the tool rest is moved while one blank goes through these operations in turn: each is a stop, a re-gap and
 * a turn by hand. Taken away and brought back count too; setting it at a mounting belongs to the mounting.
 *
 * @example restMoves([{ kind: 'mount', stage: 'set-up', restPosition: 1 }, { kind: 'rough', stage: 'turning', restPosition: 1, restThrough: 3 }]) // 2
 */
export function restMoves(operations: readonly OnRest[]): number {
  let standing: Standing
  let moves = 0
  for (const operation of operations) {
    const [from, to] = wayOf(operation)
    if (from === undefined) continue
    if (standing !== undefined && standing !== from && !mountings.has(operation.kind)) moves += 1
    if (typeof from === 'number' && typeof to === 'number') moves += Math.abs(to - from)
    standing = to
  }
  return moves
}

/**
 * How often another speed is set while one blank goes through these operations in turn. Every mounting sets its own,
 * whatever the last blank ran at; speeds rpm.
 *
 * @example speedChanges([{ kind: 'mount', rpm: 400 }, { kind: 'rough', rpm: 600 }, { kind: 'size', rpm: 600 }]) // 2
 */
export function speedChanges(operations: readonly Pick<Operation, 'kind' | 'rpm'>[]): number {
  let running: number | undefined
  let changes = 0
  for (const { kind, rpm } of operations) {
    if (rpm === undefined) continue
    if (rpm !== running || mountings.has(kind)) changes += 1
    running = rpm
  }
  return changes
}

/** The operations in their order, each that goes over several positions of the rest begun where the rest stands nearer. */
export function withRestWays(ordered: OperationDraft[]): OperationDraft[] {
  let standing: Standing
  return ordered.map((draft) => {
    const [from, to] = wayOf(draft)
    const turned =
      typeof from === 'number' &&
      typeof to === 'number' &&
      typeof standing === 'number' &&
      !fromTheTail.has(draft.kind) &&
      Math.abs(standing - to) < Math.abs(standing - from)
    if (from !== undefined) standing = turned ? from : to
    return turned ? { ...draft, restPosition: draft.restThrough!, restThrough: draft.restPosition! } : draft
  })
}
