import { firstMinutes, learningTotal } from './estimate/learning.ts'
import { Z90 } from './estimate/range.ts'
import { momentsOf, type Wait } from './estimate/time.ts'
import { waitsFor } from './estimate/waits.ts'
import type { Piece } from './piece.ts'
import { type Plan, partsOf } from './plan.ts'
import type { OperationKind } from './route/kinds.ts'
import type { Operation } from './route/operation.ts'
import type { Chain, Waiting, Work } from './schedule/chain.ts'
import type { Shop } from './shop.ts'

/** A started batch as far as it has come: its pieces, and when each operation was last logged (a number of days). */
export interface Begun {
  pieces: readonly Piece[]
  lastDone: ReadonlyMap<string, number>
  today: number
}

/** After which operation a wait begins; the last of them that the plan has. */
const waitAfter: readonly [RegExp, readonly OperationKind[]][] = [
  [/strip/, ['rest-strips']],
  [/glue/, ['glue']],
  [/rough-turned/, ['dry']],
  [/finish/, ['finish', 'finish-on-lathe']],
]

function placeOf({ name }: Wait, operations: readonly Operation[]): number {
  const kinds = waitAfter.find(([known]) => known.test(name))?.[1] ?? []
  return operations.reduce((last, { kind }, i) => (kinds.includes(kind) ? i : last), -1)
}

/**
 * Pieces that still lack an operation, and those that have it. Blanks are rarely logged one by one: a piece that is
 * further on has had all that is done before the lathe.
 */
function countsOf(plan: Plan, place: number, made: number, begun?: Begun): { lacking: number; done: number } {
  if (!begun) return { lacking: made, done: 0 }
  const { key, pass, minutesEach } = plan.operations[place]!
  const later = pass === 0 || minutesEach === 0 ? plan.operations.slice(place + 1).map((o) => o.key) : []
  const met = new Set([key, ...later])
  const good = begun.pieces.filter(({ spoiled }) => !spoiled)
  const has = good.filter(({ done }) => done.some((logged) => met.has(logged))).length
  return { lacking: good.length - has, done: has }
}

/** Minutes that are left of an operation over the batch. */
function minutesLeft(
  operation: Operation,
  perBlank: number,
  { learningRate: rate, learningForm: form }: Pick<Shop, 'learningRate' | 'learningForm'>,
  { lacking, done }: ReturnType<typeof countsOf>,
): number {
  if (lacking === 0) return 0
  const each = operation.minutesEach / perBlank
  const once = done === 0 ? operation.minutesOnce : 0
  if (!operation.learns) return once + each * lacking
  return (
    once +
    each *
      firstMinutes(learningTotal(done + lacking, rate, form) - learningTotal(done, rate, form), rate, form)
  )
}

const isSpun = ({ pass, rpmCeiling, rpm }: Operation): boolean =>
  pass > 0 && (rpmCeiling ?? rpm) !== undefined

/** What is done by hand between two things done on the lathe in one mounting leaves the batch set up on it. */
function isAtLathe(operations: readonly Operation[], place: number): boolean {
  const { pass } = operations[place]!
  const isSameSpun = (other: Operation): boolean => other.pass === pass && isSpun(other)
  return operations.slice(0, place + 1).some(isSameSpun) && operations.slice(place).some(isSameSpun)
}

/**
 * Days of a wait that are left of `whole`. Strips and glue wait together: one piece that is further on is past it for
 * all. Whatever else dries does so piece by piece, and the last decides.
 */
function daysLeft(whole: number, plan: Plan, place: number, begun?: Begun): number {
  if (!begun) return whole
  const { key, pass } = plan.operations[place]!
  const later = new Set(plan.operations.slice(place + 1).map((operation) => operation.key))
  const good = begun.pieces.filter(({ spoiled }) => !spoiled)
  const waiting = good.filter(({ done }) => !done.some((logged) => later.has(logged)))
  if (waiting.length === 0 || (pass === 0 && waiting.length < good.length)) return 0
  const last = begun.lastDone.get(key)
  const allDone = waiting.every(({ done }) => done.includes(key))
  return last !== undefined && allDone ? Math.max(0, last + whole - begun.today) : whole
}

/** Whole days of a wait: as it is planned, and as it goes nine times in ten at most. */
function daysOf(wait: Wait): { planned: number; slow: number } {
  const { mean, sd } = momentsOf(wait)
  const planned = Math.ceil(wait.hours / 24)
  return { planned, slow: Math.max(planned, Math.ceil(mean + Z90 * sd - 1e-9)) }
}

/**
 * What is left to do of a job, in order: work away from the lathe and at it, and what must be waited for. All paid
 * minutes of the plan are in it, with the shop’s allowance for rest; of a begun batch those of what its pieces still
 * lack.
 */
export function chainOf(
  plan: Plan,
  shop: Pick<Shop, 'learningRate' | 'learningForm' | 'restAllowance'>,
  begun?: Begun,
): Chain {
  const { operations, blank, finish, time } = plan
  const made = partsOf(plan)
  const perBlank = made / blank.count
  const waits =
    plan.waits ??
    waitsFor(
      operations.map(({ kind }) => kind),
      finish,
    )
  const places = waits
    .map((wait) => ({ wait, place: placeOf(wait, operations) }))
    .filter(({ place }) => place >= 0)
  const minutes = (place: number, so?: Begun): number =>
    minutesLeft(operations[place]!, perBlank, shop, countsOf(plan, place, made, so))
  const whole = operations.reduce((sum, _, i) => sum + minutes(i), 0)
  // Sharpening and changes belong to the work as it goes on.
  const more = (whole > 0 ? Math.max(1, time.minutes / whole) : 1) * (1 + shop.restAllowance)
  const chain: (Work | Waiting)[] = []
  operations.forEach((_, i) => {
    const [atLathe, left] = [isAtLathe(operations, i), more * minutes(i, begun)]
    const last = chain.at(-1)
    if (last?.kind === 'work' && last.atLathe === atLathe) last.minutes += left
    else if (left > 0)
      chain.push({
        kind: 'work',
        name: atLathe ? 'at the lathe' : 'away from the lathe',
        minutes: left,
        atLathe,
      })
    for (const { wait, place } of places) {
      if (place !== i) continue
      const { planned, slow } = daysOf(wait)
      const [days, slowDays] = [planned, slow].map((whole) => daysLeft(whole, plan, place, begun)) as [
        number,
        number,
      ]
      if (slowDays > 0) chain.push({ kind: 'wait', name: wait.name, days, slowDays })
    }
  })
  return chain
}
