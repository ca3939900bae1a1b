import type { LoggedStep } from '../../../shared/estimate/planned-actual.ts'
import type { Db } from '../database.ts'

const columns = ['steps.job_id', 'steps.operation', 'steps.minutes', 'steps.at', 'pieces.number'] as const

const stepsThatCount = (db: Db) =>
  db
    .selectFrom('steps')
    .innerJoin('pieces', 'pieces.id', 'steps.piece_id')
    .select(columns)
    .where('steps.taken_back_at', 'is', null)
    .orderBy('steps.job_id')
    .orderBy('steps.at')
    .orderBy('steps.key')

export const loggedStepsQuery = (db: Db, job: string) => stepsThatCount(db).where('steps.job_id', '=', job)

type Row = Awaited<ReturnType<ReturnType<typeof stepsThatCount>['execute']>>[number]

const loggedStep = ({ operation, minutes, at, number }: Row): LoggedStep => ({
  piece: number,
  operation,
  ...(minutes === null ? {} : { minutes }),
  at,
})

/** What was logged on the pieces of a job and not taken back, by their numbers. */
export const loggedSteps = async (db: Db, job: string): Promise<LoggedStep[]> =>
  (await loggedStepsQuery(db, job).execute()).map(loggedStep)

/** The same of every job that was not deleted and has a time. */
export async function loggedStepsByJob(db: Db): Promise<Map<string, LoggedStep[]>> {
  const timed = db
    .selectFrom('jobs')
    .select('id')
    .where('deleted_at', 'is', null)
    .where(({ exists, selectFrom }) =>
      exists(
        selectFrom('steps')
          .select('steps.key')
          .whereRef('steps.job_id', '=', 'jobs.id')
          .where('steps.minutes', 'is not', null)
          .where('steps.taken_back_at', 'is', null),
      ),
    )
  const byJob = new Map<string, LoggedStep[]>()
  for (const row of await stepsThatCount(db).where('steps.job_id', 'in', timed).execute()) {
    const known = byJob.get(row.job_id)
    if (known) known.push(loggedStep(row))
    else byJob.set(row.job_id, [loggedStep(row)])
  }
  return byJob
}

/** A mark that changes with every time that is logged, taken back, or hidden with its job. */
export async function markOfTimes(db: Db): Promise<string> {
  const steps = await db
    .selectFrom('steps')
    .select(({ fn }) => [
      fn.countAll().as('all'),
      fn.count('minutes').as('timed'),
      fn.count('taken_back_at').as('back'),
      fn.max('stored_at').as('last'),
      fn.max('taken_back_at').as('lastBack'),
    ])
    .executeTakeFirstOrThrow()
  const jobs = await db
    .selectFrom('jobs')
    .select(({ fn }) => [fn.count('deleted_at').as('gone'), fn.max('deleted_at').as('last')])
    .executeTakeFirstOrThrow()
  return JSON.stringify([steps, jobs])
}
