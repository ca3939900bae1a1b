import { describe, expect, it } from 'vitest'
import type { CutPlan } from '../../shared/cutting/board.ts'
import { YardSearch } from '../../web/yard-search.ts'
import { legsOrder } from './yard-bench.ts'

const plan = (cost: number) => ({ cost }) as CutPlan

/** Searches that end when the test says so. */
function bench() {
  const begun: {
    onPlan: (plan: CutPlan) => void
    end: (plan: CutPlan) => void
    fail: (why: Error) => void
    stopped: boolean
  }[] = []
  let updates = 0
  const host = {
    addController: () => {},
    removeController: () => {},
    requestUpdate: () => void updates++,
    updateComplete: Promise.resolve(true),
  }
  const search = new YardSearch(host, (_, { onPlan }) => {
    let [end, fail] = [(_plan: CutPlan) => {}, (_why: Error) => {}]
    const done = new Promise<CutPlan>((resolve, reject) => {
      end = resolve
      fail = reject
    })
    const one = { onPlan: onPlan!, end, fail, stopped: false }
    begun.push(one)
    const stop = () => {
      one.stopped = true
      one.fail(new Error('stopped'))
    }
    return { done, stop }
  })
  return { search, begun, updates: () => updates }
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

describe('the search at the stack', () => {
  it('shows every plan as it comes and says when it has ended', async () => {
    const { search, begun } = bench()
    search.want(legsOrder())
    expect([search.isSearching, search.found]).toEqual([true, undefined])
    begun[0]!.onPlan(plan(9))
    expect(search.found).toMatchObject({ plan: plan(9), ended: false })
    begun[0]!.end(plan(8))
    await settled()
    expect(search.found).toMatchObject({ plan: plan(8), ended: true })
    expect(search.isSearching).toBe(false)
  })

  it('does not search the same twice', () => {
    const { search, begun } = bench()
    search.want(legsOrder())
    search.want(legsOrder())
    expect(begun).toHaveLength(1)
  })

  it('stops for another order and hears no more of the old one', async () => {
    const { search, begun } = bench()
    search.want(legsOrder())
    search.want(legsOrder({ kerf: 4 }))
    expect(begun[0]!.stopped).toBe(true)
    begun[0]!.onPlan(plan(9))
    await settled()
    expect([search.found, search.failure]).toEqual([undefined, ''])
    begun[1]!.onPlan(plan(7))
    expect(search.found?.plan).toEqual(plan(7))
  })

  it('says why there is no answer and tries again when asked', async () => {
    const { search, begun } = bench()
    search.want(legsOrder())
    begun[0]!.fail(new Error('no thread could be had'))
    await settled()
    expect([search.failure, search.isSearching]).toEqual(['no thread could be had', false])
    search.again()
    expect([begun.length, search.failure]).toEqual([2, ''])
  })

  it('ends with the page and begins with it anew', () => {
    const { search, begun } = bench()
    search.want(legsOrder())
    search.hostDisconnected()
    expect(begun[0]!.stopped).toBe(true)
    search.want(legsOrder())
    expect(begun).toHaveLength(2)
  })
})
