import type { CutOrder, CutPlan } from './cutting/board.ts'
import { takenOnHand } from './cutting/on-hand.ts'
import { isPriced } from './cutting/priced.ts'
import { type OrderPart, ordersTogether } from './cutting/together.ts'
import { type YardInput, type YardList, yardList } from './cutting/yard-list.ts'
import { yardMessages } from './cutting/yard-message.ts'
import type { YardService } from './cutting/yard-terms.ts'
import { type CountedTwice, type OnHandShare, onHandShare } from './lumber-on-hand.ts'
import { type Plan, speciesOf } from './plan.ts'
import { yardPriceOf } from './plan-parts.ts'
import type { Shop } from './shop.ts'
import { type LengthStyle, styleOf } from './units/length.ts'
import { amountOf, minorOf } from './units/money.ts'
import type { Species } from './wood/species.ts'
import { yardName } from './wood/yard-name.ts'
import { yardInputOf } from './yard-input.ts'

/** A job that lumber is bought for. */
export interface LumberJob {
  id: string
  plan: Plan
}

/** Jobs whose wood may come from the same boards, and what they are cut from together. */
export interface Pool {
  key: string
  jobs: LumberJob[]
  order: CutOrder
}

/** What lumber of one kind is asked for, and for which jobs. Lengths mm, money in currency units. */
export interface LumberAsk {
  jobs: { id: string; name: string }[]
  /** The wood by its handbook name. */
  wood: string
  list: YardList
  /** At the usual yard’s price; absent where it has none for this. */
  cost?: number
}

/** Boards bought for several jobs at once against those of each alone. */
export interface PooledCost {
  wood: string
  jobs: string[]
  /** Currency units, or board feet where boards have no price. */
  priced: boolean
  apart: { cost: number; boards: number; boardFeet: number }
  together: { cost: number; boards: number; boardFeet: number; lowerBound: number; proven: boolean }
  saved: number
}

/** What to buy for jobs together. */
export interface Lumber {
  currency: string
  /** The yard whose terms were reckoned with. */
  yard?: string
  asks: LumberAsk[]
  pooled: PooledCost[]
  /** What boards on hand yield for each job, where they yield anything. */
  onHand: OnHandShare[]
  /** Boards on hand that jobs in draft, each by itself, cannot all have; those not asked for among them. */
  countedTwice: CountedTwice[]
  /** What to write to the yard, each at most 320 characters. */
  messages: string[]
  boardFeet: number
  /** Of all that is asked for, as it comes, g; absent where some of it is not known. */
  mass?: number
  /** Absent where some of it has no price. */
  cost?: number
  /** What the yard would do besides; `cost` where the board feet alone tell it. */
  services: (YardService & { cost?: number })[]
  notes: string[]
}

/** Jobs by what must be alike for one board to serve them: wood, dryness and grade. */
function poolKey({ job }: Plan, shop: Shop): string {
  return [job.species, job.lumber.dryness, job.lumber.grade ?? shop.grade].join(' ')
}

const partsOf = (jobs: readonly LumberJob[]): OrderPart[] =>
  jobs.map(({ id, plan }) => ({ key: id, name: plan.job.name, order: plan.cutOrder }))

function grouped<T>(all: readonly T[], keyOf: (each: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>()
  for (const each of all) groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each])
  return [...groups]
}

/** The pools of these jobs: one order for all that may share boards; a job alone in its wood is no pool. */
export function poolsOf(jobs: readonly LumberJob[], shop: Shop): Pool[] {
  return grouped(jobs, ({ plan }) => poolKey(plan, shop))
    .filter(([, members]) => members.length > 1)
    .map(([key, members]) => ({ key, jobs: members, order: ordersTogether(partsOf(members)) }))
}

/**
 * Whether the jobs' own plans leave less to buy than the one for all of them, which minds what boards cost and not how
 * much of a bought one is over. They must not count on a board on hand twice.
 */
function leaveLess({ jobs, order }: Pool, pooled: CutPlan | undefined): boolean {
  const taken = new Map<string, number>()
  for (const { plan } of jobs)
    for (const [key, count] of takenOnHand(plan.cut)) taken.set(key, (taken.get(key) ?? 0) + count)
  const free = new Map(order.boards.map(({ key, count }) => [key, count ?? Number.POSITIVE_INFINITY]))
  if ([...taken].some(([key, count]) => count > (free.get(key) ?? 0))) return false
  const toBuy = (cut?: CutPlan) => jobs.reduce((sum, job) => sum + onHandShare(job, cut).toBuy, 0)
  return pooled !== undefined && toBuy() < toBuy(pooled)
}

function pooledCost({ jobs, order }: Pool, cut: CutPlan, wood: string): PooledCost {
  const sum = (of: (plan: CutPlan) => number) => jobs.reduce((total, { plan }) => total + of(plan.cut), 0)
  const bought = ({ boards }: CutPlan) => boards.filter(({ onHand }) => !onHand).length
  const apart = {
    cost: sum(({ cost }) => cost),
    boards: sum(bought),
    boardFeet: sum((c) => c.boardFeetBought),
  }
  const found = { cost: cut.cost, boards: bought(cut), boardFeet: cut.boardFeetBought }
  // Each job's own plan, one after the other, is a plan for all of them, unless they took the same board on hand.
  const sharesRack = order.boards.some(({ onHand }) => onHand)
  const best = !sharesRack && apart.cost < found.cost ? apart : found
  return {
    wood,
    jobs: jobs.map(({ plan }) => plan.job.name),
    priced: order.boards.some((board) => !board.onHand && isPriced(board)),
    apart,
    together: { ...best, lowerBound: cut.lowerBound, proven: cut.proven },
    saved: apart.cost - best.cost,
  }
}

/** An amount in currency units, to the cent. */
const inWholeMinor = (amount: number, currency: string): number =>
  amountOf(minorOf(amount, currency), currency)

/** What asks must have in common to be one. */
const askKey = ({ species, nominal, surfaced, grade, dryness, sap, grain, oneBoard }: YardInput): string =>
  JSON.stringify([species, nominal, surfaced, grade, dryness, sap, grain, oneBoard])

/** What is asked for; only jobs that still need wood are in it. */
function asksOf(
  jobs: readonly LumberJob[],
  shop: Shop,
  woods: Species[],
  cutOf: (job: LumberJob) => CutPlan | undefined,
): LumberAsk[] {
  const needs = jobs
    .map((each) => {
      const { job, blank } = each.plan
      const { toBuy: pieces } = onHandShare(each, cutOf(each))
      const species = speciesOf(job, shop, woods)
      const price = yardPriceOf(job, shop, blank)
      return { each, pieces, species, input: yardInputOf(job, shop, species, { blank, pieces, price }) }
    })
    .filter(({ pieces }) => pieces > 0)
  return grouped(needs, ({ input }) => askKey(input)).map(([, members]) => {
    const [{ input, species }] = members as [(typeof members)[number]]
    const list = yardList({ ...input, blanks: members.flatMap((member) => member.input.blanks) })
    const cost = list.grades.find(({ grade }) => grade === list.grade)?.cost
    return {
      jobs: members.map(({ each }) => ({ id: each.id, name: each.plan.job.name })),
      wood: species.name,
      list,
      ...(cost !== undefined && { cost: inWholeMinor(cost, shop.currency) }),
    }
  })
}

const total = (all: (number | undefined)[]): number | undefined =>
  all.includes(undefined) ? undefined : (all as number[]).reduce((sum, each) => sum + each, 0)

/**
 * What to ask the yard for these jobs together. `cuts` are plans for the orders of `poolsOf`, by their keys; a job in
 * no pool goes by its own plan; `twice` are boards on hand that jobs by themselves cannot all have. Boards on hand are used first and never by two jobs.
 */
export function lumberFor(
  jobs: readonly LumberJob[],
  shop: Shop,
  woods: Species[],
  cuts: ReadonlyMap<string, CutPlan>,
  { style = styleOf(shop.units), twice = [] }: { style?: LengthStyle; twice?: CountedTwice[] } = {},
): Lumber {
  const pools = poolsOf(jobs, shop)
  const poolOf = new Map(pools.flatMap((pool) => pool.jobs.map(({ id }) => [id, pool] as const)))
  const apart = new Set(pools.filter((pool) => leaveLess(pool, cuts.get(pool.key))))
  const cutOf = ({ id }: LumberJob) => {
    const pool = poolOf.get(id)
    return pool && !apart.has(pool) ? cuts.get(pool.key) : undefined
  }
  const asks = asksOf(jobs, shop, woods, cutOf)
  const shares = jobs.map((each) => onHandShare(each, cutOf(each)))
  const [yard] = shop.yards
  const mass = total(asks.map(({ list }) => list.mass))
  const cost = total(asks.map((ask) => ask.cost))
  const boardFeet = asks.reduce((sum, { list }) => sum + list.boardFeet.ask, 0)
  return {
    currency: shop.currency,
    ...(yard && { yard: yard.name }),
    asks,
    pooled: pools.flatMap((pool) => {
      const cut = cuts.get(pool.key)
      if (!cut?.boards.some(({ onHand }) => !onHand)) return []
      const [first] = pool.jobs
      return first ? pooledCost(pool, cut, speciesOf(first.plan.job, shop, woods).name) : []
    }),
    onHand: shares.some(({ boards }) => boards.length > 0) ? shares : [],
    countedTwice: twice,
    messages: yardMessages(
      asks.map(({ list, wood }) => ({ list, wood: yardName(wood) })),
      style,
      shop.name,
    ),
    boardFeet,
    ...(mass !== undefined && { mass }),
    ...(cost !== undefined && { cost }),
    services:
      yard && boardFeet > 0
        ? yard.services.map((service) => withCost(service, boardFeet, shop.currency))
        : [],
    notes: notesOf(asks, shop, boardFeet, cost),
  }
}

/** A service with what it comes to; by boards or feet of length it is not known before they are picked. */
function withCost(
  service: YardService,
  boardFeet: number,
  currency: string,
): YardService & { cost?: number } {
  const { per, price } = service
  const times = { 'board-foot': boardFeet, order: 1, board: undefined, foot: undefined }[per]
  return times === undefined ? service : { ...service, cost: inWholeMinor(price * times, currency) }
}

function notesOf(
  asks: readonly LumberAsk[],
  { yards: [yard], currency }: Shop,
  boardFeet: number,
  cost: number | undefined,
): string[] {
  if (!yard || asks.length === 0) return []
  const notes: string[] = []
  if (boardFeet < yard.minimumFeet)
    notes.push(`${yard.name} sells from ${yard.minimumFeet} board feet on; this comes to ${boardFeet}.`)
  if (cost !== undefined && cost < yard.minimumCharge)
    notes.push(`${yard.name} charges ${yard.minimumCharge} ${currency} at least; this comes to less.`)
  if (yard.measure === 'gross')
    notes.push(
      `${yard.name} bills by the gross tally, ${Math.round(yard.grossOver * 100)} % over what the boards measure now: the bill will name more board feet than you load.`,
    )
  return notes
}
