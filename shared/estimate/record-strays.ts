import { median } from '../median.ts'
import { type Cell, type Fit, fitFactors, type Strays } from './fit-factors.ts'
import { deviationOf, entryOf, isTimed, type TimedBatch, type TimedStep } from './record-cells.ts'

/** How far times stray before any are known, as standard deviations of logarithms (common practice, no source). */
export const usualStrays: Strays = { common: 0.1, kind: 0.1, each: 0.2 }

/** As many times, cells or batches the usual figures weigh as (common practice, no source). */
const WEIGHS = { common: 5, kind: 10, each: 20 }
/** Nobody is steadier than this (common practice, no source). */
const LEAST = 0.02

/** From the median of absolute deviations to a standard deviation, of the normal distribution. */
const FROM_MEDIAN = 1.4826

const blended = (usual: number, weighs: number, variance: number, count: number): number =>
  Math.max(LEAST, Math.sqrt((weighs * usual ** 2 + count * Math.max(0, variance)) / (weighs + count)))

/** The steps of one operation in one batch that were logged at one press, as one figure of the time of a piece. */
function entriesOf(steps: readonly TimedStep[]): { mean: number; pieces: number }[] {
  const entries = new Map<string, number[]>()
  for (const step of steps) {
    const key = entryOf(step)
    entries.set(key, [...(entries.get(key) ?? []), deviationOf(step, {})])
  }
  return [...entries.values()].map((all) => ({
    mean: all.reduce((sum, x) => sum + x, 0) / all.length,
    pieces: all.length,
  }))
}

/** How far the times of one operation stray from piece to piece, with as many degrees of freedom. */
function fromPieceToPiece(batches: readonly TimedBatch[]): { sd: number; freedom: number } {
  const rests: number[] = []
  let freedom = 0
  for (const { steps } of batches) {
    const timed = steps.filter(isTimed)
    for (const operation of new Set(timed.map((step) => step.operation))) {
      const entries = entriesOf(timed.filter((step) => step.operation === operation))
      if (entries.length < 2) continue
      const middle = median(entries.map(({ mean }) => mean))
      const widened = Math.sqrt(entries.length / (entries.length - 1))
      for (const { mean, pieces } of entries)
        rests.push(Math.abs(mean - middle) * widened * Math.sqrt(pieces))
      freedom += entries.length - 1
    }
  }
  return { sd: freedom === 0 ? 0 : FROM_MEDIAN * median(rests), freedom }
}

/**
 * How far batches as a whole stray by a fit, starting from `usual`; a batch far out counts no more than one at two
 * and a half times that.
 */
export function strayOfBatches(fit: Fit, usual: number): number {
  const most = (2.5 * usual) ** 2
  const squares = [...fit.batches.values()].map((deviation) => Math.min(most, deviation ** 2))
  const freedom = squares.length - 1
  const variance = squares.reduce((sum, square) => sum + square, 0) / Math.max(1, freedom)
  return blended(usual, WEIGHS.common, variance, freedom)
}

/** The same of kinds within a batch and of batches, from what a fit leaves. */
function fromFit(cells: readonly Cell[], fit: Fit, each: number): Strays {
  const freedom = Math.max(0, cells.length - fit.kinds.size - fit.batches.size + 1)
  const sampling = cells.reduce((sum, { weight }) => sum + each ** 2 / weight, 0) / cells.length
  const rest = (FROM_MEDIAN * median(fit.rest.map(Math.abs))) ** 2 * (cells.length / Math.max(1, freedom))
  return {
    common: strayOfBatches(fit, usualStrays.common),
    kind: blended(usualStrays.kind, WEIGHS.kind, rest - sampling, freedom),
    each,
  }
}

/** How far this shop's times stray: the usual figures while little is known, its own in the end. */
export function settledStrays(batches: readonly TimedBatch[], cells: readonly Cell[]): Strays {
  const { sd, freedom } = fromPieceToPiece(batches)
  const each = blended(usualStrays.each, WEIGHS.each, sd ** 2, freedom)
  let strays: Strays = { ...usualStrays, each }
  for (let round = 0; round < 5; round++) strays = fromFit(cells, fitFactors(cells, strays), each)
  return strays
}
