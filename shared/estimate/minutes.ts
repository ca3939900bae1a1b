import type { Operation, OperationDraft, Stage, Work } from '../route/operation.ts'
import { baseMinutes } from './base-minutes.ts'

interface MinutesInput {
  /** Side hardness of the wood at 12 %, N; without it the wood counts as middling. */
  hardnessN?: number
  /** The shop's own factor on the minutes of a kind of operation; 1 when absent. */
  minuteFactors?: Record<string, number>
}

/** Side hardness of black walnut, N: the middling hardwood (Wood Handbook FPL-GTR-282, table 5-3a). */
const MIDDLING_N = 4500
/** Twice as hard takes a quarter longer; both figures common practice, no source. */
const HARDNESS_POWER = 0.32
/** The diameter the base minutes are for, mm, and how they grow with it (common practice, no source). */
const MIDDLING_MM = 50
const SIZE_POWER = 0.35

const within = (least: number, x: number, most: number): number => Math.min(most, Math.max(least, x))

/**
 * How much longer a wood takes than a middling hardwood, by its side hardness in N; never less for a harder
 * wood. Common practice, no source.
 *
 * @example woodFactor(4500) // 1
 */
export function woodFactor(hardnessN: number | undefined): number {
  return hardnessN === undefined ? 1 : within(0.6, (hardnessN / MIDDLING_N) ** HARDNESS_POWER, 2)
}

/**
 * How much longer the same cut takes on a larger diameter in mm, which runs slower; never less for a larger
 * one. Common practice, no source.
 *
 * @example sizeFactor(50) // 1
 */
export function sizeFactor(diameter: number): number {
  return diameter > 0 ? within(0.7, (diameter / MIDDLING_MM) ** SIZE_POWER, 3) : 0.7
}

/** Stages in which an edge or abrasive meets the wood, so that its hardness counts. */
const cutsWood = new Set<Stage>(['milling', 'joinery', 'turning', 'sanding', 'handwork'])
const onTheLathe = new Set<Stage>(['turning', 'sanding'])

function minutesOfCuts(kind: OperationDraft['kind'], work: Work): number {
  const { perCount = 0, per100Mm = 0, per100Cm2 = 0, per100Cm3 = 0 } = baseMinutes[kind]
  return (
    perCount * work.count +
    (per100Mm * work.length) / 100 +
    (per100Cm2 * work.surface) / 1e4 +
    (per100Cm3 * work.removed) / 1e5
  )
}

function minutesOf(draft: OperationDraft, wood: number, own: number): { once: number; each: number } {
  const base = baseMinutes[draft.kind]
  const factor =
    (cutsWood.has(draft.stage) ? wood : 1) *
    (onTheLathe.has(draft.stage) ? sizeFactor(draft.work.diameter) : 1)
  return {
    once: own * ((base.once ?? 0) + (base.oncePerCount ?? 0) * draft.work.count),
    each: own * (base.each + factor * minutesOfCuts(draft.kind, draft.work)),
  }
}

/**
 * The operations with their minutes: `minutesOnce` for the batch, `minutesEach` for each blank, as on the
 * tenth piece. More work, a harder wood or a larger diameter never takes less. Base figures: common practice,
 * no source (`base-minutes.ts`).
 */
export function timedOperations(drafts: OperationDraft[], input: MinutesInput): Operation[] {
  const wood = woodFactor(input.hardnessN)
  return drafts.map((draft) => {
    const factor = input.minuteFactors?.[draft.kind] ?? 1
    const { once, each } = minutesOf(draft, wood, factor)
    return { ...draft, minutesOnce: once, minutesEach: each, factor }
  })
}
