import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { CutPlan } from '../../shared/cutting/board.ts'
import { nothingCut } from '../../shared/cutting/nothing-cut.ts'
import { Problem } from '../../shared/problem.ts'
import type { CutTask } from './exact-cut.ts'
import { type ThreadAnswer, takeAnswer } from './thread.ts'

/**
 * What a cutting thread says: a better plan on the way, the answer, or that it failed. Plans come as JSON text, which
 * is quickly taken over however large they are.
 */
export type CutNews = { plan: string } | { answer: ThreadAnswer<string> } | { failed: unknown }

/** What a search may take beyond its time before its thread is ended, ms: with a plan at hand, and without. */
const GRACE = 100
const GRACE_FOR_FIRST = 300
/** Searches after which a thread is replaced: the solver's memory grows and is never given back. */
const SEARCHES_MAX = 20
/** Searches at once; the others wait for their turn. */
const AT_ONCE = Math.max(2, availableParallelism())

const CROWDED = 'Other cutting searches are under way and this one had no turn: try again in a moment.'

interface Thread {
  worker: Worker
  searches: number
}

/** A search that is asked for. */
interface Asked {
  task: CutTask
  /** When it was asked for. */
  began: number
  /** The best plan so far, as text. */
  best?: string
  resolve: (plan: CutPlan) => void
  reject: (error: unknown) => void
}

const msLeft = ({ began, task }: Asked): number =>
  Math.max(0, task.milliseconds - (performance.now() - began))

/**
 * Threads for cutting searches: a few at once, kept for the next search, replaced after a while. Every search is
 * answered soon after its time, with the best plan it has told of by then.
 */
export class CutThreads {
  readonly #file: URL
  readonly #idle: Thread[] = []
  readonly #waiting: Asked[] = []
  #busy = 0
  /** Quick plans for those that wait, one after the other. */
  #quick: Promise<unknown> = Promise.resolve()

  constructor(file: URL) {
    this.#file = file
  }

  /**
   * The best plan found within the time of the task, waiting for a thread included.
   * @throws Problem `too-many-requests` when its turn did not come in time
   */
  cut(task: CutTask): Promise<CutPlan> {
    return new Promise((resolve, reject) => {
      const asked: Asked = { task, began: performance.now(), resolve, reject }
      if (this.#busy < AT_ONCE) void this.#search(asked)
      else this.#wait(asked)
    })
  }

  /** Waits for a thread, but no longer than the search may take; a quick plan is found meanwhile. */
  #wait(asked: Asked): void {
    this.#waiting.push(asked)
    const isWaiting = () => this.#waiting.includes(asked)
    const quick = { ...asked.task, milliseconds: 0, solving: false }
    const take = (plan: string) => {
      asked.best ??= plan
    }
    this.#quick = this.#quick
      .then(() => (isWaiting() ? this.#run(quick, msLeft(asked), asked, take) : undefined))
      .catch(asked.reject)
    setTimeout(() => {
      if (!isWaiting()) return
      this.#waiting.splice(this.#waiting.indexOf(asked), 1)
      if (asked.best === undefined) asked.reject(new Problem('too-many-requests', CROWDED))
      else answer(asked)
    }, msLeft(asked) + GRACE)
  }

  /** Searches, answers, and gives the turn to who waits longest. */
  async #search(asked: Asked): Promise<void> {
    this.#busy++
    const left = msLeft(asked)
    try {
      await this.#run({ ...asked.task, milliseconds: left }, left, asked, (plan) => {
        asked.best = plan
      })
      answer(asked)
    } catch (error) {
      // The thread could not be begun, for want of memory say: the turn is given on all the same.
      asked.reject(error)
    }
    this.#busy--
    const next = this.#busy < AT_ONCE ? this.#waiting.shift() : undefined
    if (next) void this.#search(next)
  }

  /** Runs a task in a thread for who asked, until it is done or these milliseconds and the grace have passed. */
  #run(task: CutTask, most: number, asked: Asked, take: (plan: string) => void): Promise<void> {
    const thread = this.#idle.pop() ?? { worker: new Worker(this.#file), searches: 0 }
    const { worker } = thread
    thread.searches++
    worker.removeAllListeners()
    worker.ref()
    return new Promise((resolve) => {
      const settle = (keep: boolean) => {
        clearTimeout(late)
        clearTimeout(tooLate)
        worker.removeAllListeners()
        if (keep && thread.searches < SEARCHES_MAX && this.#idle.length <= AT_ONCE) this.#rest(thread)
        else void worker.terminate()
        resolve()
      }
      const fail = (error: unknown) => {
        asked.reject(error)
        settle(false)
      }
      const late = setTimeout(() => asked.best !== undefined && settle(false), most + GRACE)
      const tooLate = setTimeout(() => settle(false), most + GRACE_FOR_FIRST)
      worker.on('message', (news: CutNews) => {
        if ('failed' in news) return fail(news.failed)
        if ('plan' in news) return take(news.plan)
        try {
          take(takeAnswer(news.answer))
        } catch (problem) {
          asked.reject(problem)
        }
        return settle(true)
      })
      worker.once('error', fail)
      worker.once('exit', (code) => fail(new Error(`The thread ended without an answer (exit ${code}).`)))
      worker.postMessage(task)
    })
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
}

/** Answers with the best plan so far; `seconds` is how long was waited for it. */
function answer({ task, began, best, resolve }: Asked): void {
  const plan = best === undefined ? nothingCut(task.order) : (JSON.parse(best) as CutPlan)
  resolve({ ...plan, seconds: (performance.now() - began) / 1000 })
}
