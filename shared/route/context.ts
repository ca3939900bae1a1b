import type { Span } from '../profile/profile.ts'
import type { Mount } from '../turning/mount.ts'
import type { Speed, SpeedWork } from '../turning/speed.ts'
import { positionsFor, toolRestFor, toolRestPositions } from '../turning/tool-rest.ts'
import { inches, lengthText, nm, styleOf } from '../units/length.ts'
import { driesAsStrips, tooWet } from '../wood/moisture.ts'
import type { Feature, StepFace, Zone } from './features.ts'
import type { RouteInput } from './input.ts'
import type { OperationDraft } from './operation.ts'
import { type PartShape, partShapeOf } from './part-shape.ts'
import { fromTailOf, pitchOf, restReaches, tailOf } from './rest-reaches.ts'
import { roughDiameterOf } from './rough-size.ts'
import { type SizedCut, sizedCutsOf } from './sized-cuts.ts'
import { type BlankState, gaugingSpeed, type Spinning, spinningOf, stageSpeed } from './stage-speed.ts'
import { type Journal, journalOf } from './steady.ts'
import { driedSideOf, wetDiameterOf } from './wet-size.ts'

/** A rest when no lathe of the shop takes the blank, mm. Common practice, no source. */
const REST_LENGTH = inches(12)

/** What every operation is made from: the job’s figures and what follows from its profile. Lengths mm. */
export interface RouteContext extends RouteInput, PartShape, Spinning, Along {
  sizedCuts: SizedCut[]
  sizedCutsIn(span: Span): SizedCut[]
  /** Parts in one blank. */
  parts: number
  /** A rest is advised or needed: it is finished stretch by stretch. */
  slender: boolean
  /** Where the steady rest runs; on slender work only. */
  journal?: Journal
  /** Layers glued up to one blank, 1 where it is sawn in one piece. */
  layers: number
  /** A glue line runs through both centres. */
  glueLineCentred: boolean
  /** The blank is shorter than jointer and planer take. */
  tooShort: boolean
  /** Too wet to be finish-turned. */
  wet: boolean
  /** Rough-turned wet and dried then; what is slender or glued up dries as strips. */
  roughedWet: boolean
  /** It dries as strips, before it is glued up and turned. */
  stripsDry: boolean
  /** What a square is planed to over what it has in use, a factor: it still shrinks on the lathe and after. */
  squareOver: number
  /** Diameter a zone is roughed to. */
  roughDiameter(zone: Zone): number
  /** Diameter it is roughed to wet, before it dries. */
  wetDiameter(zone: Zone): number
  /** `mount` where it is not held as at first. */
  speed(work: SpeedWork, state: BlankState, mount?: Mount): Speed
  /** For marking and gauging what is roughed: no faster than it was roughed. */
  gaugingSpeed(): Speed
  /** A length in the job’s own units. */
  text(mm: number): string
}

/** Where the tool rest stands for a cut: counted along the stick from the tailstock, from 1. */
export type OnRest = Pick<OperationDraft, 'restPosition' | 'restThrough'>

/** Places along the lathe, from the tailstock on. */
interface Along {
  tail: 'foot' | 'top'
  /** Distance from the tail end of the part. */
  fromTail(x: number): number
  /** Which positions of the tool rest serve what lies between two places, on every part of the stick. */
  restAlong(from: number, to: number): OnRest
  /** Which position serves an end of the stick, whatever part it belongs to. */
  restEnd(x: number): number
  /** The stretch a feature or a step’s face is finished with; none where nothing is slender. */
  stretchOf(feature: Feature | StepFace): number | undefined
}

/** The stretch of each feature, from 1 next to the tail, and of each step’s face: with the later of what it lies between. */
function stretchesOf(
  { features, featureOf, spans, steps }: PartShape,
  place: (feature: Feature) => number,
): Map<Feature | StepFace, number> {
  const placed = new Map(features.map((feature) => [feature, place(feature)]))
  const used = [...new Set(placed.values())].sort((a, b) => a - b)
  const stretches = new Map<Feature | StepFace, number>()
  for (const [feature, at] of placed) stretches.set(feature, used.indexOf(at) + 1)
  for (const step of steps) {
    const after = spans.findIndex(({ index }) => index === step.index)
    const sides = [spans[after - 1]!, spans[after]!].map((span) => stretches.get(featureOf(span))!)
    stretches.set(step, Math.max(...sides))
  }
  return stretches
}

function alongLathe(input: RouteInput, shape: PartShape, slender: boolean): Along {
  const { blank, lathe } = input
  const fromTail = fromTailOf(input, shape)
  const rest = lathe ? toolRestFor(lathe, blank.length) : REST_LENGTH
  const positions = toolRestPositions(restReaches(input, shape), rest)
  const served = (from: number, to: number, parts: number): [number, number] => {
    const [near, far] = [fromTail(from), fromTail(to)].sort((a, b) => a - b) as [number, number]
    return positionsFor(positions, [near, far + (parts - 1) * pitchOf(input, shape)])
  }
  const restAlong = (from: number, to: number): OnRest => {
    const [first, last] = served(from, to, blank.stock.perBlank)
    return { restPosition: first, ...(last > first && { restThrough: last }) }
  }
  const restEnd = (x: number): number => {
    const atTail = nm(fromTail(x)) === 0
    return atTail ? 1 : Math.max(1, positions.length)
  }
  // By its end next to what drives it: nothing nearer the tail is left to be cut once the stock behind is thinned.
  const stretches = slender ? stretchesOf(shape, ({ from, to }) => served(from, to, 1)[1]) : undefined
  return { tail: tailOf(input), fromTail, restAlong, restEnd, stretchOf: (what) => stretches?.get(what) }
}

function cutsBySpan(cuts: SizedCut[]): (span: Span) => SizedCut[] {
  const bySpan = new Map<number, SizedCut[]>()
  for (const cut of cuts) {
    const others = bySpan.get(cut.span.index)
    if (others) others.push(cut)
    else bySpan.set(cut.span.index, [cut])
  }
  return (span) => bySpan.get(span.index) ?? []
}

/** Side of the square on the lathe over the side it will have once it is as dry as it is used. */
const squareOverOf = ({ side, shrinkage }: RouteInput['blank']): number =>
  side / (side - (shrinkage?.onLathe ?? 0))

/** Everything the operations need, worked out once. */
export function contextOf(input: RouteInput): RouteContext {
  const { profile, blank, allowances, whip } = input
  const shape = partShapeOf(profile)
  const slender = whip.rest !== 'none'
  const layers = Math.max(blank.layers, profile.split ? 2 : 1)
  const sizedCuts = sizedCutsOf(shape, input)
  const style = styleOf(input.units)
  const isWet = tooWet(input.moisture, input.serviceMoisture)
  const isTurnedDry = slender || layers > 1
  const roughedWet = isWet && !isTurnedDry
  // What is turned round at last is turned from the dried blank.
  const turnedFrom = roughedWet ? { ...input, blank: { ...blank, side: driedSideOf(input) } } : input
  const roughed = new Map(shape.zones.map((zone) => [zone.index, roughDiameterOf(zone, turnedFrom)]))
  const roughDiameter = (zone: Zone): number => roughed.get(zone.index)!
  const spinning = spinningOf(input, shape)
  const context: RouteContext = {
    ...input,
    ...shape,
    ...spinning,
    ...alongLathe(input, shape, slender),
    sizedCuts,
    sizedCutsIn: cutsBySpan(sizedCuts),
    parts: blank.stock.perBlank,
    slender,
    layers,
    glueLineCentred: layers % 2 === 0,
    tooShort: nm(blank.length) < nm(allowances.minMachine),
    wet: isWet,
    roughedWet,
    stripsDry: driesAsStrips(
      {
        sawn: input.sawnMoisture ?? input.moisture,
        turned: input.moisture,
        inUse: input.serviceMoisture,
      },
      isTurnedDry,
    ),
    squareOver: isTurnedDry && isWet ? 1 : squareOverOf(blank),
    roughDiameter,
    wetDiameter: (zone) => wetDiameterOf(roughDiameter(zone), input),
    speed: (work, state, mount = input.mount) => stageSpeed(input, spinning, { work, state, mount }),
    gaugingSpeed: () => gaugingSpeed(input, spinning, input.mount),
    text: (mm) => lengthText(mm, style),
  }
  return { ...context, journal: journalOf(context) }
}
