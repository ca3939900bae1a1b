import type { z } from 'zod'
import type { JobMatch, matchQuerySchema } from '../../shared/contract/match.ts'
import { matchSet } from '../../shared/matching/match.ts'
import { setOfReadings } from '../../shared/matching/set-of-readings.ts'
import type { Context } from '../context.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { pieceList } from '../storage/read/pieces.ts'
import { readingList } from '../storage/read/readings.ts'
import { startedPlan } from './find.ts'

/**
 * The match of a job's pieces by their latest readings of one stage; spoiled pieces are left out.
 * @throws Problem `wrong-state` while the batch is not started
 */
export async function matchOfJob(
  context: Context,
  job: StoredJob,
  { stage, choose }: z.output<typeof matchQuerySchema>,
): Promise<JobMatch> {
  const { plan } = await startedPlan(context, job)
  const pieces = await pieceList(context.db, job.id)
  const set = setOfReadings({
    units: plan.job.units,
    stations: plan.checkStations,
    pieces: pieces.filter((piece) => !piece.spoiled).map((piece) => piece.id),
    readings: await readingList(context.db, job.id, stage),
    stage,
    allowances: plan.allowances,
    film: plan.job.finish === 'film',
    ...(choose === undefined ? {} : { choose }),
  })
  const numbers = Object.fromEntries(pieces.map(({ id, number }) => [id, number]))
  return { ...matchSet(set), set, numbers }
}
