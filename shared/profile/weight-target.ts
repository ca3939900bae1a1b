import { type LengthStyle, lengthText, nm, type Units } from '../units/length.ts'
import { lengthDown, lengthUp } from '../units/length-below.ts'
import { massFigures } from '../units/mass.ts'
import { massOf } from '../wood/density.ts'
import { type FreeGroup, freeGroups } from './free-diameters.ts'
import type { Profile, Station } from './profile.ts'
import { rootBetween } from './root-between.ts'
import { sizeText } from './size-text.ts'
import { solidOf } from './solid.ts'

/** What a part should weigh, g, and where it should balance, mm from the foot; either alone or both. */
export interface WeightTarget {
  mass?: number
  balance?: number
  /** Indices of stations whose diameters stay as they are. */
  keep: number[]
  /** How the reasons write lengths; mm where nothing is said. */
  style?: LengthStyle
  /** Whether they write weights in grams, as with mm, or in ounces and pounds; grams where nothing is said. */
  units?: Units
}

/** A diameter that is to change; mm. */
export interface DiameterChange {
  index: number
  field: 'diameter'
  from: number
  to: number
}

/** What changing one stretch alone would take: stations that stay equal with one another. */
export interface AloneChange {
  /** Its first station. */
  index: number
  /** All its stations. */
  stations: number[]
  /** By how much their diameters would grow, mm; absent where that does not do it. */
  diameterChange?: number
  why?: string
}

/** How to meet a weight or a balance point. Masses g, lengths mm from the foot. */
export interface WeightAnswer {
  /** The stations with their new diameters; as they were where it cannot be had. */
  stations: Station[]
  /** Mass and balance point of these stations. */
  mass: number
  balance: number
  changes: DiameterChange[]
  alone: AloneChange[]
  /** The least and the most that the free diameters give; the balance at the mass aimed at, else at the present one. */
  limits: { mass: [number, number]; balance: [number, number] }
  /** Why it cannot be had, with the limits. */
  why?: string
}

/** Mass g and balance point mm. */
interface Weight {
  mass: number
  balance: number
}

/** A change of the free diameters: factors by group. */
type Factors = number[]

/** A slope so steep that every group but those at the pivot stands at its limit. */
const STEEPEST = 10

/** Shares of the target that the search settles to; a thousandth is asked for. */
const MASS_CLOSE = 1e-10
const BALANCE_CLOSE = 1e-8

/** A profile with what of it may change. */
class Shaper {
  readonly groups: FreeGroup[]
  private readonly profile: Profile
  private readonly density: number
  private readonly middle: number
  private readonly half: number

  constructor(profile: Profile, density: number, keep: number[]) {
    this.profile = profile
    this.density = density
    this.groups = freeGroups(profile, keep)
    const [from, to] = [profile.stations[0]!.at, profile.stations.at(-1)!.at]
    this.middle = (from + to) / 2
    this.half = (to - from) / 2
  }

  stations(factors: Factors): Station[] {
    const stations = [...this.profile.stations]
    this.groups.forEach((group, g) => {
      for (const i of group.stations)
        stations[i] = { ...stations[i]!, diameter: group.diameter * factors[g]! }
    })
    return stations
  }

  weight(factors: Factors): Weight {
    const solid = solidOf({ ...this.profile, stations: this.stations(factors) })
    return { mass: massOf(solid.volume, this.density), balance: solid.centroid }
  }

  /** All by one factor, and more towards the top by a slope; each group no farther than it may. */
  sloped(level: number, slope: number): Factors {
    return this.groups.map(({ at, least, most }) =>
      Math.min(most, Math.max(least, 1 + level + (slope * (at - this.middle)) / this.half)),
    )
  }

  /** That slope, at the level that gives the mass. */
  weighing(mass: number, slope: number): Factors {
    const reach = 1 + Math.abs(slope)
    const over = (level: number): number => this.weight(this.sloped(level, slope)).mass - mass
    return this.sloped(rootBetween(over, -reach, reach, MASS_CLOSE), slope)
  }

  /** The slope, at that mass, which puts the balance there. */
  balancing(mass: number, balance: number): Factors {
    const beyond = (slope: number): number => this.weight(this.weighing(mass, slope)).balance - balance
    return this.weighing(mass, rootBetween(beyond, -STEEPEST, STEEPEST, BALANCE_CLOSE))
  }
}

/** What is wished for and what can be had, in words that differ where the figures do; limits do not read wider. */
type Texts = (wish: number, limits: [number, number]) => [wish: string, least: string, most: string]

const MOST_FIGURES = 12

/** Masses in as many figures as it takes to tell the wish from the limits. */
const massTexts =
  (units: Units): Texts =>
  (wish, [least, most]) => {
    for (let figures = 4; ; figures++) {
      const text = (grams: number): string => massFigures(grams, units, figures, Math.max(wish, least))
      const texts: [string, string, string] = [text(wish), text(least), text(most)]
      if (figures === MOST_FIGURES || (texts[0] !== texts[1] && texts[0] !== texts[2])) return texts
    }
  }

const lengthTexts =
  (style: LengthStyle): Texts =>
  (wish, [least, most]) => {
    const texts: [string, string, string] = [
      lengthText(wish, style),
      lengthUp(least, style),
      lengthDown(most, style),
    ]
    return texts[0] !== texts[1] && texts[0] !== texts[2]
      ? texts
      : [sizeText(wish), sizeText(least), sizeText(most)]
  }

const inside = (value: number, [least, most]: [number, number]): boolean =>
  value >= least * (1 - 1e-9) && value <= most * (1 + 1e-9)

/** What one group alone would take: its factor, within its limits. */
function aloneFor(shaper: Shaper, g: number, target: WeightTarget): AloneChange {
  const { stations, diameter, least, most } = shaper.groups[g]!
  const found = { index: stations[0]!, stations }
  const only = (factor: number): Weight => shaper.weight(shaper.groups.map((_, i) => (i === g ? factor : 1)))
  const [read, wanted] =
    target.mass !== undefined
      ? [(weight: Weight) => weight.mass, target.mass]
      : [(weight: Weight) => weight.balance, target.balance!]
  const [low, high] = [read(only(least)), read(only(most))]
  const limits: [number, number] = [Math.min(low, high), Math.max(low, high)]
  if (!inside(wanted, limits)) {
    const { mass, style = 'mm', units = 'mm' } = target
    const texts = mass !== undefined ? massTexts(units) : lengthTexts(style)
    const [, least, most] = texts(wanted, limits)
    return { ...found, why: `It alone gives ${least} to ${most}.` }
  }
  const sign = high >= low ? 1 : -1
  const factor = rootBetween((k) => sign * (read(only(k)) - wanted), least, most, MASS_CLOSE)
  return { ...found, diameterChange: (factor - 1) * diameter }
}

/** Why the target cannot be had; nothing where it can. */
function whyNot(
  { mass, balance, style = 'mm', units = 'mm' }: WeightTarget,
  free: boolean,
  limits: WeightAnswer['limits'],
): string | undefined {
  if (!free)
    return 'No diameter is free to change: squares, tenons, fixed stations and those you hold stay as they are.'
  if (mass !== undefined && !inside(mass, limits.mass)) {
    const [wish, least, most] = massTexts(units)(mass, limits.mass)
    return `${wish} cannot be had: the free diameters give ${least} to ${most}; set more of them free.`
  }
  if (balance !== undefined && !inside(balance, limits.balance)) {
    const [wish, least, most] = lengthTexts(style)(balance, limits.balance)
    return `A balance point ${wish} from the foot cannot be had at that weight: the free diameters give ${least} to ${most}.`
  }
  return undefined
}

function changesTo({ stations }: Profile, after: Station[]): DiameterChange[] {
  return stations.flatMap(({ diameter }, index) => {
    const to = after[index]!.diameter
    if (diameter === undefined || to === undefined || nm(to) === nm(diameter)) return []
    return [{ index, field: 'diameter' as const, from: diameter, to }]
  })
}

/**
 * How to bring a part to a weight, a balance point or both (density in kg/m³): every free diameter by one share of
 * itself, and where the balance is to move by a share that grows evenly along the part. Arcs keep their own sagitta.
 * Squares, tenons, fixed stations and those in `keep` stay; without a mass the present one is kept. A part turned
 * to be split is taken whole. Met to far better than 0.1 %, or refused with the limits in `why`.
 */
export function weightFor(profile: Profile, density: number, target: WeightTarget): WeightAnswer {
  const shaper = new Shaper(profile, density, target.keep)
  const factors = (of: (group: FreeGroup) => number): Factors => shaper.groups.map(of)
  const now = shaper.weight(factors(() => 1))
  const massLimits: [number, number] = [
    shaper.weight(factors(({ least }) => least)).mass,
    shaper.weight(factors(({ most }) => most)).mass,
  ]
  const wanted = target.mass !== undefined && inside(target.mass, massLimits) ? target.mass : now.mass
  const balanced = (slope: number): number => shaper.weight(shaper.weighing(wanted, slope)).balance
  const limits: WeightAnswer['limits'] = {
    mass: massLimits,
    balance: [balanced(-STEEPEST), balanced(STEEPEST)],
  }
  const why = whyNot(target, shaper.groups.length > 0, limits)
  const chosen = why
    ? factors(() => 1)
    : target.balance === undefined
      ? shaper.weighing(wanted, 0)
      : shaper.balancing(wanted, target.balance)
  const stations = why ? profile.stations : shaper.stations(chosen)
  return {
    stations,
    ...(why ? now : shaper.weight(chosen)),
    changes: changesTo(profile, stations),
    alone: shaper.groups.map((_, g) => aloneFor(shaper, g, target)),
    limits,
    ...(why && { why }),
  }
}
