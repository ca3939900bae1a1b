import { badInput } from '../problem.ts'

/** What the shop has on record: pieces begun and how many of them were spoiled. */
export interface SpoilRecord {
  spoiled: number
  made: number
}

/**
 * The chance that a piece is spoiled, by the shop's own record on top of Beta(2, 48): 4 % before anything is
 * known, the rate of an experienced turner on a known profile (common practice, no source).
 *
 * @example spoilChance({ spoiled: 0, made: 0 }) // 0.04
 */
export function spoilChance({ spoiled, made }: SpoilRecord): number {
  if (!(spoiled >= 0 && made >= spoiled && Number.isFinite(made))) {
    throw badInput([
      {
        path: 'record',
        message: `spoiled must lie between 0 and made; read ${spoiled} spoiled of ${made} made`,
      },
    ])
  }
  return (2 + spoiled) / (50 + made)
}

/**
 * Chance that at least `need` of `cut` blanks come out good when each is spoiled with chance `spoil`: the upper
 * tail of the binomial distribution.
 *
 * @example chanceOfEnough(2, 1, 0.5) // 0.75
 */
export function chanceOfEnough(cut: number, need: number, spoil: number): number {
  if (need <= 0) return 1
  if (need > cut || spoil >= 1) return 0
  if (spoil <= 0) return 1
  let log = cut * Math.log1p(-spoil)
  let chance = 0
  // Terms by number spoiled, from none: each from the one before it, in logarithms so that none vanishes.
  for (let bad = 0; bad <= cut - need; bad++) {
    chance += Math.exp(log)
    log += Math.log((cut - bad) / (bad + 1)) + Math.log(spoil) - Math.log1p(-spoil)
  }
  return Math.min(1, chance)
}

/** A chance that equals the wanted one but for rounding is enough. */
const ROUNDING = 1e-12

/**
 * The fewest blanks to cut so that `need` come out good with the wanted confidence: smallest N with
 * P(Binomial(N, 1 − spoil) ≥ need) ≥ confidence. Same as `need` plus that quantile of the spoiled ones met
 * before the last good one (negative binomial), which is how it is summed.
 *
 * @example blanksToCut(12, 0.05, 0.95) // 14
 */
export function blanksToCut(need: number, spoil: number, confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) {
    throw badInput([
      { path: 'confidence', message: `must lie between 0 and 1, neither included; read ${confidence}` },
    ])
  }
  if (!(spoil >= 0 && spoil < 1)) {
    throw badInput([
      { path: 'record', message: `the chance of spoiling must be from 0 to below 1; read ${spoil}` },
    ])
  }
  if (need <= 0 || spoil === 0) return Math.max(0, need)
  let log = need * Math.log1p(-spoil)
  let chance = 0
  for (let bad = 0; ; bad++) {
    chance += Math.exp(log)
    if (chance >= confidence - ROUNDING) return need + bad
    log += Math.log((need + bad) / (bad + 1)) + Math.log(spoil)
  }
}

/**
 * Blanks to cut for a batch: as `blanksToCut`, and a set that has to match has one spare at least.
 *
 * @example blanksForBatch({ need: 8, match: true, record: { spoiled: 0, made: 0 }, confidence: 0.9 }) // 9
 */
export function blanksForBatch(batch: {
  need: number
  match: boolean
  record: SpoilRecord
  confidence: number
}): number {
  const count = blanksToCut(batch.need, spoilChance(batch.record), batch.confidence)
  return batch.match ? Math.max(count, batch.need + 1) : count
}
