import type { LatheFit } from '../blank/blank.ts'
import type { LatheSize } from '../blank/lathe-fit.ts'
import type { TurningLathe } from '../turning/lathe.ts'
import type { Speed, SpeedWork } from '../turning/speed.ts'
import { toolRestFor, toolRestPositions } from '../turning/tool-rest.ts'
import { lengthText, styleOf } from '../units/length.ts'
import type { RouteInput } from './input.ts'
import { type PartShape, partShapeOf } from './part-shape.ts'
import { restReaches } from './rest-reaches.ts'
import { type BlankState, spinningOf, stageSpeed } from './stage-speed.ts'

/** The lathe a job goes on, why, and why no other of the shop; sentences for the turner. */
export interface LatheChoice {
  name: string
  why: string[]
  others: { name: string; why: string }[]
  /** Length of the tool rest that is mounted, mm, and from how many positions it serves all that is turned. */
  rest: number
  positions: number
}

/** A lathe of the shop with what has to be known of it: size in mm, speeds in rpm. */
type ShopLathe = LatheSize & TurningLathe

/** What is done on it, at which state of the blank, in words. */
const works: readonly { work: SpeedWork; state: BlankState; word: string }[] = [
  { work: 'roughing', state: 'square', word: 'roughing' },
  { work: 'shaping', state: 'roughed', word: 'shaping' },
  { work: 'sanding', state: 'shaped', word: 'sanding' },
]
/** A step that misses what is wanted by less counts as near. Common practice, no source. */
const NEAR = 0.1
/** A drive that has every speed: what is wanted, before a lathe has its say. */
const everySpeed = { name: 'any', speeds: { least: 1, most: 1e6 }, restLength: 1 }

interface Reckoned {
  lathe: ShopLathe
  fit: LatheFit
  /** Works for which it has no speed under the ceiling, and those for which it has nothing as slow as wanted. */
  unsafe: string[]
  fast: string[]
  /** Share of the wanted speed it misses in the mean, in steps of what counts as near. */
  missed: number
  steps: string[]
  slowest: Speed
  rest: number
  positions: number
}

function reckon(input: RouteInput, shape: PartShape, lathe: ShopLathe, fit: LatheFit): Reckoned {
  const spinning = spinningOf(input, shape)
  const speedOn = (on: TurningLathe, { work, state }: (typeof works)[number]): Speed =>
    stageSpeed({ ...input, lathe: on }, spinning, { work, state, mount: input.mount })
  const tried = works.map((work) => ({
    word: work.word,
    speed: speedOn(lathe, work),
    wanted: speedOn(everySpeed, work).rpm,
  }))
  const known = tried.filter(({ speed, wanted }) => speed.rpm !== undefined && wanted !== undefined)
  const missing = known.map(({ speed, wanted }) => Math.abs(speed.rpm! - wanted!) / wanted!)
  const mean = missing.reduce((sum, share) => sum + share, 0) / Math.max(1, missing.length)
  const rest = toolRestFor(lathe, input.blank.length)
  return {
    lathe,
    fit,
    unsafe: tried.filter(({ speed }) => speed.rpm === undefined).map(({ word }) => word),
    fast: known.filter(({ speed, wanted }) => speed.rpm! > wanted!).map(({ word }) => word),
    missed: Math.floor(mean / NEAR),
    steps: known.map(({ word, speed, wanted }) => `${word} ${speed.rpm} rpm of ${wanted} rpm wanted`),
    slowest: tried[0]!.speed,
    rest,
    positions: toolRestPositions(restReaches(input, shape), rest).length,
  }
}

/** What counts, the weightiest first: the less of each the better. */
const counts = ({ unsafe, fast, missed, positions }: Reckoned): number[] => [
  unsafe.length,
  fast.length,
  missed,
  positions,
]

function better(a: Reckoned, b: Reckoned): number {
  const [left, right] = [counts(a), counts(b)]
  const at = left.findIndex((count, i) => count !== right[i])
  return at < 0 ? 0 : left[at]! - right[at]!
}

const positionsText = (count: number): string => `${count} ${count === 1 ? 'position' : 'positions'}`

function reasons(
  { units, blank }: RouteInput,
  { lathe, unsafe, slowest, steps, rest, positions }: Reckoned,
): string[] {
  const text = (mm: number): string => lengthText(mm, styleOf(units))
  return [
    `The blank of ${text(blank.length)} goes between its centres, ${text(lathe.betweenCentres)}.`,
    `Its diagonal of ${text(blank.diagonal)} clears the bed (swing ${text(lathe.swing)}) and the base of the tool rest (${text(lathe.swingOverRest)}).`,
    ...(unsafe.length > 0
      ? [`No safe speed for ${unsafe.join(' and ')} even here.`]
      : [
          `Slow enough for the diagonal: it roughs at ${slowest.rpm} rpm under a ceiling of ${Math.floor(slowest.rpmCeiling)} rpm.`,
        ]),
    ...(steps.length > 0 ? [`Its speeds: ${steps.join(', ')}.`] : []),
    `Its ${text(rest)} rest serves all that is turned from ${positionsText(positions)}.`,
  ]
}

/** Why one that takes the blank too comes after the chosen. */
function whyNot({ units }: RouteInput, chosen: Reckoned, other: Reckoned): string {
  if (!other.fit.fits) return other.fit.why.join(' ')
  if (other.unsafe.length > chosen.unsafe.length)
    return `No speed of it is under the ceiling for ${other.unsafe.join(' and ')}.`
  if (other.fast.length > chosen.fast.length)
    return `It has nothing as slow as wanted for ${other.fast.join(' and ')}.`
  if (other.missed > chosen.missed)
    return `Its speeds are farther from what is wanted: ${other.steps.join(', ')}.`
  if (other.positions > chosen.positions)
    return `Its ${lengthText(other.rest, styleOf(units))} rest needs ${positionsText(other.positions)} against ${chosen.positions}.`
  return 'It does as well; the one first on the shop’s list is taken.'
}

/**
 * The lathe of the shop for a job, with reasons: of those that take the blank the one with a speed under every
 * ceiling, then slow enough to be wanted, then with speeds near what is wanted, then with fewest positions of its tool
 * rest; where all is equal, the first of the list. Nothing where none takes the blank. Lengths mm, speeds rpm; the
 * order of what counts is common practice, no source, and the lathe maker’s manual comes first.
 */
export function latheFor(
  input: RouteInput,
  lathes: readonly ShopLathe[],
  fits: readonly LatheFit[],
): LatheChoice | undefined {
  const shape = partShapeOf(input.profile)
  const reckoned = lathes.flatMap((lathe, i) => (fits[i] ? [reckon(input, shape, lathe, fits[i])] : []))
  const chosen = reckoned.filter(({ fit }) => fit.fits).sort(better)[0]
  if (!chosen) return undefined
  return {
    name: chosen.lathe.name,
    why: reasons(input, chosen),
    rest: chosen.rest,
    positions: chosen.positions,
    others: reckoned
      .filter((one) => one !== chosen)
      .map((other) => ({ name: other.lathe.name, why: whyNot(input, chosen, other) })),
  }
}
