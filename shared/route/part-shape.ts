import { type Profile, type Span, spansOf } from '../profile/profile.ts'
import { diametersOf } from '../profile/radius.ts'
import { nm } from '../units/length.ts'
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
import { type SpanSize, spanSize } from './span-size.ts'

/** What of the profile bears on the order of work. Lengths mm. */
export interface PartShape {
  spans: Span[]
  turned: Span[]
  features: Feature[]
  zones: Zone[]
  steps: StepFace[]
  shoulders: PommelShoulder[]
  length: number
  /** The largest side left square, 0 on a part turned all over. */
  maxSide: number
  sizeOf(span: Span): SpanSize
  /** The feature a turned span belongs to. */
  featureOf(span: Span): Feature
  /** The zone a place lies in, else the next towards the top. */
  zoneAt(x: number): Zone
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

/** Features, zones, steps and shoulders of a profile. */
export function partShapeOf(profile: Profile): PartShape {
  const spans = spansOf(profile)
  const features = featuresOf(spans)
  const featureBySpan = new Map(
    features.flatMap((feature) => feature.spans.map((span) => [span.index, feature])),
  )
  const zones = zonesOf(spans, (span) => diametersOf(span).greatest)
  return {
    spans,
    turned: spans.filter((span) => span.shape !== 'square'),
    features,
    zones,
    steps: stepFacesOf(spans),
    shoulders: pommelShouldersOf(spans),
    length: spans.at(-1)!.to - spans[0]!.from,
    maxSide: Math.max(0, ...spans.filter((span) => span.shape === 'square').map((span) => span.d0)),
    sizeOf: sizesOnce(),
    featureOf: (span) => featureBySpan.get(span.index)!,
    zoneAt: (x) => zones.find((zone) => nm(x) <= nm(zone.to)) ?? zones.at(-1)!,
  }
}
