import type { CutOrder, CutPlan } from './board.ts'
import { lowerBound, missingAnyway } from './bound.ts'
import { capacitiesOf } from './capacity.ts'
import { cutBreaches } from './check.ts'
import { chances, retried } from './improve.ts'
import type { Patience } from './line.ts'
import type { MipSolver } from './mip.ts'
import { bestKind } from './one-width/best-kind.ts'
import { boundedPlan, type Found, quickSolution } from './quick.ts'
import { isBetter, type Solution, solutionOf } from './solution.ts'
import { type SortedOrder, sortedOrder } from './sorted-order.ts'

/** The search's clock: `now` in milliseconds, and when to stop by it. */
export interface Clock {
  now: () => number
  deadline: number
}

/** What a search is given besides its order. */
export interface Searching extends Clock {
  /** The whole-number solver, loaded only where the search's own means do not settle the order. */
  mip?: () => Promise<MipSolver>
  /** Told of the first plan at once, and of every better one. */
  onPlan?: (plan: CutPlan) => void
}

/** Tries without a better plan after which the search ends by itself, so that it ends alike on every machine. */
const STALE_MAX = 1500
/** The same when no plan can cost less: only fewer boards are looked for. */
const STALE_PROVEN = 150
/** The same when the whole-number solver comes next. */
const STALE_BEFORE_MIP = 20

/** Steps of trying everything: at once, half a second; and in the end, when a better plan is at hand, a second or so. */
const TRIALS_FIRST = 100_000_000
/** The same for a few boards and blanks, whose every plan is tried sooner than larger means are fetched. */
const TRIALS_FEW = 4_000_000
/** Boards, and blanks, that are few. */
const FEW = 60
const TRIALS_LAST = 200_000_000
/** The same when the whole-number solver comes next. */
const TRIALS_BEFORE_MIP = 10_000_000

/** A plan is shown no sooner than this after the one before it, ms. */
const SHOWING = 50

/**
 * The best plan found before the deadline: the quick one, bettered by the means that suit the order (one width,
 * trying everything, taking boards back and covering anew, the whole-number model). It ends by itself when the plan
 * is proven or nothing better was found for long; then the same order gives the same plan.
 */
export function solveCut(order: CutOrder, searching: Searching): Promise<CutPlan> {
  return new Search(order, searching).plan()
}

/**
 * One search under way: the best plan so far and what is known of it. The larger means are loaded when their turn
 * comes, so that the first plan is not kept waiting where they have yet to be fetched.
 * A plan that fails its check is never shown.
 */
class Search {
  readonly #began: number
  readonly #searching: Searching
  readonly #sorted: SortedOrder
  readonly #capacities: Float64Array
  #found: Found
  #shown: Solution | undefined
  /** No sooner than this is the next plan shown. */
  #next = Number.NEGATIVE_INFINITY

  constructor(order: CutOrder, searching: Searching) {
    this.#began = searching.now()
    this.#searching = searching
    this.#sorted = sortedOrder(order)
    this.#capacities = capacitiesOf(this.#sorted)
    this.#found = { solution: solutionOf(this.#sorted, []), exact: false }
  }

  #quick(): void {
    this.#found = quickSolution(this.#sorted, this.#capacities, {
      onPlain: (solution) => {
        this.#found.solution = solution
        this.#show()
      },
      isSpent: () => this.#isLate(),
    })
  }

  async plan(): Promise<CutPlan> {
    this.#quick()
    this.#show()
    for (const means of [
      this.#fewTrials,
      this.#oneWidth,
      this.#trials,
      this.#retries,
      this.#model,
      this.#lastRetries,
    ])
      if (!this.#isSettled()) await means.call(this)
    return this.#planNow()
  }

  /** Whether nothing is left to look for, or no time. */
  #isSettled(): boolean {
    return this.#found.exact || this.#found.solution.boards === 0 || this.#isLate()
  }

  #isLate(): boolean {
    return this.#searching.now() >= this.#searching.deadline
  }

  /** Whether no plan can leave fewer blanks missing or cost less. */
  #isProven(): boolean {
    const { solution, boundMinor = 0 } = this.#found
    const bound = Math.max(boundMinor, lowerBound(this.#sorted, this.#capacities, solution))
    return solution.missing === missingAnyway(this.#sorted) && solution.cost <= bound
  }

  async #fewTrials(): Promise<void> {
    const { blanks, boards } = this.#sorted.order
    const sum = (counts: (number | null)[]) => counts.reduce<number>((all, n) => all + (n ?? FEW + 1), 0)
    const isSmall = [blanks, boards].every((all) => sum(all.map(({ count }) => count)) <= FEW)
    if (isSmall) await this.#tryEverything(TRIALS_FEW)
  }

  async #oneWidth(): Promise<void> {
    if (bestKind(this.#sorted) === undefined) return
    const { oneWidthSolution } = await import('./one-width/one-width.ts')
    const { deadline, now } = this.#searching
    const patience: Patience = { steps: 0, isSpent: () => now() >= deadline }
    const one = oneWidthSolution(this.#sorted, this.#capacities, this.#found.solution, patience)
    if (!one) return
    this.#offer(one.solution)
    this.#found.boundMinor = one.boundMinor
    this.#found.exact = one.boundMinor >= one.solution.cost
  }

  #trials(): Promise<void> {
    return this.#tryEverything(this.#searching.mip ? TRIALS_BEFORE_MIP : TRIALS_FIRST)
  }

  /** Tries everything, for so many steps at most. */
  async #tryEverything(most: number): Promise<void> {
    const { exactSolution } = await import('./exact.ts')
    const { deadline, now } = this.#searching
    const patience: Patience = { steps: 0, isSpent: () => patience.steps > most || now() >= deadline }
    const { solution, exact } = exactSolution(this.#sorted, this.#capacities, this.#found.solution, patience)
    this.#offer(solution)
    this.#found.exact = exact
  }

  async #retries(): Promise<void> {
    if (this.#searching.mip) this.#retry(STALE_BEFORE_MIP, STALE_BEFORE_MIP)
    else this.#retry(STALE_PROVEN, STALE_MAX)
  }

  /** Takes boards back and covers anew until nothing better was found for so many tries. */
  #retry(staleProven: number, staleOpen: number): void {
    const chance = chances(1)
    const effort = { steps: 0, isSpent: () => this.#isLate() }
    let solution = this.#found.solution
    let [proven, staleMax] = [this.#isProven(), staleOpen]
    // Where good moves were long in coming, the next may be too.
    for (let [tries, stale] = [1, 0]; !this.#isLate(); tries++, stale++) {
      if (stale >= (proven ? staleProven : staleMax)) break
      const next = retried(this.#sorted, this.#capacities, solution, chance, effort)
      if (isBetter(next, solution)) {
        stale = 0
        staleMax = Math.max(staleOpen, tries)
        this.#offer(next)
        proven = this.#isProven()
      }
      // Of equals the later is kept, so that the next try starts from elsewhere.
      this.#found.solution = solution = next
      this.#show()
    }
  }

  /** The whole-number model: it settles most orders of a yard. */
  async #model(): Promise<void> {
    const { mip, now, deadline } = this.#searching
    if (!mip) return
    const [{ yardSolution }, solver] = await Promise.all([import('./yard-model/search.ts'), mip()])
    const search = {
      mip: solver,
      secondsLeft: () => (deadline - now()) / 1000,
      onBetter: (solution: Solution) => this.#offer(solution),
    }
    const found = yardSolution(this.#sorted, this.#found.solution, this.#isProven(), search)
    if (!found) return
    this.#offer(found.solution)
    this.#found.boundMinor = found.boundMinor
    this.#found.exact = found.proven
  }

  /** What is left to do where the model did not settle the order. */
  async #lastRetries(): Promise<void> {
    if (this.#searching.mip) this.#retry(STALE_PROVEN, STALE_MAX)
    if (!this.#isProven()) await this.#tryEverything(TRIALS_LAST)
  }

  /** Keeps the plan if it is better, and shows it. */
  #offer(solution: Solution): void {
    if (!isBetter(solution, this.#found.solution)) return
    this.#found.solution = solution
    this.#show()
  }

  /** Shows the best plan so far, if it is better than the one last shown and that was a while ago. */
  #show(): void {
    const { now, onPlan } = this.#searching
    const { solution } = this.#found
    const began = now()
    if (!onPlan || began < this.#next || (this.#shown && !isBetter(solution, this.#shown))) return
    this.#shown = solution
    onPlan(this.#planNow())
    // Showing large plans takes its time: no more than a part of the search's own.
    this.#next = now() + Math.max(SHOWING, 4 * (now() - began))
  }

  /** The plan as it stands, gone over anew by rules that share nothing with the search. */
  #planNow(): CutPlan {
    const plan = boundedPlan(this.#sorted, this.#capacities, this.#found)
    const [breach] = cutBreaches(this.#sorted.order, plan)
    if (breach !== undefined) throw new Error(`the plan found could not be sawn: ${breach}`)
    return { ...plan, seconds: Math.max(0, this.#searching.now() - this.#began) / 1000 }
  }
}
