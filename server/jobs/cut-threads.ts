import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { CutPlan } from '../../shared/cutting/board.ts'
import { nothingCut } from '../../shared/cutting/nothing-cut.ts'
import type { CutTask } from './exact-cut.ts'
import { type ThreadAnswer, takeAnswer } from './thread.ts'

/** What a cutting thread says: a better plan on the way, the answer, or that it failed. */
export type CutNews = { plan: CutPlan } | { answer: ThreadAnswer<CutPlan> } | { failed: unknown }

/** What a search may take beyond its time before its thread is ended, ms. */
const GRACE = 300
/** Searches after which a thread is replaced: the solver's memory grows and is never given back. */
const SEARCHES_MAX = 20
/** Searches at once; the others wait for their turn. */
const AT_ONCE = Math.max(2, availableParallelism())

interface Thread {
  worker: Worker
  searches: number
}

/** A search that is asked for. */
interface Asked {
  task: CutTask
  /** When it was asked for. */
  began: number
  resolve: (plan: CutPlan) => void
  reject: (error: unknown) => void
}

/**
 * Threads for cutting searches: a few at once, kept for the next search, replaced after a while. Every search is
 * answered soon after its time, with the best plan it has told of by then.
 */
export class CutThreads {
  readonly #file: URL
  readonly #idle: Thread[] = []
  readonly #waiting: Asked[] = []
  #busy = 0

  constructor(file: URL) {
    this.#file = file
  }

  /** The best plan found within the time of the task, waiting for a thread included. */
  cut(task: CutTask): Promise<CutPlan> {
    return new Promise((resolve, reject) => {
      const asked: Asked = { task, began: performance.now(), resolve, reject }
      if (this.#busy < AT_ONCE) this.#search(asked)
      else this.#wait(asked)
    })
  }

  /** Waits for a thread, but no longer than the search may take: then one more thread finds it a quick plan. */
  #wait(asked: Asked): void {
    this.#waiting.push(asked)
    const late = setTimeout(() => {
      const place = this.#waiting.indexOf(asked)
      if (place < 0) return
      this.#waiting.splice(place, 1)
      this.#search(asked)
    }, asked.task.milliseconds)
    late.unref()
  }

  #search({ task, began, resolve, reject }: Asked): void {
    const thread = this.#idle.pop() ?? { worker: new Worker(this.#file), searches: 0 }
    const { worker } = thread
    thread.searches++
    this.#busy++
    worker.removeAllListeners()
    worker.ref()
    let best: CutPlan | undefined
    const passed = () => performance.now() - began
    const left = Math.max(0, task.milliseconds - passed())
    const settle = (keep: boolean, done: () => void) => {
      clearTimeout(timer)
      worker.removeAllListeners()
      this.#leave(thread, keep)
      done()
    }
    const timer = setTimeout(() => {
      const plan = best ?? nothingCut(task.order)
      settle(false, () => resolve({ ...plan, seconds: passed() / 1000 }))
    }, left + GRACE)
    worker.on('message', (news: CutNews) => {
      if ('plan' in news) best = news.plan
      else if ('failed' in news) settle(false, () => reject(news.failed))
      else settle(true, () => settled(news.answer, resolve, reject))
    })
    worker.once('error', (error) => settle(false, () => reject(error)))
    worker.once('exit', (code) =>
      settle(false, () => reject(new Error(`The thread ended without an answer (exit ${code}).`))),
    )
    worker.postMessage({ ...task, milliseconds: left } satisfies CutTask)
  }

  /** A thread that only waits keeps nothing running, and is dropped should it end. */
  #rest(thread: Thread): void {
    const drop = () => {
      const place = this.#idle.indexOf(thread)
      if (place >= 0) this.#idle.splice(place, 1)
    }
    thread.worker.on('error', drop).on('exit', drop).unref()
    this.#idle.push(thread)
  }

  /** Keeps the thread for the next search or ends it, and gives the turn to who waits longest. */
  #leave(thread: Thread, keep: boolean): void {
    this.#busy--
    if (keep && thread.searches < SEARCHES_MAX && this.#idle.length < AT_ONCE) {
      this.#rest(thread)
    } else void thread.worker.terminate()
    const next = this.#busy < AT_ONCE ? this.#waiting.shift() : undefined
    if (next) this.#search(next)
  }
}

function settled(
  answer: ThreadAnswer<CutPlan>,
  resolve: (plan: CutPlan) => void,
  reject: (error: unknown) => void,
): void {
  try {
    resolve(takeAnswer(answer))
  } catch (problem) {
    reject(problem)
  }
}
