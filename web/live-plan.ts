import { type Job, readJob } from '../shared/job.ts'
import { type Plan, planJob } from '../shared/plan.ts'
import { type Breach, Problem } from '../shared/problem.ts'
import { sentFile } from './job-entries.ts'
import type { JobFile } from './job-file.ts'
import type { ShopAndWoods } from './store.ts'

/** What can be told of a job while it is being written. */
export interface LivePlan {
  /** The job as far as it can be drawn. */
  job?: Job
  /** Only when nothing but the name is missing. */
  plan?: Plan
  errors: Breach[]
}

/** A name for planning while none is entered. */
const UNNAMED = '…'

/** Reads and plans the file as the server will, with every error at its field. */
export function livePlan(file: JobFile, { shop, woods }: ShopAndWoods): LivePlan {
  const { job, errors } = read(file)
  if (job) return { job, ...planned(job) }
  const named = { ...file, name: file.name?.trim() ? file.name : UNNAMED }
  const second = read(named)
  if (second.job) {
    const live = planned(second.job)
    return { job: second.job, ...(live.plan && { plan: live.plan }), errors: [...errors, ...live.errors] }
  }
  const drawn = read({ name: UNNAMED, units: file.units, species: 'any', quantity: 1, profile: file.profile })
  return { ...(drawn.job && { job: drawn.job }), errors }

  function planned(written: Job): { plan?: Plan; errors: Breach[] } {
    try {
      return { plan: planJob(written, shop, woods), errors: [] }
    } catch (problem) {
      return { errors: breachesOf(problem) }
    }
  }
}

function read(file: JobFile): { job?: Job; errors: Breach[] } {
  try {
    return { job: readJob(sentFile(file)), errors: [] }
  } catch (problem) {
    return { errors: breachesOf(problem) }
  }
}

function breachesOf(problem: unknown): Breach[] {
  if (!(problem instanceof Problem)) throw problem
  return problem.errors.length > 0 ? problem.errors : [{ path: '', message: problem.message }]
}
