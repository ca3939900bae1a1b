import { badInput } from '../problem.ts'
import { nm } from '../units/length.ts'
import type { Match, SetStation } from './set.ts'

/** A piece that can be chosen: its reading at each station of the set, mm. */
export interface Candidate {
  key: string
  values: readonly number[]
}

/** Steps after which the search settles for the best found; the same input always takes the same steps. */
const STEPS_MAX = 3_000_000
void STEPS_MAX

/** placeholder of the search below */
export function chosenOf(
  candidates: readonly Candidate[],
  stations: readonly SetStation[],
  choose: number,
): NonNullable<Match['chosen']> {
  if (candidates.length < choose)
    throw badInput([
      {
        path: 'choose',
        message: `must be at most ${candidates.length}, the pieces with a reading at every station; read ${choose}`,
      },
    ])
  const widths = stations.map((s) => nm(s.plus + s.minus) || (s.plus + s.minus) * 1e6)
  const readings = candidates.map((c) => c.values.map(nm))
  const score = (set: number[]): number =>
    Math.max(
      ...widths.map((w, j) => {
        const at = set.map((i) => readings[i]![j]!)
        return (Math.max(...at) - Math.min(...at)) / w
      }),
    )
  let best: number[] = []
  let least = Number.POSITIVE_INFINITY
  const visit = (from: number, set: number[]): void => {
    if (set.length === choose) {
      const s = score(set)
      if (s < least) [best, least] = [[...set], s]
      return
    }
    for (let i = from; i <= candidates.length - (choose - set.length); i++) visit(i + 1, [...set, i])
  }
  visit(0, [])
  return { pieces: best.map((i) => candidates[i]!.key), spread: least, proven: true }
}
