import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type ProfileDifference, profileDifference } from '../../shared/profile/difference.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { type LengthStyle, limitText } from '../../shared/units/length.ts'
import { Room } from '../room.ts'
import { pageWear } from '../styles/all.ts'
import { type CompareEnd, type CompareLayout, compareLayout } from './compare-layout.ts'
import { isSame, lengthWords, unlikeWords, type Widest, widestWords } from './compare-words.ts'
import './difference-strip.ts'
import { keptOutline } from './part-outlines.ts'
import { scaledOutline, silhouettePath } from './part-silhouette.ts'

/** A profile to compare, and what it is called. */
export interface Compared {
  name: string
  profile: Profile
}

const lengthOf = ({ stations }: Profile): number => stations.at(-1)?.at ?? 0

/** Each difference counted from the end the two are laid together at. */
function fromEnd({ greatest, samples, unlike }: ProfileDifference, a: Profile, b: Profile, end: CompareEnd) {
  const place = (at: number) => (end === 'foot' ? at : lengthOf(a) - at)
  const stretch = ({ from, to }: { from: number; to: number }) => ({
    from: Math.min(place(from), place(to)),
    to: Math.max(place(from), place(to)),
  })
  const widest: Widest | undefined = greatest && {
    fromEnd: place(greatest.at),
    a: greatest.a,
    b: greatest.b,
    on: { index: greatest.stationB, station: b.stations[greatest.stationB]! },
  }
  return {
    widest,
    samples: samples.map(({ at, byDiameter }) => ({ fromEnd: place(at), byDiameter })),
    unlike: unlike.map(stretch).sort((x, y) => x.from - y.from),
  }
}

/**
 * Two profiles laid over each other, the one they are compared with (A) in dashes, the other (B) drawn through,
 * with the place where they differ most. Properties in; it sends nothing.
 */
@customElement('profile-compare')
export class ProfileCompare extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      figure {
        background: var(--well);
        border-radius: var(--round);
        overflow: hidden;
      }
      .drawing {
        overflow-x: auto;
      }
      svg {
        margin-inline: auto;
        max-width: none;
      }
      text {
        font: 600 13px var(--sans);
        font-variant-numeric: tabular-nums;
        fill: var(--ink);
      }
      .a {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.75;
        stroke-dasharray: 7 4;
      }
      .b {
        fill: var(--accent);
        fill-opacity: 0.16;
        stroke: var(--accent);
        stroke-width: 2.25;
      }
      .axis {
        stroke: var(--ink);
        stroke-width: 0.75;
        stroke-dasharray: 12 3 2 3;
        opacity: 0.5;
      }
      .place {
        stroke: var(--under);
        stroke-width: 2;
      }
      .gap {
        stroke: var(--under);
        stroke-width: 5;
      }
      .key {
        display: grid;
        gap: var(--space-2);
      }
      .key li {
        display: flex;
        gap: var(--space-3);
        align-items: center;
        overflow-wrap: anywhere;
      }
      .key svg {
        flex: none;
        margin: 0;
      }
    `,
  ]

  @property({ attribute: false }) a?: Compared
  @property({ attribute: false }) b?: Compared
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** The end they are laid together at. */
  @property() end: CompareEnd = 'foot'
  private readonly room = new Room(this)

  override render() {
    const { a, b, lengthStyle: style, end } = this
    if (!a || !b) return nothing
    const lengths = [lengthOf(a.profile), lengthOf(b.profile)] as const
    const found = fromEnd(profileDifference(a.profile, b.profile, end), a.profile, b.profile, end)
    const unlike = unlikeWords(found.unlike, end, style)
    return html`
      <div class="page">
        <ul class="plain key">
          ${key('a', a, style)} ${key('b', b, style)}
        </ul>
        <div role="status">
          <p><b>${widestWords(found.widest, end, style)}</b></p>
          <p>${lengthWords(...lengths, style)}</p>
          ${unlike ? html`<p>${unlike}</p>` : nothing}
        </div>
        <figure>${this.room.px > 0 ? this.drawing(a, b, found.widest) : nothing}</figure>
        <difference-strip
          .samples=${found.samples}
          .length=${Math.max(...lengths)}
          .end=${end}
          .lengthStyle=${style}
        ></difference-strip>
      </div>
    `
  }

  private drawing(a: Compared, b: Compared, widest: Widest | undefined) {
    const outlines = [keptOutline(a.profile), keptOutline(b.profile)] as const
    const compared = compareLayout(outlines, this.end, this.room.px)
    const { layout, feet } = compared
    const path = (i: 0 | 1) => silhouettePath(scaledOutline(outlines[i], layout.scale))
    const { width, height } = layout
    const wide = width > this.room.px
    return html`<div class="drawing" role=${wide ? 'region' : nothing} tabindex=${wide ? 0 : nothing} aria-label=${wide ? 'Drawing' : nothing}><svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="img"
        aria-label="A, ${a.name}, in dashes, laid over B, ${b.name}, drawn through">
      <g transform=${layout.transform}>
        <path class="b" d=${path(1)} transform="translate(${feet[1]} 0)"></path>
        <path class="a" d=${path(0)} transform="translate(${feet[0]} 0)"></path>
        <line class="axis" x1="-10" x2=${layout.length + 10} y1="0" y2="0"></line>
      </g>
      ${widest && !isSame(widest.a, widest.b) ? this.pointedOut(compared, widest) : nothing}
    </svg></div>`
  }

  /** The place of the largest difference: a line across, the difference thick, the two diameters beside it. */
  private pointedOut({ layout, along }: CompareLayout, { fromEnd, a, b }: Widest): SVGTemplateResult {
    const x = along(fromEnd)
    const [ra, rb] = [(a * layout.scale) / 2, (b * layout.scale) / 2]
    const edge = layout.radius + 8
    return svg`
      <g transform=${layout.transform}>
        <line class="place" x1=${x} x2=${x} y1=${-edge} y2=${edge}></line>
        ${[-1, 1].map((side) => svg`<line class="gap" x1=${x} x2=${x} y1=${side * ra} y2=${side * rb}></line>`)}
      </g>
      ${this.figure('A', a, layout, x, -edge)}
      ${this.figure('B', b, layout, x, edge)}`
  }

  private figure(
    letter: 'A' | 'B',
    mm: number,
    layout: CompareLayout['layout'],
    x: number,
    y: number,
  ): SVGTemplateResult {
    const text = `${letter} ${limitText(mm, this.lengthStyle)}`
    const half = text.length * 4
    const inside = layout.vertical ? x : Math.min(layout.reach[1], Math.max(layout.reach[0], x))
    const [px, py] = layout.place(inside, y + Math.sign(y) * 6)
    if (layout.vertical) {
      return svg`<text x=${px} y=${py + 4} text-anchor=${y < 0 ? 'end' : 'start'}>${text}</text>`
    }
    const held = Math.min(layout.width - half - 4, Math.max(half + 4, px))
    return svg`<text x=${held} y=${y < 0 ? py : py + 11} text-anchor="middle">${text}</text>`
  }
}

function key(line: 'a' | 'b', { name, profile }: Compared, style: LengthStyle) {
  return html`<li>
    <svg width="44" height="16" aria-hidden="true"><path class=${line} d="M1 4H43V12H1Z"></path></svg>
    <span><b>${line.toUpperCase()}</b> ${line === 'a' ? 'in dashes' : 'drawn through'}: ${name}, ${limitText(lengthOf(profile), style)} long</span>
  </li>`
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-compare': ProfileCompare
  }
}
