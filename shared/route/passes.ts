import { resetsFor, type SizedPlace } from '../turning/calipers.ts'
import { nm } from '../units/length.ts'
import type { OperationDraft, Passes, PassSegment } from './operation.ts'
import { restMoves, speedChanges } from './rest-moves.ts'

/** Minutes each. */
export interface PassCosts {
  /** Taking a blank up, centring it and setting the rest. */
  mounting: number
  /** Laying one tool down and taking up another. */
  toolChange: number
  /** Setting another speed. */
  speedChange: number
  /** Setting a caliper. */
  reset: number
  /** Moving the tool rest: a stop, a re-gap, a turn by hand. */
  restMove: number
}

/** All figures: common practice, no source. */
export const defaultPassCosts: PassCosts = {
  mounting: 1,
  toolChange: 0.15,
  speedChange: 0.3,
  reset: 0.5,
  restMove: 0.5,
}

/** What the passes need to know of an operation on the lathe. */
export type PassWork = Pick<
  OperationDraft,
  'key' | 'kind' | 'name' | 'stage' | 'tool' | 'rpm' | 'restPosition' | 'restThrough'
>

export interface PassInput {
  pieces: number
  /** The mounting itself: its speed is where every mounting starts. */
  mount: PassWork
  /** What is done between mounting a blank and taking it off for good, in working order. */
  operations: readonly PassWork[]
  /** Whether a blank may be taken off after each of them and mounted again later. */
  mayBreak: readonly boolean[]
  /** Why it may not, where it may nowhere. */
  whyNoBreak?: string
  places: readonly SizedPlace[]
  calipers: number
  /** Minutes to make one preset gauge; without it calipers are set. */
  gaugeMinutes?: number
  costs?: Partial<PassCosts>
  /** Why all must come off after an operation (its index) and dry before any goes on; absent when nothing forces it. */
  forced?: { after: number; why: string }
}

/** Minutes over the batch for going through operations `from` up to `to` with every blank, mounted once for it. */
export interface SegmentMinutes {
  mounting: number
  /** Of which the hand that takes up a tool counts among the minutes of the operation itself. */
  tools: number
  speeds: number
  rests: number
  resets: number
}

const total = ({ mounting, tools, speeds, rests, resets }: SegmentMinutes): number =>
  mounting + tools + speeds + rests + resets

/** Tools taken up over the batch: with one tool for all there is only the first; else the last is changed for the first. */
function toolChanges(operations: readonly PassWork[], pieces: number): number {
  // Marks are struck with a stick held to the work; nothing is laid down for it.
  const tools = operations.flatMap(({ tool, stage }) => (stage === 'layout' ? [] : [tool]))
  const runs = tools.filter((tool, i) => tool !== tools[i - 1]).length
  if (runs <= 1) return runs
  return runs + (pieces - 1) * (runs - (tools[0] === tools.at(-1) ? 1 : 0))
}

/**
 * Resets of the calipers over the batch in one segment. Where no cut has to wait for another and where there are no
 * more settings than calipers this is known at once; else it is searched for.
 */
function resetsOf(places: SizedPlace[], { pieces, calipers }: PassInput): number {
  const settings = new Set(places.map(({ diameter }) => nm(diameter))).size
  const over = Math.max(0, settings - Math.max(1, calipers))
  const own = new Set(places.map(({ operation }) => operation))
  const isFree = places.every(({ after = [] }) => after.every((key) => !own.has(key)))
  if (over === 0 || isFree) return settings + (pieces - 1) * over
  return resetsFor({ places, pieces, calipers, mode: 'by-piece' })
}

/**
 * What it takes to go through operations `from` up to and without `to` with every blank before the next segment:
 * every blank is mounted, starts with the speed down, and has the rest in its first place; a single tool is taken up
 * once. Minutes for the batch.
 */
export function segmentMinutes(
  input: PassInput,
  from: number,
  to: number,
  withGauges = false,
): SegmentMinutes {
  const { pieces, mount } = input
  const costs = { ...defaultPassCosts, ...input.costs }
  const operations = input.operations.slice(from, to)
  const keys = new Set(operations.map(({ key }) => key))
  const places = input.places.filter(({ operation }) => operation !== undefined && keys.has(operation))
  const mounted = [mount, ...operations]
  return {
    mounting: pieces * costs.mounting,
    tools: toolChanges(operations, pieces) * costs.toolChange,
    speeds: pieces * speedChanges(mounted) * costs.speedChange,
    rests: pieces * restMoves(mounted) * costs.restMove,
    resets: withGauges ? 0 : resetsOf(places, input) * costs.reset,
  }
}

/** Ends of segments, each the index after its last operation. */
type Ends = number[]

interface Way {
  minutes: number
  ends: Ends
}

/** Places for a break that are looked at; beyond, only where another kind of operation begins. */
const BREAKS_MAX = 40

/** Indices before which a blank may be taken off, from the first operation to behind the last. */
function breaksOf({ operations, mayBreak, forced }: PassInput): number[] {
  const inside = operations.slice(1).flatMap((operation, i) => {
    // Wet wood is roughed at one go: nothing is gained by drying half of it longer.
    if (!mayBreak[i] || (forced && i < forced.after)) return []
    return [{ at: i + 1, isKind: operation.kind !== operations[i]!.kind || forced?.after === i }]
  })
  const few = inside.length > BREAKS_MAX ? inside.filter(({ isKind }) => isKind) : inside
  return [...new Set([...few.map(({ at }) => at), ...(forced ? [forced.after + 1] : [])])].sort(
    (a, b) => a - b,
  )
}

/**
 * The cheapest way to break the operations into segments, by dynamic programming over where the last one begins
 * (Bellman, Dynamic Programming, 1957): what comes before a break costs the same whatever comes after it. `several`
 * has one break at the least.
 */
function cheapest(
  input: PassInput,
  breaks: readonly number[],
  withGauges: boolean,
): { one: Way; several?: Way } {
  const count = input.operations.length
  const forced = input.forced && input.forced.after + 1
  const spans = (from: number, to: number): boolean => forced !== undefined && from < forced && to > forced
  const segment = (from: number, to: number): number => total(segmentMinutes(input, from, to, withGauges))
  const best = new Map<number, Way>()
  const into = (to: number, begins: readonly number[]): Way | undefined => {
    let found: Way | undefined
    for (const from of begins) {
      if (spans(from, to)) continue
      const before = from === 0 ? { minutes: 0, ends: [] } : best.get(from)
      if (!before) continue
      const minutes = before.minutes + segment(from, to)
      if (!found || minutes < found.minutes - 1e-9) found = { minutes, ends: [...before.ends, to] }
    }
    return found
  }
  for (const [i, at] of breaks.entries()) {
    const way = into(at, [0, ...breaks.slice(0, i)])
    if (way) best.set(at, way)
  }
  const several = into(count, breaks)
  return { one: { minutes: segment(0, count), ends: [count] }, ...(several && { several }) }
}

/** A gauge for every setting, made once for the batch. */
function gaugesMinutes({ places, gaugeMinutes }: PassInput): number {
  if (gaugeMinutes === undefined) return Number.POSITIVE_INFINITY
  return gaugeMinutes * new Set(places.map(({ diameter }) => nm(diameter))).size
}

const minutesText = (minutes: number): string => `${Math.round(minutes)} min`

function segmentOf(input: PassInput, from: number, to: number, withGauges: boolean): PassSegment {
  const operations = input.operations.slice(from, to)
  return {
    operations: operations.map(({ key }) => key),
    minutes: total(segmentMinutes(input, from, to, withGauges)),
    from: operations[0]!.name,
    to: operations.at(-1)!.name,
  }
}

function whyOf(input: PassInput, one: number, several: Way | undefined, isSeveral: boolean): string {
  const { pieces, operations, forced, whyNoBreak } = input
  if (forced) return forced.why
  if (!several) return whyNoBreak ?? 'There is nothing to part the work at.'
  const breaks = several.ends.slice(0, -1).map((end) => `“${operations[end - 1]!.name}”`)
  const at = `a break after ${breaks.join(' and ')}`
  return isSeveral
    ? `With ${at} every blank is mounted ${several.ends.length} times; fewer changes of tool, speed, rest and caliper save ${minutesText(one - several.minutes)} more than that takes.`
    : `Mounting all ${pieces} again costs more than it saves in changes of tool, speed, rest and caliper: ${minutesText(several.minutes - one)} more even at best, with ${at}.`
}

/**
 * Minutes of a segment that no operation has among its own. Mounting a blank is an operation, taking up a tool is among
 * the minutes of each, both at the usual pace: of these only what the shop’s own pace adds or takes.
 */
function changesIn({ mounting, tools, speeds, rests, resets }: SegmentMinutes, { costs }: PassInput): number {
  const own = { ...defaultPassCosts, ...costs }
  const beyond = (minutes: number, name: 'mounting' | 'toolChange'): number =>
    own[name] > 0 ? minutes * (1 - defaultPassCosts[name] / own[name]) : 0
  return speeds + rests + resets + beyond(mounting, 'mounting') + beyond(tools, 'toolChange')
}

/**
 * One mounting a blank, or several with all blanks going through one segment of the work before the next: the cheapest
 * of all ways to break the work, calipers set or gauges made, whichever takes less. Minutes for the batch of mounting
 * and changing; of the work itself, which is the same either way, nothing is counted. `byPiece` is no break at all,
 * `byOperation` one wherever it may be.
 */
export function passesFor(input: PassInput): Passes {
  const count = input.operations.length
  const breaks = breaksOf(input)
  const gauges = gaugesMinutes(input)
  const ways = [false, true].map((withGauges) => {
    const more = withGauges ? gauges : 0
    const { one, several } = cheapest(input, Number.isFinite(more) ? breaks : [], withGauges)
    const plus = (way: Way): Way & { withGauges: boolean } => ({
      ...way,
      minutes: way.minutes + more,
      withGauges,
    })
    return { one: plus(one), several: several && plus(several) }
  })
  const least = <T extends Way>(all: (T | undefined)[]): T | undefined =>
    all.reduce((a, b) => (b && (!a || b.minutes < a.minutes - 1e-9) ? b : a), undefined)
  const one = least(ways.map((way) => way.one))!
  const several = least(ways.map((way) => way.several))
  const isSeveral =
    several !== undefined && (input.forced !== undefined || several.minutes < one.minutes - 1e-9)
  const chosen = isSeveral ? several : one
  const starts = [0, ...chosen.ends.slice(0, -1)]
  const everyBreak = [...breaks, count].reduce(
    (sum, end, i) => sum + total(segmentMinutes(input, breaks[i - 1] ?? 0, end)),
    0,
  )
  const parts = starts.map((from, i) => segmentMinutes(input, from, chosen.ends[i]!, chosen.withGauges))
  return {
    chosen: isSeveral ? 'several' : 'one',
    one: one.minutes,
    several: several?.minutes ?? everyBreak,
    why: whyOf(input, one.minutes, several, isSeveral),
    segments: starts.map((from, i) => segmentOf(input, from, chosen.ends[i]!, chosen.withGauges)),
    byPiece: one.minutes,
    byOperation: everyBreak,
    withGauges: chosen.withGauges,
    changes: parts.reduce((sum, part) => sum + changesIn(part, input), 0) + (chosen.withGauges ? gauges : 0),
  }
}
