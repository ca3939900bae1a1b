import { type Job, readJob } from '../shared/job.ts'
import { isMeasuring, readLibraryProfile, STAND_IN_SPECIES } from '../shared/library.ts'
import { type Plan, planJob } from '../shared/plan.ts'
import { type Breach, Problem } from '../shared/problem.ts'
import { sentFile } from './job-entries.ts'
import type { JobFile } from './job-file.ts'
import { type LibraryFile, sentLibraryFile } from './library-file.ts'
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

/** What can be read of a file that is being written, with every error at its field. */
interface LiveJob {
  job?: Job
  /** Nothing but the name is missing. */
  whole: boolean
  errors: Breach[]
}

/** Reads the file as the server will, as far as it goes. */
function liveJob(file: JobFile): LiveJob {
  const entered = read(file)
  if (entered.job) return { job: entered.job, whole: true, errors: [] }
  const named = read({ ...file, name: file.name?.trim() ? file.name : UNNAMED })
  if (named.job) return { job: named.job, whole: true, errors: entered.errors }
  // Entries that cannot be read at all keep the reader from trying the profile: it is tried by itself.
  const drawn = read({ name: UNNAMED, units: file.units, species: 'any', quantity: 1, profile: file.profile })
  return {
    ...(drawn.job && { job: drawn.job }),
    whole: false,
    errors: together(entered.errors, named.errors, drawn.errors),
  }
}

/** Reads and plans the file as the server will, with every error at its field. */
export function livePlan(file: JobFile, ground: ShopAndWoods): LivePlan {
  const { job, whole, errors } = liveJob(file)
  if (!job || !whole) return { ...(job && { job }), errors }
  const live = planned(job, ground)
  return { job, ...live, errors: together(errors, live.errors) }
}

/** A profile of the library read as its parts of a job are: how it can be drawn, and what is wrong with it. */
export function liveProfile(file: LibraryFile): Omit<LivePlan, 'plan'> {
  const sent = sentLibraryFile(file)
  if (isMeasuring(sent)) return { errors: errorsOf(() => readLibraryProfile(sent)) }
  const { job, errors } = liveJob({ ...sent, species: sent.species || STAND_IN_SPECIES, quantity: 1 })
  return { ...(job && { job }), errors }
}

function errorsOf(reading: () => unknown): Breach[] {
  try {
    reading()
    return []
  } catch (problem) {
    return breachesOf(problem)
  }
}

function planned(job: Job, { shop, woods, onHand, record }: ShopAndWoods): { plan?: Plan; errors: Breach[] } {
  try {
    return { plan: planJob(job, shop, woods, { onHand, record }), errors: [] }
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
