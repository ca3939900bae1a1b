import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { labelPlaces } from '../../shared/profile/label-places.ts'
import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { type CheckMark, diameterMarks, type Mark, runningMarks } from './part-dimensions.ts'
import { type Flat, flatsOf } from './part-flats.ts'
import { flatGrain, type GrainLine, grainLines, seedOf } from './part-grain.ts'
import { type JointMark, jointMarks } from './part-joints.ts'
import { type PartLayout, partLayout } from './part-layout.ts'
import { keptOutline, SILHOUETTE_LENGTH, silhouetteOf } from './part-outlines.ts'
import { flatLight, roundBands, slopeStops } from './part-shading.ts'
import { closeSet, halfPath, scaledOutline, silhouettePath, stepsOf } from './part-silhouette.ts'
import { partTitle, partWords } from './part-words.ts'
import { litTone, woodTone } from './wood-tones.ts'

const BANDS = 18
const DIMENSIONED_MOST = 150

/** Everything of the drawing that follows from the profile, the room and the wood. */
interface Drawn {
  layout: PartLayout
  outline: OutlinePoint[]
  flats: Flat[]
  grain: GrainLine[]
  joints: JointMark[]
  below: Mark[]
  above: Mark[]
}

/**
 * A part drawn to scale as turned wood, lying down where there is room and upright on a narrow screen.
 * Properties in; it sends nothing.
 */
@customElement('turned-part')
export class TurnedPart extends LitElement {
  @property({ attribute: false }) profile?: Profile
  /** Key of the wood, for its colour. */
  @property() species = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @property() orientation: 'auto' | 'horizontal' | 'vertical' = 'auto'
  /** Name of the part, read out with the drawing. */
  @property() name = ''
  /** Running lengths from the foot and diameters at the stations. */
  @property({ type: Boolean }) dimensions = false
  @property({ attribute: false }) joints: readonly Joint[] = []
  @property({ attribute: false }) checks: readonly CheckMark[] = []
  /** Stretch to point out, mm from the foot; the rest stands back. */
  @property({ attribute: false }) highlight?: readonly [number, number] | null
  /** A small plain silhouette that fills its box. */
  @property({ type: Boolean, reflect: true }) compact = false
  /** Most px across a part that lies, or along one that stands. */
  @property({ type: Number }) most?: number

  @state() private room = 0
  private observer?: ResizeObserver
  private drawn?: { of: unknown[]; drawn: Drawn }

  static override styles = css`
    :host { display: block; min-width: 0; overflow-x: auto; color: var(--ink, CanvasText); }
    :host([compact]) { overflow: hidden; height: 100%; }
    svg { display: block; max-width: none; margin-inline: auto; }
    :host([compact]) svg { width: 100%; height: 100%; }
    text { font: 12px var(--sans, system-ui, sans-serif); font-variant-numeric: tabular-nums; fill: currentColor; }
    .leader { fill: none; stroke: currentColor; stroke-width: 0.75; opacity: 0.55; }
    .axis { fill: none; stroke: currentColor; stroke-width: 0.75; stroke-dasharray: 12 3 2 3; opacity: 0.5; }
    .edge { fill: none; stroke: #1c120a; stroke-width: 1; stroke-linejoin: round; opacity: 0.75; }
    .arris { stroke: #1c120a; stroke-width: 0.8; opacity: 0.4; }
    .check { fill: var(--accent, #1c4a84); }
    .check-text { fill: var(--accent, #1c4a84); font-weight: 600; }
    .back { fill: var(--sheet, Canvas); opacity: 0.68; }
    .bracket { fill: none; stroke: var(--accent, #1c4a84); stroke-width: 3; }
    .ghost { fill: currentColor; opacity: 0.13; }
    .outline { fill: none; stroke: currentColor; stroke-width: 1.2; vector-effect: non-scaling-stroke; opacity: 0.8; }
    .stretch {
      fill: var(--accent, #1c4a84);
    }
    .joint { fill: #1c120a; opacity: 0.72; }
    .joint-hidden { fill: none; stroke: #1c120a; stroke-width: 1; stroke-dasharray: 4 2.5; opacity: 0.8; }
    .unit { opacity: 0.75; }
    @media print {
      .back { fill: #fff; }
      text { fill: #000; }
    }
  `

  override connectedCallback(): void {
    super.connectedCallback()
    this.observer = new ResizeObserver(() => this.measure())
    this.observer.observe(this)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.observer?.disconnect()
  }

  private measure(): void {
    const room = Math.floor(this.clientWidth)
    if (!this.compact && room > 0 && room !== this.room) this.room = room
  }

  protected override render(): TemplateResult {
    const profile = this.profile
    if (!profile || profile.stations.length < 2) return html`<p>No profile yet: two stations make a part.</p>`
    let outline: OutlinePoint[]
    try {
      outline = keptOutline(profile)
    } catch {
      return html`<p>The profile cannot be drawn as it stands.</p>`
    }
    if (this.compact) return this.silhouette(profile)
    if (this.room === 0) return html``
    return this.drawing(profile, outline)
  }

  private silhouette(profile: Profile): TemplateResult {
    const { path, half } = silhouetteOf(profile)
    const lying = this.orientation === 'horizontal'
    const box = lying
      ? `-10 ${-half - 10} 1020 ${2 * half + 20}`
      : `${-half - 10} -1010 ${2 * half + 20} 1020`
    const [from, to] = this.shownStretch(profile)
    return html`<svg viewBox=${box} role="img" aria-label=${this.name || nothing} aria-hidden=${this.name ? nothing : 'true'}>
      <defs><clipPath id="filled"><rect x=${from} y=${-half - 1} width=${to - from} height=${2 * half + 2}></rect></clipPath></defs>
      <g transform=${lying ? 'translate(0 0)' : 'matrix(0 -1 1 0 0 0)'}>
        <path class="ghost" d=${path}></path>
        <path class=${this.highlight ? 'stretch' : nothing} fill=${woodTone(this.species)} clip-path="url(#filled)" d=${path}></path>
        <path class="outline" d=${path}></path>
      </g>
    </svg>`
  }

  /** What of a silhouette is filled: all of it, or the stretch pointed out, widened until it can be seen. */
  private shownStretch(profile: Profile): [number, number] {
    if (!this.highlight) return [-1, SILHOUETTE_LENGTH]
    const [a, b] = this.highlight.map(
      (mm) => (mm * SILHOUETTE_LENGTH) / (profile.stations.at(-1)?.at || 1),
    ) as [number, number]
    return b - a < 24 ? [(a + b) / 2 - 12, (a + b) / 2 + 12] : [a, b]
  }

  /** The geometry, made anew only when something it rests on changes. */
  private geometry(profile: Profile, outline: OutlinePoint[]): Drawn {
    const of = [
      profile,
      this.room,
      this.orientation,
      this.dimensions,
      this.lengthStyle,
      this.checks,
      this.joints,
      this.most,
    ]
    if (this.drawn?.of.every((value, i) => value === of[i])) return this.drawn.drawn
    const labelled = this.dimensions && profile.stations.length <= DIMENSIONED_MOST
    const below = labelled ? runningMarks(profile, this.lengthStyle) : []
    const above = labelled ? diameterMarks(profile, this.lengthStyle, this.checks) : []
    const layout = partLayout({
      lengthMm: outline.at(-1)!.x,
      diameterMm: 2 * outlineRadius(outline),
      room: this.room,
      orientation: this.orientation,
      labels: Math.max(below.length, above.length),
      longestLabel: Math.max(0, ...[...below, ...above].map(({ text }) => text.length)),
      most: this.most,
    })
    const points = closeSet(scaledOutline(outline, layout.scale), 4)
    const flats = flatsOf(profile, layout.scale)
    const seed = seedOf(profile.stations.flatMap(({ at, diameter, side }) => [at, diameter ?? 0, side ?? 0]))
    const onFlats = flats.flatMap((flat) => flatGrain(flat.from, flat.to, flat.half, layout.radius, seed))
    const grain = [...grainLines(offFlats(points, flats), seed), ...onFlats]
    const drawn = {
      layout,
      outline: points,
      flats,
      grain,
      joints: jointMarks(this.joints, profile, layout.scale),
      below,
      above,
    }
    this.drawn = { of, drawn }
    return drawn
  }

  private drawing(profile: Profile, outline: OutlinePoint[]): TemplateResult {
    const drawn = this.geometry(profile, outline)
    const { layout } = drawn
    return html`<svg width=${layout.width} height=${layout.height} viewBox="0 0 ${layout.width} ${layout.height}"
        role="img" aria-labelledby="title" aria-describedby="words">
      <title id="title">${partTitle(profile, this.lengthStyle, this.name)}</title>
      <desc id="words">${partWords(profile, this.lengthStyle)}</desc>
      ${this.wood(drawn)}
      ${drawn.below.length ? this.figures(drawn) : nothing}
    </svg>
    ${this.dimensions && profile.stations.length > DIMENSIONED_MOST ? html`<p>Figures are left out above ${DIMENSIONED_MOST} stations: the printed pattern has them all.</p>` : nothing}`
  }

  private wood({ layout, outline, flats, grain, joints }: Drawn): SVGTemplateResult {
    const tone = woodTone(this.species)
    const silhouette = silhouettePath(outline)
    return svg`
      <defs>
        <path id="upper" d=${halfPath(outline, -1)}></path>
        <path id="lower" d=${halfPath(outline, 1)}></path>
        <clipPath id="silhouette"><path d=${silhouette}></path></clipPath>
        <linearGradient id="along" gradientUnits="userSpaceOnUse" x1="0" y1="0" x2=${layout.length} y2="0">
          ${slopeStops(outline, layout.vertical ? -1 : 1).map(
            ({
              offset,
              light,
            }) => svg`<stop offset=${offset.toFixed(4)} stop-color=${light < 0 ? '#160c04' : '#fff4dd'}
              stop-opacity=${(light < 0 ? -0.62 * light : 0.3 * light).toFixed(3)}></stop>`,
          )}
        </linearGradient>
      </defs>
      <g transform=${layout.transform}>
        ${([-1, 1] as const).map((side) =>
          roundBands(tone, side, BANDS).map(
            ({ squeeze, fill }) =>
              svg`<use href=${side < 0 ? '#upper' : '#lower'} transform="scale(1 ${squeeze.toFixed(4)})" fill=${fill}></use>`,
          ),
        )}
        <path d=${silhouette} fill="url(#along)"></path>
        ${flats.map((flat) => svg`<path d=${flat.path} fill=${litTone(tone, flatLight())} stroke="#1c120a" stroke-opacity="0.35" stroke-width="0.8"></path>`)}
        ${grain.map(
          ({ path, weight }) => svg`<path d=${path} fill="none" stroke=${litTone(tone, 0.42)}
            stroke-opacity=${(0.12 + 0.26 * weight).toFixed(2)} stroke-width=${(0.5 + 0.7 * weight).toFixed(2)}></path>`,
        )}
        ${stepsOf(outline).map(({ x, r }) => svg`<line class="arris" x1=${x} x2=${x} y1=${-r} y2=${r}></line>`)}
        ${joints.map(({ path, hidden }) => svg`<path class=${hidden ? 'joint-hidden' : 'joint'} d=${path}></path>`)}
        <path class="edge" d=${silhouette}></path>
        ${this.pointedOut(layout)}
        <line class="axis" x1="-10" x2=${layout.length + 10} y1="0" y2="0"></line>
        ${this.dimensions ? nothing : this.checks.map((check) => this.caliperPoints(check.at * layout.scale, (check.target * layout.scale) / 2))}
      </g>`
  }

  private pointedOut(layout: PartLayout): SVGTemplateResult | typeof nothing {
    if (!this.highlight) return nothing
    // A cut with a parting tool has next to no width: still to be seen.
    const [a, b] = this.highlight.map((mm) => mm * layout.scale) as [number, number]
    const [from, to] = b - a < 6 ? [(a + b) / 2 - 3, (a + b) / 2 + 3] : [a, b]
    const [half, out] = [layout.radius + 2, layout.radius + 5]
    return svg`
      <g clip-path="url(#silhouette)">
        <rect class="back" x="-2" y=${-half} width=${Math.max(0, from + 2)} height=${2 * half}></rect>
        <rect class="back" x=${to} y=${-half} width=${Math.max(0, layout.length + 2 - to)} height=${2 * half}></rect>
      </g>
      ${[-1, 1].map((side) => svg`<path class="bracket" d="M${from} ${side * (out - 6)}V${side * out}H${to}V${side * (out - 6)}"></path>`)}`
  }

  private caliperPoints(x: number, r: number): SVGTemplateResult {
    return svg`${[-1, 1].map((side) => svg`<path class="check" d="M${x} ${side * r}l-4 ${side * 8}h8Z"></path>`)}`
  }

  private figures(drawn: Drawn): SVGTemplateResult {
    const { layout } = drawn
    const unit = this.lengthStyle === 'mm' ? 'mm' : 'in'
    const [x, y] = [4, 12]
    return svg`
      ${this.row(drawn, drawn.below, layout.vertical ? -1 : 1)}
      ${this.row(drawn, drawn.above, layout.vertical ? 1 : -1)}
      <text class="unit" x=${x} y=${layout.vertical ? y : layout.height - 4}>from the foot, ${unit}</text>
      <text class="unit" x=${layout.vertical ? layout.width - 4 : x} y=${y} text-anchor=${layout.vertical ? 'end' : 'start'}>Ø and □ across flats, ${unit}</text>`
  }

  private row({ layout, outline }: Drawn, marks: readonly Mark[], side: -1 | 1): SVGTemplateResult {
    const places = labelPlaces(
      marks.map(({ at }) => at * layout.scale),
      layout.gap,
      ...layout.reach,
    )
    return svg`${marks.map((mark, i) => {
      const at = mark.at * layout.scale
      const r = radiusNear(outline, at)
      const [elbow, end] = [side * (layout.radius + 10), side * (layout.radius + 24)]
      const points = [
        [at, side * (r + 2)],
        [at, elbow],
        [places[i]!, end],
      ].map(([x, y]) => layout.place(x!, y!).join(' ')) // prettier-ignore
      const [x, y] = layout.place(places[i]!, side * (layout.radius + 28))
      return svg`
        <path class="leader" d="M${points.join('L')}"></path>
        ${mark.check ? svg`<g transform=${layout.transform}>${this.caliperPoints(at, r)}</g>` : nothing}
        ${label(mark, x, y, side, layout)}`
    })}`
  }
}

function label(mark: Mark, x: number, y: number, side: -1 | 1, layout: PartLayout): SVGTemplateResult {
  const look = mark.check ? 'check-text' : ''
  if (layout.vertical) {
    return svg`<text class=${look} x=${x} y=${y + 4} text-anchor=${side < 0 ? 'end' : 'start'}>${mark.text}</text>`
  }
  if (!layout.turnedLabels) {
    return svg`<text class=${look} x=${x} y=${side < 0 ? y : y + 10} text-anchor="middle">${mark.text}</text>`
  }
  const anchor = side < 0 ? 'start' : 'end'
  return svg`<text class=${look} transform="translate(${x + 4} ${y}) rotate(-90)" text-anchor=${anchor}>${mark.text}</text>`
}

/** Largest radius of the outline at or next to a place, drawing units. */
function radiusNear(outline: readonly OutlinePoint[], x: number): number {
  const after = outline.findIndex((point) => point.x >= x - 1e-6)
  if (after < 0) return outline.at(-1)?.r ?? 0
  const here = outline.slice(after).filter((point) => Math.abs(point.x - outline[after]!.x) < 1e-6)
  return Math.max(...here.map(({ r }) => r))
}

/** The outline without what lies under flats, so that round grain is not drawn there. */
function offFlats(outline: readonly OutlinePoint[], flats: readonly Flat[]): OutlinePoint[] {
  return outline.map((point) =>
    flats.some(({ from, to }) => point.x >= from && point.x <= to && to > from)
      ? { x: point.x, r: 0 }
      : point,
  )
}

declare global {
  interface HTMLElementTagNameMap {
    'turned-part': TurnedPart
  }
}
