/** Work of a job that nothing interrupts but other jobs: minutes of one person, at a lathe or away from it. */
export interface Work {
  kind: 'work'
  name: string
  /** Paid minutes, with what the shop adds for rest. */
  minutes: number
  atLathe: boolean
}

/** What must be waited for: glue that cures, a coat that dries. Whole days, as nothing is taken up at night. */
export interface Waiting {
  kind: 'wait'
  name: string
  days: number
  /** Days that nine in ten such waits take at most; as `days` where absent. */
  slowDays?: number
}

/** What is left to do of a job, in order. */
export type Chain = readonly (Work | Waiting)[]

/** A job to be fitted in. */
export interface OpenJob {
  key: string
  name: string
  /** The day it is promised for, as a number of days; absent where nobody waits for it. */
  due?: number
  chain: Chain
  /** The lathe it is turned on; absent where no lathe is needed or none fits. */
  lathe?: string
  /** The day its wood is there at the earliest. */
  from?: number
}

/** Minutes of work in a chain. */
export const workMinutes = (chain: Chain): number =>
  chain.reduce((sum, link) => sum + (link.kind === 'work' ? link.minutes : 0), 0)
