import { MM_PER_INCH, type Units } from '../units/length.ts'
import { fastestRpm, slowestRpm, speedNotAbove, type TurningLathe } from './lathe.ts'

/**
 * How the blank runs: `square` until it is a cylinder or while a part is left square, `glued-up` however it
 * runs, `untrue` when wet, badly centred or out of balance, `round` when it is round, true and sound.
 */
export type Trueness = 'square' | 'glued-up' | 'untrue' | 'round'

/** What is about to be done; `start` is the first turn after every mounting. */
export type SpeedWork = 'start' | 'roughing' | 'shaping' | 'sanding' | 'finishing'

export interface SpeedInput {
  /** Absent when no lathe of the shop fits: then there is a ceiling and no speed. */
  lathe?: Pick<TurningLathe, 'name' | 'speeds' | 'limitRpm'>
  /** Limit of chuck, faceplate or other accessory beside the lathe’s own, rpm. */
  accessoryRpm?: number
  /** Largest diameter that spins, mm: the diagonal of anything square. */
  diameter: number
  trueness: Trueness
  work: SpeedWork
  /** Still has its corners: set by the diagonal rule until it is round. */
  corners?: boolean
  /** Lowest speed at which the blank whips at this stage and on this mount, rpm. */
  criticalRpm?: number
  /** A mortise or hole open to the tool. */
  openMortise?: boolean
  /** System the ceiling is worded in; inches unless said. */
  units?: Units
}

export interface Speed {
  /** Absent where no safe speed exists; then `caution` says what would help. */
  rpm?: number
  rpmCeiling: number
  /** What sets the ceiling, in words. */
  ceilingBy: string
  caution?: string
}

/** Diameter × speed, in · rpm. */
export const speedRules = {
  /** Ceiling while square, glued-up or untrue. Turners’ rule, 6000 to 9000 in · rpm: its lower end. */
  ceilingUntrue: 6000,
  /** Ceiling round and sound. Turners’ rule, upper end; Milton & Wohlers (1919) ch. II gives 7200 to 9000 at 3 in. */
  ceilingRound: 9000,
  /** On the diagonal until it is round. Common practice, no source: some 600 rpm for a 2-1/4 in square. */
  corners: 2000,
  /** Roughing when round. Lathe speed table, from memory: 3000/D. */
  roughing: 3000,
  /** Shaping. Lathe speed table, from memory: 6500/D. */
  shaping: 6500,
  /** Oil, wax, polish: “low to slowest”, Milton & Wohlers (1919) ch. VIII; the figure is common practice, no source. */
  finishing: 2000,
}

/** Sanding runs below shaping (speed heats wood and paper); the share is common practice, no source. */
const SANDING_SHARE = 0.6
/** A mortise open to the tool catches: slower; the share is common practice, no source. */
const OPEN_MORTISE_SHARE = 0.75
/** A finish goes on at the lathe’s lowest step; on a drive without steps this, as low as many belts go. Common practice, no source. */
const FINISHING_DIAL = 400
/** Running speed stays under half the critical speed. Common practice, no source. */
const WHIP_SHARE = 0.5

/**
 * Rim speed in m/s of a diameter in mm at so many rpm.
 *
 * @example rimSpeed(76.2, 3000) // 11.96946801
 */
export const rimSpeed = (diameterMm: number, rpm: number): number => (Math.PI * diameterMm * rpm) / 60_000

/** The least of the limits that hold, rpm, and what sets it. */
function ceilingOf(input: SpeedInput): { rpm: number; by: string } {
  const inch = input.diameter / MM_PER_INCH
  const [rule, how] =
    input.trueness === 'round'
      ? ([speedRules.ceilingRound, 'round and sound'] as const)
      : ([speedRules.ceilingUntrue, ceilingWords[input.trueness]] as const)
  const rim = rimSpeed(input.diameter, rule / inch).toFixed(0)
  const quotient =
    input.units === 'mm'
      ? `${rule * MM_PER_INCH} ÷ ${input.diameter.toFixed(1)} mm`
      : `${rule} ÷ ${inch.toFixed(2)} in`
  const limits = [{ rpm: rule / inch, by: `${quotient}, ${how}: ${rim} m/s at the rim` }]
  const { lathe } = input
  if (lathe) limits.push({ rpm: fastestRpm(lathe.speeds), by: `top speed of the ${lathe.name}` })
  if (lathe?.limitRpm !== undefined)
    limits.push({ rpm: lathe.limitRpm, by: `limit set on the ${lathe.name}` })
  if (input.accessoryRpm !== undefined)
    limits.push({ rpm: input.accessoryRpm, by: 'limit of what holds the blank' })
  if (input.criticalRpm !== undefined)
    limits.push({
      rpm: input.criticalRpm * WHIP_SHARE,
      by: `half the ${Math.round(input.criticalRpm)} rpm at which it whips`,
    })
  return limits.reduce((least, limit) => (limit.rpm < least.rpm ? limit : least))
}

const ceilingWords = {
  square: 'while it has corners',
  'glued-up': 'glued up',
  untrue: 'not yet true',
} as const

/** What a turner would run, before the ceiling and the lathe have their say; rpm. */
function recommended(input: SpeedInput, ceiling: number): number {
  const inch = input.diameter / MM_PER_INCH
  const slower = input.openMortise ? OPEN_MORTISE_SHARE : 1
  const roughing =
    (input.corners || input.trueness === 'untrue' ? speedRules.corners : speedRules.roughing) / inch
  const shaping = Math.min(speedRules.shaping / inch, ceiling)
  const dial = input.lathe && 'steps' in input.lathe.speeds ? Number.POSITIVE_INFINITY : FINISHING_DIAL
  const by: Record<SpeedWork, number> = {
    start: 0,
    roughing,
    shaping,
    sanding: shaping * SANDING_SHARE,
    finishing: Math.min(speedRules.finishing / inch, shaping * SANDING_SHARE, dial),
  }
  return by[input.work] * slower
}

/** What would help when even the slowest step is too fast. */
function remedy(input: SpeedInput, slowest: number, ceiling: { rpm: number; by: string }): string {
  const whips = ceiling.by.startsWith('half')
  const help = whips
    ? 'a steady rest, a shorter or thicker part, or a slower drive would help'
    : 'a slower drive, sawing the corners off first, or a smaller blank would help'
  return `No safe speed: the slowest of the ${input.lathe?.name}, ${slowest} rpm, is above the ceiling of ${Math.floor(ceiling.rpm)} rpm (${ceiling.by}); ${help}.`
}

/**
 * The speed to run and the ceiling never to pass. Wood comes in all states: the lathe maker’s own limits and
 * the turner’s judgement come first, and every mounting starts with the speed down.
 *
 * @param input diameter in mm, speeds in rpm
 */
export function speedFor(input: SpeedInput): Speed {
  const ceiling = ceilingOf(input)
  const speed = { rpmCeiling: ceiling.rpm, ceilingBy: ceiling.by }
  if (!input.lathe) return { ...speed, caution: 'No speed: no lathe of the shop takes this blank.' }
  const slowest = slowestRpm(input.lathe.speeds)
  if (slowest > ceiling.rpm) return { ...speed, caution: remedy(input, slowest, ceiling) }
  const wanted = Math.min(recommended(input, ceiling.rpm), ceiling.rpm)
  const lowest = input.work === 'finishing' && 'steps' in input.lathe.speeds
  const rpm = lowest ? slowest : (speedNotAbove(input.lathe.speeds, wanted) ?? slowest)
  const cautions: string[] = []
  if (rpm > wanted && input.work !== 'start')
    cautions.push(
      `The lathe has nothing slower: some ${Math.round(wanted)} rpm would be better, so ${input.work === 'finishing' ? 'press' : 'cut'} lightly.`,
    )
  if (input.openMortise && (input.work === 'start' || input.work === 'roughing'))
    cautions.push('An open mortise catches: lower speed, rest well clear, fingers away.')
  return { rpm, ...speed, ...(cautions.length > 0 && { caution: cautions.join(' ') }) }
}
