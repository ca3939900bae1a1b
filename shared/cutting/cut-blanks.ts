import type { CutOrder, CutPlan } from './board.ts'

/** Strips or sections with what is laid on them. */
interface Laid<B> {
  strips?: readonly { blanks: readonly B[] }[]
  sections?: readonly { blanks: readonly B[] }[]
}

/** Every blank of a board in the order of its strips or sections. */
export const blanksOn = <B>({ strips = [], sections = [] }: Laid<B>): B[] =>
  [...strips, ...sections].flatMap(({ blanks }) => blanks)

/** How many blanks an order wants altogether. */
export const blanksWanted = ({ blanks }: Pick<CutOrder, 'blanks'>): number =>
  blanks.reduce((sum, { count }) => sum + count, 0)

/** How many blanks a plan does not yield. */
export const blanksMissing = ({ unmet }: Pick<CutPlan, 'unmet'>): number =>
  unmet.reduce((sum, { count }) => sum + count, 0)
