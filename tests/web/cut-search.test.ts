import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import type { CutAnswer, CutTask } from '../../web/cut-worker.ts'

/** A thread that answers when the test says so. */
class Thread {
  static readonly all: Thread[] = []
  onmessage: ((event: { data: CutAnswer }) => void) | null = null
  onerror: ((event: { message: string }) => void) | null = null
  readonly tasks: CutTask[] = []
  isEnded = false

  constructor() {
    Thread.all.push(this)
  }

  postMessage(task: CutTask) {
    this.tasks.push(task)
  }

  terminate() {
    this.isEnded = true
  }

  say(data: CutAnswer) {
    this.onmessage?.({ data })
  }
}

const order = { blanks: [], boards: [] } as unknown as CutOrder
const planAt = (cost: number): CutPlan => ({ cost, seconds: 0.01 }) as unknown as CutPlan
const thread = () => Thread.all.at(-1)!

beforeEach(() => {
  vi.useFakeTimers()
  vi.resetModules()
  vi.stubGlobal('Worker', Thread)
  Thread.all.length = 0
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const searcher = async () => (await import('../../web/cut-search.ts')).cutSearch

describe('a search in the page', () => {
  it('tells of every plan on the way and ends with the last', async () => {
    const cutSearch = await searcher()
    const told: number[] = []
    const { done } = cutSearch(order, { seconds: 5, onPlan: ({ cost }) => told.push(cost) })
    expect(thread().tasks).toEqual([{ order, until: Date.now() + 5000 }])
    thread().say({ plan: planAt(9) })
    thread().say({ plan: planAt(8) })
    thread().say({ done: planAt(7) })
    expect([told, (await done).cost]).toEqual([[9, 8], 7])
    expect(thread().isEnded).toBe(false)
  })

  it('is cut off 0.3 s after its time with the best plan so far', async () => {
    const cutSearch = await searcher()
    const { done } = cutSearch(order, { seconds: 2 })
    thread().say({ plan: planAt(9) })
    vi.advanceTimersByTime(2299)
    expect(thread().isEnded).toBe(false)
    vi.advanceTimersByTime(1)
    expect(thread().isEnded).toBe(true)
    expect(await done).toEqual({ ...planAt(9), seconds: 2.3 })
  })

  it('says so when its time is over before the first plan', async () => {
    const cutSearch = await searcher()
    const { done } = cutSearch(order, { seconds: 1 })
    vi.advanceTimersByTime(1300)
    await expect(done).rejects.toThrow('No plan was found within 1 s.')
  })

  it('ends at once when told to, with the best plan so far, and is then deaf', async () => {
    const cutSearch = await searcher()
    const { done, stop } = cutSearch(order, { seconds: 60 })
    thread().say({ plan: planAt(9) })
    stop()
    thread().say({ done: planAt(1) })
    stop()
    expect((await done).cost).toBe(9)
    expect(thread().isEnded).toBe(true)
  })

  it('keeps the best plan when the thread fails on the way, and says why when there is none', async () => {
    const cutSearch = await searcher()
    const first = cutSearch(order, { seconds: 5 })
    thread().say({ plan: planAt(9) })
    thread().say({ failed: 'out of memory' })
    expect((await first.done).cost).toBe(9)
    const second = cutSearch(order, { seconds: 5 })
    thread().onerror!({ message: 'no such script' })
    await expect(second.done).rejects.toThrow('no such script')
  })

  it('goes on with a thread that came to its end, and never with one that was cut off', async () => {
    const cutSearch = await searcher()
    cutSearch(order, { seconds: 5 })
    thread().say({ done: planAt(7) })
    const { stop } = cutSearch(order, { seconds: 5 })
    thread().say({ plan: planAt(9) })
    stop()
    expect(Thread.all.map(({ tasks }) => tasks.length)).toEqual([2])
    cutSearch(order, { seconds: 5 })
    expect(Thread.all.map(({ isEnded }) => isEnded)).toEqual([true, false])
  })

  it('does not go on with a thread that failed while it waited', async () => {
    const cutSearch = await searcher()
    cutSearch(order, { seconds: 5 })
    thread().say({ done: planAt(7) })
    thread().onerror!({ message: 'out of memory' })
    cutSearch(order, { seconds: 5 })
    expect(Thread.all.map(({ isEnded, tasks }) => [isEnded, tasks.length])).toEqual([
      [true, 1],
      [false, 1],
    ])
  })

  it('gives a thread back after ten searches, or two idle minutes', async () => {
    const cutSearch = await searcher()
    for (let n = 0; n < 10; n++) {
      cutSearch(order, { seconds: 5 })
      thread().say({ done: planAt(7) })
    }
    expect(Thread.all.map(({ isEnded }) => isEnded)).toEqual([true])
    cutSearch(order, { seconds: 5 })
    thread().say({ done: planAt(7) })
    vi.advanceTimersByTime(119_999)
    expect(thread().isEnded).toBe(false)
    vi.advanceTimersByTime(1)
    expect(Thread.all.map(({ isEnded }) => isEnded)).toEqual([true, true])
  })
})
