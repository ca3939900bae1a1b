import { inARow, type Moments } from './three-point.ts'

/** The 90 % point of the standard normal distribution (NIST/SEMATECH e-Handbook, table 1.3.6.7.1). */
export const Z90 = 1.2815515655446004

/**
 * Minutes that a batch stays under one time in ten, one in two and nine in ten, when its time is lognormal
 * with this mean and its standard deviation is `spread` times the mean. Closed form:
 * σ² = ln(1 + spread²), median = mean / √(1 + spread²), p90 = median · e^(1.2816 σ).
 *
 * @example timeRange(100, 0) // {"p10": 100, "p50": 100, "p90": 100}
 */
export function timeRange(mean: number, spread: number): { p10: number; p50: number; p90: number } {
  const sigma = Math.sqrt(Math.log1p(spread * spread))
  const p50 = mean / Math.sqrt(1 + spread * spread)
  return { p10: p50 * Math.exp(-Z90 * sigma), p50, p90: p50 * Math.exp(Z90 * sigma) }
}

/** What strays in a batch: minutes of all pieces by operation. */
export interface Straying {
  minutes: number
  pieces: number
  common: number
  kind?: number
  each?: number
}

/**
 * Standard deviation of a batch’s time over its mean, from what strays together and what strays by itself: the whole
 * batch, each kind of operation, each piece. Independent parts add as squares, so that pieces even each other out and
 * what is common stays.
 *
 * @example batchSpread([{ kind: 'rough', minutes: 100 }], { minutes: 100, pieces: 4, common: 0.3, each: 0.8 }) // 0.5
 */
export function batchSpread(
  works: readonly { kind: string; minutes: number }[],
  { minutes, pieces, common, kind = 0, each = 0 }: Straying,
): number {
  if (minutes <= 0) return common
  const byKind = new Map<string, number>()
  for (const work of works) byKind.set(work.kind, (byKind.get(work.kind) ?? 0) + work.minutes)
  const squares = (all: Iterable<number>): number => [...all].reduce((sum, m) => sum + (m / minutes) ** 2, 0)
  const ofKinds = kind ** 2 * squares(byKind.values())
  const ofPieces = (each ** 2 / pieces) * squares(works.map((work) => work.minutes))
  return Math.sqrt(common ** 2 + ofKinds + ofPieces)
}

/** Whole days that one batch in ten, one in two and nine in ten take: work and waits independent, their sum normal. */
export function daysRange(work: Moments, waits: Moments): { p10: number; p50: number; p90: number } {
  const { mean, sd } = inARow([work, waits])
  const whole = (days: number): number => Math.max(0, Math.ceil(days - 1e-9))
  return { p10: whole(mean - Z90 * sd), p50: whole(mean), p90: whole(mean + Z90 * sd) }
}
