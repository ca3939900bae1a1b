import { MOISTURE_OVER_SERVICE } from './moisture.ts'

/** A weight (g) or a meter reading (% MC), or both, of one piece of wood; `at` ISO 8601. */
export interface DryingReading {
  grams?: number
  moisture?: number
  at: string
}

/** How far one piece of wood has dried. */
export interface DryingState {
  state: 'unweighed' | 'drying' | 'dry'
  /** What it rests on, or what is missing, in a sentence. */
  why: string
  /** From when a weighing can show it dry, ms since 1970; absent before the first weighing and where it is dry. */
  weighAgain?: number
  /** Part of its weight lost since the weighing it is held against. */
  lost?: number
}

/** Weighings that show wood dry lie so far apart. Common practice, no source. */
const WEEK_MS = 7 * 24 * 3_600_000
/** Dry wood changes by less than this of its weight in that time. Common practice, no source. */
const STEADY = 0.005

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`

/** The moisture at which wood on the rack may be finish-turned, % MC, by that of its use. */
export const dryBelow = (inUse: number): number => inUse + MOISTURE_OVER_SERVICE

interface Weighed {
  grams: number
  ms: number
}

/** What the scale alone says. */
function byScale(weighed: readonly Weighed[]): DryingState {
  const latest = weighed.at(-1)!
  const weighAgain = (first: Weighed) => first.ms + WEEK_MS
  const held = weighed.filter(({ ms }) => latest.ms - ms >= WEEK_MS).at(-1)
  if (!held) {
    const why =
      weighed.length === 1
        ? 'Weighed once: one weighing never shows that wood is dry.'
        : 'Its weighings lie less than a week apart.'
    return { state: 'drying', why, weighAgain: weighAgain(weighed[0]!) }
  }
  // A weighing in between that is far off shows that one of them is wrong.
  const since = weighed.filter(({ ms }) => ms >= held.ms).map(({ grams }) => grams)
  const change = (Math.max(...since) - Math.min(...since)) / held.grams
  const lost = (held.grams - latest.grams) / held.grams
  const days = Math.floor((latest.ms - held.ms) / (WEEK_MS / 7))
  if (change < STEADY)
    return {
      state: 'dry',
      lost,
      why: `Its weight changed by ${percent(change)} in ${days} days: under 0.5 %.`,
    }
  const why = `Its weight changed by ${percent(change)} in ${days} days: dry is under 0.5 %.`
  return { state: 'drying', lost, why, weighAgain: weighAgain(latest) }
}

/**
 * Whether a piece of wood is dry enough to be finish-turned: two weighings at least a week apart that differ by less
 * than 0.5 %, and none in between that does not, or the meter at or below `dryAt`, % MC. A meter above that, read no
 * earlier than the last weighing, stands against the scale: the wood has come to rest in air that is too damp. Never
 * dry by one weighing. The readings in any order, of one piece.
 *
 * @example dryingState([{ moisture: 9, at: '2026-03-02T08:00:00Z' }], 10).state // 'dry'
 * @example dryingState([{ grams: 800, at: '2026-03-02T08:00:00Z' }], 10).state // 'drying'
 * @example dryingState([], 10).state // 'unweighed'
 */
export function dryingState(readings: readonly DryingReading[], dryAt: number): DryingState {
  const inOrder = readings
    .map((reading) => ({ ...reading, ms: Date.parse(reading.at) }))
    .sort((a, b) => a.ms - b.ms)
  const metered = inOrder.filter(({ moisture }) => moisture !== undefined).at(-1)
  const weighed = inOrder.flatMap(({ grams, ms }) => (grams === undefined ? [] : [{ grams, ms }]))
  const isLatest = metered !== undefined && metered.ms >= (weighed.at(-1)?.ms ?? 0)
  const said = `${metered?.moisture} % by the meter`
  if (isLatest && metered.moisture! <= dryAt) return { state: 'dry', why: `${said}: at or below ${dryAt} %.` }
  const scale = weighed.length > 0 ? byScale(weighed) : undefined
  if (!scale) {
    return metered
      ? { state: 'drying', why: `${said}: to be ${dryAt} % or less.`, weighAgain: metered.ms + WEEK_MS }
      : { state: 'unweighed', why: 'Not weighed yet: weigh it or put the meter to it.' }
  }
  if (scale.state !== 'dry' || !isLatest) return scale
  const why = `${said}, though it loses no weight any more: it has come to rest in air too damp for ${dryAt} %.`
  return { ...scale, state: 'drying', why, weighAgain: metered.ms + WEEK_MS }
}
