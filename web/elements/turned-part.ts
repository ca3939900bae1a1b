import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { Room } from '../room.ts'
import {
  type CheckMark,
  diameterMarks,
  type Mark,
  radiusMarks,
  runningMarks,
  togetherMarks,
} from './part-dimensions.ts'
import { caliperPoints, figureRow, figuresLook } from './part-figures.ts'
import { type PartGeometry, partGeometry } from './part-geometry.ts'
import { type PartLayout, partLayout } from './part-layout.ts'
import { keptOutline, SILHOUETTE_LENGTH, silhouetteOf } from './part-outlines.ts'
import { wood, woodDefs, woodLook } from './part-wood.ts'
import { partTitle, partWords } from './part-words.ts'
import { woodTone } from './wood-tones.ts'

const DIMENSIONED_MOST = 150

/** Everything of the drawing that follows from the profile, the room and the wood. */
interface Drawn extends PartGeometry {
  layout: PartLayout
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

  private readonly room = new Room(this, () => !this.compact)
  private drawn?: { of: unknown[]; drawn: Drawn }

  static override styles = [
    figuresLook,
    woodLook,
    css`
    :host { display: block; min-width: 0; overflow-x: auto; color: var(--ink, CanvasText); }
    :host([compact]) { overflow: hidden; height: 100%; }
    svg { display: block; max-width: none; margin-inline: auto; }
    :host([compact]) svg { width: 100%; height: 100%; }
    .axis { fill: none; stroke: currentColor; stroke-width: 0.75; stroke-dasharray: 12 3 2 3; opacity: 0.5; }
    .back { fill: var(--sheet, Canvas); opacity: 0.68; }
    .bracket { fill: none; stroke: var(--accent, #1c4a84); stroke-width: 3; }
    .ghost { fill: currentColor; opacity: 0.13; }
    .outline { fill: none; stroke: currentColor; stroke-width: 1.2; vector-effect: non-scaling-stroke; opacity: 0.8; }
    .stretch {
      fill: var(--accent, #1c4a84);
    }
    @media print {
      .back { fill: #fff; }
      text { fill: #000; }
    }
  `,
  ]

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
    if (this.room.px === 0) return html``
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
      this.room.px,
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
    const above = labelled
      ? togetherMarks(
          diameterMarks(profile, this.lengthStyle, this.checks),
          radiusMarks(profile, this.lengthStyle),
        )
      : []
    const layout = partLayout({
      lengthMm: outline.at(-1)!.x,
      diameterMm: 2 * outlineRadius(outline),
      room: this.room.px,
      orientation: this.orientation,
      labels: Math.max(below.length, above.length),
      longestLabel: Math.max(0, ...[...below, ...above].map(({ text }) => text.length)),
      most: this.most,
    })
    const drawn = { layout, ...partGeometry(profile, outline, this.joints, layout), below, above }
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

  private wood(drawn: Drawn): SVGTemplateResult {
    const { layout } = drawn
    const light = { species: this.species, from: layout.vertical ? -1 : 1 } as const
    return svg`
      <defs>${woodDefs(drawn, light)}</defs>
      <g transform=${layout.transform}>
        ${wood(drawn, light)}
        ${this.pointedOut(layout)}
        <line class="axis" x1="-10" x2=${layout.length + 10} y1="0" y2="0"></line>
        ${this.dimensions ? nothing : this.checks.map((check) => caliperPoints(check.at * layout.scale, (check.target * layout.scale) / 2))}
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

  private figures(drawn: Drawn): SVGTemplateResult {
    const { layout } = drawn
    const unit = this.lengthStyle === 'mm' ? 'mm' : 'in'
    const [x, y] = [4, 12]
    return svg`
      ${figureRow(layout, drawn.outline, drawn.below, layout.vertical ? -1 : 1)}
      ${figureRow(layout, drawn.outline, drawn.above, layout.vertical ? 1 : -1)}
      <text class="unit" x=${x} y=${layout.vertical ? y : layout.height - 4}>from the foot, ${unit}</text>
      <text class="unit" x=${layout.vertical ? layout.width - 4 : x} y=${y} text-anchor=${layout.vertical ? 'end' : 'start'}>Ø, □ across flats, R radius, ${unit}</text>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'turned-part': TurnedPart
  }
}
