import type { Lift } from '../shared/cutting/pick.ts'
import { keyInPart, partOfKey } from '../shared/cutting/together.ts'
import { boardFeetNet } from '../shared/units/board-foot.ts'
import { moneyText } from '../shared/units/money.ts'
import { boardFeetText } from './elements/amounts.ts'
import { type Choice, costOf } from './yard-order.ts'
import type { PulledBoard, YardNeed, YardTally } from './yard-tally.ts'
import { paidText } from './yard-words.ts'

/** How good the choice is, in plain words. */
export function proofWords(choice: Choice, currency: string, isSearching: boolean): string {
  const { sum, leastMinor, plan, proven } = choice
  if (choice.keep.length === 0) return 'Boards on hand give every blank: nothing needs to be bought.'
  const isPriced = leastMinor !== undefined && sum.minor !== undefined
  const [least, now, verb] = isPriced
    ? [moneyText(leastMinor, currency), paidText(sum, currency), 'cost']
    : [boardFeetText(plan.lowerBound), boardFeetText(plan.cost), 'use']
  if (proven)
    return `Proven: no choice from these boards ${verb}s less than ${least}; this one ${verb}s ${now}.`
  const [bound, cost] = isPriced ? [leastMinor, sum.minor!] : [plan.lowerBound, plan.cost]
  const over = bound > 0 ? Math.ceil((cost / bound - 1) * 1000) / 10 : undefined
  const gap = over === undefined ? '' : `, at most ${over} % more`
  const going = isSearching ? ' A better one is still looked for.' : ''
  return `No choice from these boards ${verb}s less than ${least}; this one ${verb}s ${now}${gap}.${going}`
}

/** What is missing of each job, where several are bought for. */
export function missingWords({ plan }: Pick<Choice, 'plan'>, needs: readonly YardNeed[]): string[] {
  const counts = new Map<string, number>()
  for (const { key, count } of plan.unmet) {
    const { part } = partOfKey(key)
    counts.set(part, (counts.get(part) ?? 0) + count)
  }
  return needs.flatMap(({ job, name }) => (counts.has(job) ? [`${name}: ${counts.get(job)}`] : []))
}

/** About how many board feet the missing blanks still take, at the yield of the boards so far; empty without any. */
export function feetMissingWords({ plan }: Pick<Choice, 'plan'>, needs: readonly YardNeed[]): string {
  if (plan.yield <= 0) return ''
  const blanks = new Map(
    needs.flatMap(({ job, order }) =>
      order.blanks.map((blank) => [keyInPart(job, blank.key), blank] as const),
    ),
  )
  const net = plan.unmet.reduce((total, { key, count }) => {
    const blank = blanks.get(key)
    if (!blank) return total
    const { side, length, thickness = side } = blank
    return total + count * boardFeetNet({ thickness, width: side, length })
  }, 0)
  return `About ${Math.ceil(net / plan.yield)} bd ft more, if boards go on yielding as these do.`
}

/** Lifts that follow each other to the same place, together: the numbers chalked on the boards. */
export function liftRuns(
  lifts: readonly Lift[],
  boards: readonly PulledBoard[],
): { to: Lift['to']; numbers: number[] }[] {
  const numbers = new Map(boards.map(({ board, number }) => [board.key, number]))
  const runs: { to: Lift['to']; numbers: number[] }[] = []
  for (const { key, to } of lifts) {
    const last = runs.at(-1)
    const number = numbers.get(key)!
    if (last?.to === to) last.numbers.push(number)
    else runs.push({ to, numbers: [number] })
  }
  return runs
}

/** Boards whose price is wanting while others have one: then board feet are compared. Empty where all is well. */
export function unpricedWords(boards: readonly PulledBoard[], tally: YardTally): string {
  const without = boards.filter((pulled) => costOf(pulled, tally) === undefined)
  if (without.length === 0 || without.length === boards.length) return ''
  const numbers = without.map(({ number }) => number).join(', ')
  return `No price for ${without.length === 1 ? 'board' : 'boards'} ${numbers}: board feet are compared until there is one.`
}
