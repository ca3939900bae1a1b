import type { CutOrder, CutPlan } from '../shared/cutting/board.ts'
import type { CutAnswer, CutTask } from './cut-worker.ts'
import workerUrl from './cut-worker.ts?worker&url'
import { ownScript } from './own-script.ts'

/** A cutting search that is under way. */
export interface CutSearch {
  /**
   * The best plan found, at the latest 0.3 s after the time allowed; already gone over by the checker.
   * @throws Error when there is none, and says why: an order that cannot be read, a search stopped before its first plan
   */
  done: Promise<CutPlan>
  /** Ends the search at once: `done` is then the best plan so far. */
  stop(): void
}

/** How a search is run: the time it may take, s, and who is told of each better plan, the first within moments. */
export interface CutWish {
  seconds: number
  onPlan?: (plan: CutPlan) => void
}

/** What the search may take beyond its time before its thread is ended, ms. */
const GRACE = 300
/** Searches after which a thread is replaced: what its solver has taken of the memory it never gives back. */
const SEARCHES_MAX = 10
/** How long a thread waits for the next search before its memory is given back, ms. */
const IDLE = 120_000

interface Thread {
  worker: Worker
  searches: number
}

let idle: Thread | undefined
let idleTimer: ReturnType<typeof setTimeout> | undefined

function takeThread(): Thread {
  clearTimeout(idleTimer)
  const thread = idle ?? { worker: new Worker(ownScript(workerUrl), { type: 'module' }), searches: 0 }
  idle = undefined
  thread.searches++
  return thread
}

function end({ worker }: Thread): void {
  worker.onmessage = worker.onerror = null
  worker.terminate()
}

/** Keeps one thread that came to the end of its search for the next one. */
function rest(thread: Thread): void {
  if (idle || thread.searches >= SEARCHES_MAX) {
    end(thread)
    return
  }
  const drop = () => {
    if (idle === thread) idle = undefined
    end(thread)
  }
  idle = thread
  thread.worker.onmessage = null
  thread.worker.onerror = drop
  idleTimer = setTimeout(drop, IDLE)
}

/**
 * Searches the cheapest way to cut an order in a thread of its own, so that the page goes on; needs no server.
 * Every plan it hands out has been gone over by the checker.
 */
export function cutSearch(order: CutOrder, { seconds, onPlan }: CutWish): CutSearch {
  const began = Date.now()
  const thread = takeThread()
  let best: CutPlan | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let stop = () => {}
  const done = new Promise<CutPlan>((resolve, reject) => {
    const settle = (leave: (thread: Thread) => void, plan: CutPlan | undefined, why: string) => {
      clearTimeout(timer)
      stop = () => {}
      leave(thread)
      if (plan) resolve(plan)
      else reject(new Error(why))
    }
    const cutOff = (why: string) =>
      settle(end, best && { ...best, seconds: (Date.now() - began) / 1000 }, why)
    stop = () => cutOff('The search was stopped before its first plan.')
    timer = setTimeout(() => cutOff(`No plan was found within ${seconds} s.`), seconds * 1000 + GRACE)
    thread.worker.onerror = (event) => cutOff(event.message || 'The search could not be started.')
    thread.worker.onmessage = ({ data }: MessageEvent<CutAnswer>) => {
      if ('plan' in data) {
        best = data.plan
        onPlan?.(best)
      } else if ('done' in data) settle(rest, data.done, '')
      else cutOff(data.failed)
    }
  })
  thread.worker.postMessage({ order, until: began + seconds * 1000 } satisfies CutTask)
  return { done, stop: () => stop() }
}
