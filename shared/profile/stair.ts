import { poundsForce } from '../units/force.ts'
import { inches, type LengthStyle, lengthText, nm } from '../units/length.ts'
import { lengthUp } from '../units/length-below.ts'
import { jointReach, type PlacedJoint } from './joint-reach.ts'
import { type Profile, type Span, spansOf } from './profile.ts'
import { spanAt, thinnestPlace } from './radius.ts'
import { apartTexts } from './size-text.ts'
import { type RailBending, railBending } from './stair-bending.ts'
import { type StairRun, stairRun } from './stair-run.ts'

/** What a job may say of its stair parts, mm and N; what it leaves out has the default. */
export interface StairWishes {
  /** Clear length between the posts, level. */
  run?: number
  /** Diameter of the ball that must not pass. */
  gap?: number
  /** Load across one part. */
  load?: number
  /** The length that shows between the rails, from the foot. */
  between?: [from: number, to: number]
}

export type StairUse = 'stair' | 'guard'

/** What the wood of stair parts says of its strength; `morMPa` is the modulus of rupture at 12 %. */
export interface StairWood {
  name: string
  morMPa?: number
  /** Moisture content in use, %. */
  serviceMoisture: number
}

/** Spacing and strength of parts in a guard or beside a stair. Lengths mm from the foot. */
export interface Stair {
  use: StairUse
  /** The ball that must not pass. */
  gap: number
  /** What shows between the rails: there it is measured, there it bends. */
  between: [from: number, to: number]
  /** The thinnest place between the rails; across the flats where it is left square. */
  least: { at: number; diameter: number }
  /** Centre to centre the parts stand closer than this. */
  spacingBelow: number
  /** How a run is filled; absent where no run is given. */
  run?: StairRun
  /** Absent, with the reason in `whyNoBending`, where the wood’s strength is not on record. */
  bending?: RailBending
  whyNoBending?: string
  cautions: string[]
}

/** The ball that must not pass, mm. IRC R312.1.3, read in reprints; the local edition and law come first. */
export const defaultGap: Record<StairUse, number> = { guard: inches(4), stair: inches(4 + 3 / 8) }

/** Load across the infill, N: 50 lb on one square foot. IRC Table R301.5, second-hand. */
export const defaultLoad = poundsForce(50)

/** Loads nearer than this share to each other are one load, rounded in another unit: 222 N is 50 lb. */
const SAME_LOAD = 0.005

/** A reserve below this is little: 2.1 for clear hardwood (ASTM D245) over the weak end of wood that varies by 16 % (Wood Handbook table 5-6), both from memory, rounded up. */
const RESERVE_LITTLE = 3

/** What shows of a part: all of it but the tenons at its ends. */
function shownLength(spans: Span[], joints: PlacedJoint[]): [number, number] {
  const whole: [number, number] = [spans[0]!.from, spans.at(-1)!.to]
  let [from, to] = whole
  for (const span of spans) {
    if (!span.station.tenon || nm(span.from) !== nm(from)) break
    from = span.to
  }
  for (const span of [...spans].reverse()) {
    if (!span.station.tenon || nm(span.to) !== nm(to)) break
    to = span.from
  }
  for (const joint of joints.filter(({ kind }) => kind === 'tenon')) {
    const reach = jointReach(joint, spans)
    if (nm(reach.from) <= nm(whole[0])) from = Math.max(from, reach.to)
    else if (nm(reach.to) >= nm(whole[1])) to = Math.min(to, reach.from)
  }
  return nm(from) < nm(to) ? [from, to] : whole
}

const DECIDES =
  'The local code and whoever inspects by it decide, and licensed practice comes first: these are figures to go to them with.'

const forceText = (newtons: number): string => {
  const say = (value: number): string => String(Number(value.toPrecision(3)))
  return `${say(newtons)} N (${say(newtons / poundsForce(1))} lb)`
}

/** A ball that is only a model code’s, or larger than that. */
function gapCaution({ gap }: StairWishes, use: StairUse, style: LengthStyle): string | undefined {
  const model = defaultGap[use]
  if (gap === undefined)
    return `A ball of ${lengthText(model, style)} that must not pass is a model code’s figure, read second-hand: look up your own.`
  if (nm(gap) <= nm(model)) return undefined
  const [own, codes] = apartTexts([gap, model], style)
  return `A ball of ${own} is larger than a model code’s of ${codes}, read second-hand: look up your own.`
}

/** A load that is only a model code’s, or less than that. */
function loadCaution({ load }: StairWishes): string | undefined {
  if (load === undefined)
    return 'The load, 50 lb on one square foot, is a model code’s figure, read second-hand: look up your own.'
  if (load >= defaultLoad * (1 - SAME_LOAD)) return undefined
  return `The load of ${forceText(load)} is less than a model code’s of ${forceText(defaultLoad)} on one square foot, read second-hand: look up your own, and whether the unit is right.`
}

/** Which figures are a model code’s or laxer than that, and that a part may be `thinner` mm thinner than drawn. */
const figureCautions = (wishes: StairWishes, use: StairUse, thinner: number, style: LengthStyle): string[] =>
  [
    gapCaution(wishes, use, style),
    loadCaution(wishes),
    `Counted at the drawn thickness: a part may be ${lengthUp(thinner, style)} thinner by its tolerance and shrinks as it dries, so stand them closer by that.`,
  ].filter((text) => text !== undefined)

function runCautions(
  run: StairRun | undefined,
  quantity: number,
  least: number,
  style: LengthStyle,
): string[] {
  if (!run) return ['No run is given: put in the clear length between the posts to have the parts counted.']
  if (nm(run.clear) <= 0) {
    const [thick, long] = apartTexts([least, run.run], style)
    return [`A part ${thick} thick does not fit the run of ${long}.`]
  }
  if (run.count === 0) return [`The run of ${lengthText(run.run, style)} is smaller than the ball by itself.`]
  return run.count > quantity ? [`One run takes ${run.count} parts; the job makes ${quantity}.`] : []
}

/** That a run of parts as thin as their tolerance lets them be takes more of them. */
function thinnerCautions(
  run: StairRun | undefined,
  gap: number,
  least: number,
  thinner: number,
  style: LengthStyle,
): string[] {
  if (!run || nm(run.clear) <= 0 || nm(thinner) >= nm(least)) return []
  const { count } = stairRun(run.run, gap, least - thinner)
  if (count <= run.count) return []
  return [
    `With ${run.count} parts ${lengthUp(thinner, style)} thinner than drawn the gaps are too wide for that ball: take ${count}.`,
  ]
}

function bendingCautions(
  bending: RailBending | undefined,
  { name, serviceMoisture }: StairWood,
  style: LengthStyle,
): string[] {
  if (!bending) return []
  const { reserve, at } = bending
  return [
    reserve < 1
      ? `At ${lengthText(at, style)} from the foot the stated load is more than ${name} bears: make it stouter there.`
      : reserve < RESERVE_LITTLE
        ? `A reserve of ${reserve.toFixed(1)} is little for wood: make it stouter ${lengthText(at, style)} from the foot.`
        : undefined,
    `The strength is the mean of small clear, straight-grained pieces of ${name} at 12 %, broken within minutes: knots, sloping grain, the sharp corner of a step, joints and a load that stays bear much less.`,
    serviceMoisture > 12 ? `At ${serviceMoisture} % in use the wood is weaker than at 12 %.` : undefined,
  ].filter((text) => text !== undefined)
}

/** Joints cut where the part shows: the bending figures are of the whole section. */
const cutCautions = (
  joints: PlacedJoint[],
  spans: Span[],
  [from, to]: [number, number],
  style: LengthStyle,
): string[] =>
  joints
    .filter(({ kind }) => kind !== 'tenon')
    .filter((joint) => {
      const reach = jointReach(joint, spans)
      return nm(reach.to) > nm(from) && nm(reach.from) < nm(to)
    })
    .map(
      ({ kind, at }) =>
        `The ${kind} ${lengthText(at, style)} from the foot is not in the bending figures: the part bears less there.`,
    )

/** What spacing and strength of stair parts are worked out from. Lengths mm. */
export interface StairInput {
  profile: Profile
  joints: PlacedJoint[]
  use: StairUse
  wishes: StairWishes
  quantity: number
  /** How much thinner than drawn a part may be where its station does not say. */
  tolerance: number
  wood: StairWood
  /** How the cautions write lengths. */
  style: LengthStyle
}

/**
 * Spacing, count and bending of stair parts: the gap is ruled by the least diameter between the rails, the same at
 * every height, as if all thinnest places stood side by side; the load is taken wholly by one part, pinned at the
 * rails. Lengths mm, N, MPa. Nothing here says that a guard may be built so: `cautions` say who does.
 */
export function stairOf(input: StairInput): Stair {
  const { profile, joints, use, wishes, quantity, tolerance, wood, style } = input
  const spans = spansOf(profile)
  const gap = wishes.gap ?? defaultGap[use]
  const between = wishes.between ?? shownLength(spans, joints)
  const { at, radius } = thinnestPlace(spans, ...between)
  const least = { at, diameter: 2 * radius }
  const run = wishes.run === undefined ? undefined : stairRun(wishes.run, gap, least.diameter)
  const bending =
    wood.morMPa === undefined
      ? undefined
      : railBending(spans, between, wishes.load ?? defaultLoad, wood.morMPa)
  const thinner = spanAt(spans, at).station.minus ?? tolerance
  const whyNoBending = bending
    ? undefined
    : `No modulus of rupture is on record for ${wood.name}: how the thinnest place bends cannot be had.`
  return {
    use,
    gap,
    between,
    least,
    spacingBelow: gap + least.diameter,
    ...(run && { run }),
    ...(bending && { bending }),
    ...(whyNoBending && { whyNoBending }),
    cautions: [
      DECIDES,
      ...figureCautions(wishes, use, thinner, style),
      ...runCautions(run, quantity, least.diameter, style),
      ...thinnerCautions(run, gap, least.diameter, thinner, style),
      ...bendingCautions(bending, wood, style),
      ...(bending ? cutCautions(joints, spans, between, style) : []),
      ...(whyNoBending ? [whyNoBending] : []),
    ],
  }
}
