import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { CutOrder, CutPlan } from '../shared/cutting/board.ts'
import type { CutSearch, cutSearch } from './cut-search.ts'

/** Seconds a search may take: whoever stands at the stack with a board in hand has moments, not minutes. */
const SECONDS = 10

/** The best plan so far for an order. */
export interface Searched {
  order: CutOrder
  plan: CutPlan
  /** Whether the search has ended. */
  ended: boolean
}

/** Searches anew whenever another order is wanted; what is shown until its first plan is nothing of the old one. */
export class YardSearch implements ReactiveController {
  found: Searched | undefined
  failure = ''
  private readonly host: ReactiveControllerHost
  private readonly start: typeof cutSearch
  private wanted = ''
  private order: CutOrder | undefined
  private search?: CutSearch | undefined

  constructor(host: ReactiveControllerHost, start: typeof cutSearch) {
    this.host = host
    this.start = start
    host.addController(this)
  }

  hostConnected() {}

  hostDisconnected() {
    this.want(undefined)
  }

  /** Whether a search is under way. */
  get isSearching(): boolean {
    return this.search !== undefined
  }

  /** Searches this order; the same one is not searched twice. */
  want(order: CutOrder | undefined): void {
    const wanted = order ? JSON.stringify(order) : ''
    if (wanted === this.wanted) return
    this.wanted = wanted
    this.order = order
    const before = this.search
    this.search = undefined
    this.found = undefined
    this.failure = ''
    before?.stop()
    if (order) this.begin(order, wanted)
    this.host.requestUpdate()
  }

  /** Searches the order last wanted once more. */
  again(): void {
    const order = this.order
    this.want(undefined)
    this.want(order)
  }

  private begin(order: CutOrder, wanted: string): void {
    const tell = (change: () => void) => {
      if (wanted !== this.wanted) return
      change()
      this.host.requestUpdate()
    }
    const onPlan = (plan: CutPlan) =>
      tell(() => {
        this.found = { order, plan, ended: false }
      })
    const failed = (why: unknown) =>
      tell(() => {
        this.search = undefined
        this.failure = why instanceof Error ? why.message : String(why)
      })
    try {
      this.search = this.start(order, { seconds: SECONDS, onPlan })
    } catch (why) {
      failed(why)
      return
    }
    this.search.done.then(
      (plan) =>
        tell(() => {
          this.search = undefined
          this.found = { order, plan, ended: true }
        }),
      failed,
    )
  }
}
