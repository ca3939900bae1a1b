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
export function livePlan(file: JobFile, ground: ShopAndWoods): LivePlan {
  const whole = read(file)
  if (whole.job) return { job: whole.job, ...planned(whole.job, ground) }
  const named = read({ ...file, name: file.name?.trim() ? file.name : UNNAMED })
  if (named.job) {
    const live = planned(named.job, ground)
    return { job: named.job, ...live, errors: together(whole.errors, live.errors) }
  }
  // Entries that cannot be read at all keep the reader from trying the profile: it is tried by itself.
  const drawn = read({ name: UNNAMED, units: file.units, species: 'any', quantity: 1, profile: file.profile })
  return { ...(drawn.job && { job: drawn.job }), errors: together(whole.errors, named.errors, drawn.errors) }
}

function planned(job: Job, { shop, woods }: ShopAndWoods): { plan?: Plan; errors: Breach[] } {
  try {
    return { plan: planJob(job, shop, woods), errors: [] }
  } catch (problem) {
    return { errors: breachesOf(problem) }
  }
}

/** Every error once, the first one of a field. */
function together(...lists: Breach[][]): Breach[] {
  const byPath = new Map<string, Breach>()
  for (const breach of lists.flat()) if (!byPath.has(breach.path)) byPath.set(breach.path, breach)
  return [...byPath.values()]
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
