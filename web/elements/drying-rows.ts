import type { Piece, Weighing } from '../../shared/piece.ts'
import { type Plan, sawnAt } from '../../shared/plan.ts'
import { type DryingState, dryBelow, dryingState } from '../../shared/wood/drying.ts'
import { tooWet } from '../../shared/wood/moisture.ts'

/** One piece on the drying rack. */
export interface DryingRow extends DryingState {
  number: number
  latest?: Weighing
}

/** Whether the wood of a plan dries in the shop before it is finish-turned, rough-turned or in strips. */
export const driesInShop = (plan: Plan): boolean =>
  tooWet(Math.max(sawnAt(plan), plan.job.moisture), plan.job.serviceMoisture)

/** The pieces that are not spoiled, with how far each has dried. */
export function dryingRows(
  { job }: Pick<Plan, 'job'>,
  pieces: readonly Piece[],
  weighings: readonly Weighing[],
): DryingRow[] {
  const dryAt = dryBelow(job.serviceMoisture)
  return pieces
    .filter(({ spoiled }) => !spoiled)
    .map(({ number }) => {
      const own = weighings.filter((weighing) => weighing.number === number)
      const latest = own.at(-1)
      return { number, ...dryingState(own, dryAt), ...(latest && { latest }) }
    })
}

/** Numbers of pieces as people list them: `pieces 1 to 3 and 7`. */
export function piecesText(numbers: readonly number[]): string {
  const runs: [number, number][] = []
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  const texts = runs.map(([from, to]) => (from === to ? `${from}` : `${from} to ${to}`))
  const listed = texts.length > 1 ? `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}` : (texts[0] ?? '')
  return `${numbers.length === 1 ? 'piece' : 'pieces'} ${listed}`
}

/** Pieces whose weighing is due at a moment, ms since 1970, the never weighed among them; when the next is, where none is. */
export function weighingDue(rows: readonly DryingRow[], now: number): { due: number[]; next?: number } {
  const waiting = rows.filter(({ state }) => state !== 'dry')
  const due = waiting.filter(({ weighAgain = now }) => weighAgain <= now).map(({ number }) => number)
  const later = waiting.flatMap(({ weighAgain }) =>
    weighAgain !== undefined && weighAgain > now ? [weighAgain] : [],
  )
  return { due, ...(later.length > 0 && { next: Math.min(...later) }) }
}
