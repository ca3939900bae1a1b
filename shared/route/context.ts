import type { Span } from '../profile/profile.ts'
import { spansOf } from '../profile/profile.ts'
import { diametersOf } from '../profile/radius.ts'
import { type Mount, mountFactor } from '../turning/mount.ts'
import { type Speed, type SpeedWork, speedFor, type Trueness } from '../turning/speed.ts'
import { inches, lengthText, nm, styleOf } from '../units/length.ts'
import {
  type Feature,
  featuresOf,
  type PommelShoulder,
  pommelShouldersOf,
  type StepFace,
  stepFacesOf,
  type Zone,
  zonesOf,
} from './features.ts'
import type { RouteInput } from './input.ts'
import { type SizedCut, sizedCutsOf } from './sized-cuts.ts'
import { type SpanSize, spanSize } from './span-size.ts'

/** Rough-turned wet wood is left so much over, a fraction of its diameter. Common practice, no source. */
const WET_OVERSIZE = 0.1
/** Above the moisture in use by more than this, % MC, no part is finish-turned. Common practice, no source. */
export const MOISTURE_OVER_SERVICE = 2
/** A rest when no lathe of the shop takes the blank, mm. Common practice, no source. */
const REST_LENGTH = inches(12)

/** How far the blank has come: still square, roughed, dried out of round since, or shaped. */
export type BlankState = 'square' | 'roughed' | 'dried' | 'shaped'

/** What every operation is made from: the job’s figures and what follows from its profile. Lengths mm. */
export interface RouteContext extends RouteInput {
  spans: Span[]
  turned: Span[]
  features: Feature[]
  zones: Zone[]
  steps: StepFace[]
  shoulders: PommelShoulder[]
  sizedCuts: SizedCut[]
  sizedCutsIn(span: Span): SizedCut[]
  length: number
  /** The largest side left square, 0 on a part turned all over. */
  maxSide: number
  tail: 'foot' | 'top'
  /** Parts in one blank. */
  parts: number
  /** A rest is advised or needed: it is finished stretch by stretch. */
  slender: boolean
  /** Too wet to be finish-turned. */
  wet: boolean
  gluedUp: boolean
  /** A joint open to the tool. */
  openMortise: boolean
  sizeOf(span: Span): SpanSize
  /** The feature a turned span belongs to. */
  featureOf(span: Span): Feature
  /** Diameter a zone is roughed to. */
  roughDiameter(zone: Zone): number
  /** Diameter it is roughed to wet, before it dries. */
  wetDiameter(zone: Zone): number
  zoneAt(x: number): Zone
  /** Distance from the tail end of the part. */
  fromTail(x: number): number
  /** Which position of the tool rest serves a place, 1 next to the tailstock. */
  restPosition(x: number): number
  /** The stretch a feature is finished with; none where nothing is slender. */
  stretchOf(feature: Feature): number | undefined
  /** `mount` where it is not held as at first. */
  speed(work: SpeedWork, state: BlankState, mount?: Mount): Speed
  /** A length in the job’s own units. */
  text(mm: number): string
}

const hasOpenJoint = (input: RouteInput): boolean =>
  input.joints.some((joint) => joint.stage === 'square' && joint.kind !== 'tenon')

function truenessOf(state: BlankState, maxSide: number, gluedUp: boolean): Trueness {
  if (gluedUp) return 'glued-up'
  if (state === 'square' || maxSide > 0) return 'square'
  return state === 'dried' ? 'untrue' : 'round'
}

/** The lowest speed at which the blank whips in that state on its mount, rpm. */
function criticalRpm(
  { whip, blankCriticalRpm }: RouteInput,
  state: BlankState,
  mount: Mount,
): number | undefined {
  const part = whip?.criticalRpm
  const found = (
    state === 'square' ? [blankCriticalRpm ?? part] : state === 'shaped' ? [part] : [blankCriticalRpm, part]
  ).filter((rpm) => rpm !== undefined && Number.isFinite(rpm)) as number[]
  return found.length === 0 ? undefined : Math.min(...found) * mountFactor(mount)
}

function grouped<T>(all: T[], by: (one: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>()
  for (const one of all) {
    const group = groups.get(by(one))
    if (group) group.push(one)
    else groups.set(by(one), [one])
  }
  return groups
}

/** Once for each span, however often it is asked for. */
function sizesOnce(): (span: Span) => SpanSize {
  const known = new Map<number, SpanSize>()
  return (span) => {
    const size = known.get(span.index) ?? spanSize(span)
    known.set(span.index, size)
    return size
  }
}

/** Everything the operations need, worked out once. */
export function contextOf(input: RouteInput): RouteContext {
  const { profile, blank, allowances, whip } = input
  const spans = spansOf(profile)
  const zones = zonesOf(spans, (span) => diametersOf(span).greatest)
  const features = featuresOf(spans)
  const featureBySpan = new Map(
    features.flatMap((feature) => feature.spans.map((span) => [span.index, feature])),
  )
  const from = spans[0]!.from
  const length = spans.at(-1)!.to - from
  const maxSide = Math.max(0, ...spans.filter((span) => span.shape === 'square').map((span) => span.d0))
  const tail = blank.lengthParts.drivenEnd === 'foot' ? 'top' : 'foot'
  const slender = whip !== undefined && whip.rest !== 'none'
  const wet = input.moisture > input.serviceMoisture + MOISTURE_OVER_SERVICE
  const gluedUp = blank.layers > 1 || profile.split
  const sizedCuts = sizedCutsOf(spans, zones, input)
  const cutsBySpan = grouped(sizedCuts, (cut) => cut.span.index)
  const openMortise = hasOpenJoint(input)
  const restLength = input.lathe?.restLength ?? REST_LENGTH
  const style = styleOf(input.units)
  const roughDiameter = (zone: Zone): number =>
    Math.min(blank.side, zone.maxDiameter + allowances.sizing + allowances.turned)
  const fromTail = (x: number): number => (tail === 'foot' ? x - from : from + length - x)
  const restPosition = (x: number): number =>
    1 + Math.floor(Math.max(0, nm(fromTail(x)) - 1) / nm(restLength))
  const largest = maxSide > 0 ? blank.diagonal : Math.max(0, ...zones.map(roughDiameter))
  return {
    ...input,
    spans,
    turned: spans.filter((span) => span.shape !== 'square'),
    features,
    zones,
    steps: stepFacesOf(spans),
    shoulders: pommelShouldersOf(spans),
    sizedCuts,
    sizedCutsIn: (span) => cutsBySpan.get(span.index) ?? [],
    length,
    maxSide,
    tail,
    parts: blank.stock.perBlank,
    slender,
    wet,
    gluedUp,
    openMortise,
    sizeOf: sizesOnce(),
    featureOf: (span) => featureBySpan.get(span.index)!,
    roughDiameter,
    wetDiameter: (zone) => Math.min(blank.side, roughDiameter(zone) * (1 + WET_OVERSIZE)),
    zoneAt: (x) => zones.find((zone) => nm(x) <= nm(zone.to)) ?? zones.at(-1)!,
    fromTail,
    restPosition,
    stretchOf: ({ from, to }) => (slender ? restPosition((from + to) / 2) : undefined),
    speed: (work, state, mount = input.mount) =>
      speedFor({
        lathe: input.lathe,
        accessoryRpm: input.accessoryRpm,
        diameter: state === 'square' ? blank.diagonal : largest,
        trueness: truenessOf(state, maxSide, gluedUp),
        work,
        corners: state === 'square',
        criticalRpm: criticalRpm(input, state, mount),
        openMortise,
        units: input.units,
      }),
    text: (mm) => lengthText(mm, style),
  }
}
