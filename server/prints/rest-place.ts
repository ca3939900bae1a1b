import type { Plan } from '../../shared/plan.ts'

/** Where the steady rest goes, mm from the foot; several parts from one blank whip as the stick they are in. */
export const restPlace = ({ part, blank }: Pick<Plan, 'part' | 'blank'>): number | undefined =>
  blank.stock.perBlank === 1 && part.whip?.rest !== 'none' ? part.whip?.restAt : undefined
