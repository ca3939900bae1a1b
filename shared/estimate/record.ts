import { type OperationKind, operationKinds } from '../route/kinds.ts'
import { fitFactors } from './fit-factors.ts'
import { cellsOf, type KindCell, type TimedBatch } from './record-cells.ts'
import { settledStrays, strayOfBatches, usualStrays } from './record-strays.ts'

/** What the shop's own times say of one kind of operation. */
export interface KindRecord {
  /** What the minutes of this kind are multiplied by: the default, moved by the shop's own times. */
  factor: number
  /** The factor before any time was logged: the shop's own setting, else 1. */
  default: number
  /** What the times by themselves say; with few of them the factor stays nearer the default. */
  own: number
  /** Batches and times it rests on. */
  batches: number
  times: number
  /** Of these times, so far from the others that they do not count. */
  setAside: number
}

/** How far times stray from what is planned by the factors, as standard deviations of their logarithms. */
export interface RecordSpread {
  /** Batches it rests on; with few of them the figures stay near the defaults. */
  batches: number
  /** Of a whole batch: the day, the wood, what the figures do not know of the part. */
  common: number
  /** Of one kind of operation within a batch, over that. */
  kind: number
  /** From piece to piece. */
  each: number
}

/** What the times logged on the floor say of the shop. */
export interface ShopRecord {
  batches: number
  times: number
  setAside: number
  /** What the defaults are multiplied by for kinds that were never timed: how the shop goes as a whole. */
  overall: number
  kinds: Partial<Record<OperationKind, KindRecord>>
  spread: RecordSpread
}

/**
 * The factor on the minutes of every kind of operation: of those that were timed the record's, of the others the
 * shop's own setting or 1, moved as the shop goes as a whole. Without a record the settings as they are.
 *
 * @example learnedFactors({ sand: 1.2 }) // { sand: 1.2 }
 */
export function learnedFactors(
  settings: Record<string, number>,
  record?: Pick<ShopRecord, 'overall' | 'kinds' | 'times'>,
): Record<string, number> {
  if (!record || record.times === 0) return settings
  const kinds = Object.keys(operationKinds) as OperationKind[]
  return Object.fromEntries(
    kinds.map((kind) => [kind, record.kinds[kind]?.factor ?? (settings[kind] ?? 1) * record.overall]),
  )
}

const total = (cells: readonly KindCell[], of: 'times' | 'setAside'): number =>
  cells.reduce((sum, cell) => sum + cell[of], 0)

function kindRecord(cells: readonly KindCell[], setting: number, deviation: number): KindRecord {
  const weight = cells.reduce((sum, cell) => sum + cell.weight, 0)
  const own = cells.reduce((sum, cell) => sum + cell.weight * cell.mean, 0) / weight
  return {
    factor: setting * Math.exp(deviation),
    default: setting,
    own: setting * Math.exp(own),
    batches: cells.length,
    times: total(cells, 'times'),
    setAside: total(cells, 'setAside'),
  }
}

/**
 * What the times of these batches say of the shop. Few of them leave every factor near its default, many make it the
 * shop's own (shrinkage, `fit-factors.ts`); gross errors hardly count (`robust-mean.ts`). `minuteFactors` are the
 * shop's settings, `timeSpread` how far its batches are taken to stray before they are known.
 */
export function shopRecord(
  batches: readonly TimedBatch[],
  { minuteFactors: settings, timeSpread }: { minuteFactors: Record<string, number>; timeSpread: number },
): ShopRecord {
  const cells = cellsOf(batches, settings, Math.hypot(usualStrays.each, usualStrays.kind))
  if (cells.length === 0) {
    const spread = { batches: 0, ...usualStrays, common: timeSpread }
    return { batches: 0, times: 0, setAside: 0, overall: 1, kinds: {}, spread }
  }
  const strays = settledStrays(batches, cells)
  const fit = fitFactors(cells, strays)
  const kinds = [...fit.kinds].map(([kind, deviation]) => {
    const own = cells.filter((cell) => cell.kind === kind)
    return [kind, kindRecord(own, settings[kind] ?? 1, fit.shop + deviation)] as const
  })
  return {
    batches: fit.batches.size,
    times: total(cells, 'times'),
    setAside: total(cells, 'setAside'),
    overall: Math.exp(fit.shop),
    kinds: Object.fromEntries(kinds),
    spread: { batches: fit.batches.size, ...strays, common: strayOfBatches(fit, timeSpread) },
  }
}
