import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { Room } from '../room.ts'
import { pageWear } from '../styles/all.ts'
import { actOfKey, type DrawingAct } from './drawing-act.ts'
import { type Handle, handlesOf } from './drawing-handles.ts'
import { bracketMark, handleMark, marksLook, stationLine, warningMark } from './drawing-marks.ts'
import { DrawingPointer } from './drawing-pointer.ts'
import {
  pointOnPart,
  type View,
  viewWithin,
  type WindowInput,
  wholeView,
  windowLayout,
  zoomedView,
} from './drawing-window.ts'
import {
  type CheckMark,
  diameterMarks,
  type Mark,
  radiusMarks,
  roomyMarks,
  runningMarks,
  togetherMarks,
} from './part-dimensions.ts'
import { figureRow, figuresLook } from './part-figures.ts'
import { type PartGeometry, partGeometry, roughGeometry } from './part-geometry.ts'
import type { PartLayout } from './part-layout.ts'
import { keptOutline } from './part-outlines.ts'
import { wood, woodDefs, woodLook } from './part-wood.ts'
import { partTitle, partWords, stationWords } from './part-words.ts'

export interface DrawingWarning {
  index: number
  /** The place it names, mm from the foot; its station where it names none. */
  at?: number
  text: string
}

/** px a handle takes to each side. */
const HANDLE = 22
/**
 * No figures are written on a part of more stations: a wide screen has room for some 80 of them, one in 15 px, and to
 * choose those from five times as many at each step of a drag costs more than they tell. Ours, no source.
 */
const FIGURES_MOST = 400

/**
 * A part to take hold of: stations drag along it and across it, by pointer, finger and arrow keys. Sends `draw` with
 * a `DrawingAct`; what comes of it comes back as the profile.
 */
@customElement('profile-drawing')
export class ProfileDrawing extends LitElement {
  static override styles = [
    ...pageWear,
    figuresLook,
    woodLook,
    marksLook,
    css`
      :host {
        min-width: 0;
      }
      .window {
        background: var(--well);
        border-radius: var(--round);
        overflow: hidden;
        contain: content;
      }
      svg {
        touch-action: pan-y;
        user-select: none;
        -webkit-user-select: none;
      }
      svg.held {
        touch-action: none;
        cursor: grabbing;
      }
      .axis {
        stroke: currentColor;
        stroke-width: 0.75;
        stroke-dasharray: 12 3 2 3;
        opacity: 0.5;
      }
      .stage:focus {
        outline: none;
      }
      .window:focus-within {
        outline: 3px solid var(--accent);
        outline-offset: 2px;
      }
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
        justify-content: space-between;
        min-height: var(--touch);
        margin-top: var(--space-2);
      }
      /* A fraction broken at its hyphen is misread. */
      .readout span {
        display: inline-block;
        max-width: 100%;
      }
      .readout {
        flex: 1 1 14rem;
        font-weight: 600;
      }
    `,
  ]

  @property({ attribute: false }) profile!: Profile
  @property() species = ''
  @property() name = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @property({ attribute: false }) joints: readonly Joint[] = []
  @property({ attribute: false }) checks: readonly CheckMark[] = []
  @property({ attribute: false }) warnings: readonly DrawingWarning[] = []
  /** First and last station of what is chosen; the last one is at hand. */
  @property({ attribute: false }) chosen: readonly [anchor: number, hand: number] = [0, 0]
  @property({ type: Boolean }) disabled = false
  private readonly room = new Room(this)
  @state() private view: View = wholeView
  @query('svg') private picture?: SVGSVGElement
  private drawn?: { of: unknown[]; geometry: PartGeometry; handles: Handle[] }
  private readonly pointer = new DrawingPointer(this, {
    disabled: () => this.disabled,
    stations: () => this.profile.stations,
    handles: () => handlesOf(this.profile),
    layout: () => this.layout(),
    point: (event, layout) => this.point(event, layout),
    take: (event) => {
      this.focus()
      this.picture!.setPointerCapture(event.pointerId)
    },
    windowFrom: () => {
      const { zoom, from } = viewWithin(this.input(keptOutline(this.profile), 0))
      return zoom > 1 ? from : undefined
    },
    slide: (from) => {
      this.view = viewWithin({ ...this.input(keptOutline(this.profile), 0), view: { ...this.view, from } })
    },
    tell: (act) => this.tell(act),
  })

  private tell(detail: DrawingAct) {
    this.dispatchEvent(new CustomEvent<DrawingAct>('draw', { detail }))
  }

  /** Brings the focus to the stations of the drawing. */
  override focus() {
    this.renderRoot.querySelector<SVGElement>('.stage')?.focus()
  }

  private input(outline: readonly OutlinePoint[], longestLabel: number): WindowInput {
    const { view } = this
    const room = this.room.px
    return { lengthMm: outline.at(-1)!.x, diameterMm: 2 * outlineRadius(outline), room, view, longestLabel }
  }

  /** What is drawn, made anew only when something it rests on changes. */
  private parts(outline: readonly OutlinePoint[], layout: PartLayout) {
    const { profile, joints } = this
    const rough = this.pointer.hold !== undefined
    const of = [profile, joints, layout.scale, rough]
    if (!this.drawn?.of.every((value, i) => value === of[i])) {
      const geometry = rough
        ? roughGeometry(profile, outline, layout.scale)
        : partGeometry(profile, outline, joints, layout)
      this.drawn = { of, geometry, handles: handlesOf(profile) }
    }
    return this.drawn!
  }

  /** The figures of the chosen station, none of them broken over two lines. */
  private readout() {
    if (!this.profile.stations[this.chosen[1]]) return ''
    const words = stationWords(this.profile, this.chosen[1], this.lengthStyle).split(', ')
    return words.map((word, i) => html`<span>${word}${i < words.length - 1 ? ',' : ''}</span> `)
  }

  override render() {
    if (this.room.px === 0) return html``
    const outline = keptOutline(this.profile)
    const [below, above] = this.marks()
    const longest = Math.max(0, ...[...below, ...above].map(({ text }) => text.length))
    const layout = this.pointer.hold?.layout ?? windowLayout(this.input(outline, longest))
    const { geometry, handles } = this.parts(outline, layout)
    const light = { species: this.species, from: 1, rough: this.pointer.hold !== undefined } as const
    return html`
      <div class="window">
        <svg
          class=${this.pointer.hold ? 'held' : ''}
          width=${layout.width}
          height=${layout.height}
          viewBox="0 0 ${layout.width} ${layout.height}"
          @pointerdown=${this.pointer.down}
          @pointermove=${this.pointer.moved}
          @pointerup=${this.pointer.up}
          @pointercancel=${this.pointer.cancelled}
          @dblclick=${this.pointer.doubled}
          @wheel=${this.wheeled}
        >
          <defs>${woodDefs(geometry, light)}</defs>
          <g role="img" aria-labelledby="title" aria-describedby="words">
            <title id="title">${partTitle(this.profile, this.lengthStyle, this.name)}</title>
            <desc id="words">${this.pointer.hold ? '' : partWords(this.profile, this.lengthStyle)}</desc>
            <g transform=${layout.transform}>
              ${wood(geometry, light)}
              <line class="axis" x1="-10" x2=${layout.length + 10} y1="0" y2="0"></line>
            </g>
            ${this.figures(layout, geometry, below, above)}
          </g>
          ${this.stage(layout, handles)}
        </svg>
      </div>
      ${this.bar(layout)}
    `
  }

  /** Running lengths from the foot and diameters, of a part with not too many stations. */
  private marks(): [Mark[], Mark[]] {
    const { profile, lengthStyle, checks } = this
    if (profile.stations.length > FIGURES_MOST) return [[], []]
    const diameters = diameterMarks(profile, lengthStyle, this.pointer.hold ? [] : checks)
    return [runningMarks(profile, lengthStyle), togetherMarks(diameters, radiusMarks(profile, lengthStyle))]
  }

  private figures(
    layout: PartLayout,
    { outline }: PartGeometry,
    below: Mark[],
    above: Mark[],
  ): SVGTemplateResult {
    const [low, high] = layout.reach
    const capacity = Math.floor((high - low) / layout.gap) + 1
    const hand = this.profile.stations[this.chosen[1]]?.at
    const seen = (marks: Mark[]) =>
      roomyMarks(
        marks.filter(({ at }) => at * layout.scale >= low - 8 && at * layout.scale <= high + 8),
        capacity,
        hand,
      )
    const unit = this.lengthStyle === 'mm' ? 'mm' : 'in'
    return svg`
      ${figureRow(layout, outline, seen(below), 1)}
      ${figureRow(layout, outline, seen(above), -1)}
      <text class="unit" x="4" y=${layout.height - 4}>from the foot, ${unit}</text>
      <text class="unit" x="4" y="12">Ø, □ across flats, R radius, ${unit}</text>`
  }

  private stage(layout: PartLayout, handles: readonly Handle[]): SVGTemplateResult {
    const { stations } = this.profile
    const [anchor, hand] = this.chosen
    const [from, to] = [Math.min(anchor, hand), Math.max(anchor, hand)]
    const { scale } = layout
    const isOn = ({ index, field }: Handle) =>
      this.pointer.hold
        ? this.pointer.hold.handle.index === index && this.pointer.hold.handle.field === field
        : field === 'station' && index >= from && index <= to
    const here = stations[hand]
    const seen = handles.filter(({ at }) => this.isSeen(at, layout))
    const words = here ? stationWords(this.profile, hand, this.lengthStyle) : ''
    return svg`
      <g transform=${layout.transform} class="stage"
        tabindex=${this.disabled ? nothing : 0}
        role=${this.disabled ? 'presentation' : 'slider'}
        aria-label=${this.disabled ? nothing : 'Station at hand'}
        aria-describedby=${this.disabled ? nothing : 'keys'}
        aria-valuemin=${this.disabled ? nothing : 0}
        aria-valuemax=${this.disabled ? nothing : (stations.at(-1)?.at ?? 0)}
        aria-valuenow=${this.disabled ? nothing : (here?.at ?? 0)}
        aria-valuetext=${this.disabled ? nothing : words}
        @keydown=${this.key}>
        ${this.warnings.map(({ index, at = stations[index]?.at, text }) => (at === undefined ? nothing : warningMark(at * scale, text)))}
        ${from < to && stations[to] ? bracketMark(stations[from]!.at * scale, stations[to].at * scale, layout) : nothing}
        ${this.disabled ? nothing : seen.map((handle) => (handle.field === 'station' ? stationLine(handle, layout, isOn(handle)) : nothing))}
        ${this.disabled ? nothing : seen.map((handle) => handleMark(handle, layout, isOn(handle), this.pointer.hold !== undefined))}
      </g>`
  }

  private bar(layout: PartLayout) {
    const { zoom } = this.view
    const input = () => this.input(keptOutline(this.profile), 0)
    const hand = this.profile.stations[this.chosen[1]]?.at ?? 0
    const by = (factor: number) => {
      this.view = zoomedView(input(), factor, this.isSeen(hand, layout) ? hand : this.middle(layout))
    }
    const along = (share: number) => {
      const shown = layout.width / layout.scale
      this.view = viewWithin({ ...input(), view: { zoom, from: this.view.from + share * shown } })
    }
    return html`<div class="bar no-print">
      <p class="readout">${this.readout()}</p>
      <div class="buttons" role="group" aria-label="View of the drawing">
        ${
          zoom > 1
            ? html`<button type="button" class="icon" aria-label="Show more towards the foot" @click=${() => along(-0.5)}>‹</button>
              <button type="button" class="icon" aria-label="Show more towards the top" @click=${() => along(0.5)}>›</button>
              <button type="button" @click=${() => (this.view = wholeView)}>Whole</button>`
            : nothing
        }
        <button type="button" class="icon" aria-label="Zoom out" ?disabled=${zoom <= 1} @click=${() => by(0.5)}>−</button>
        <button type="button" class="icon" aria-label="Zoom in" @click=${() => by(2)}>+</button>
      </div>
      <p id="keys" class="hidden-label">
        Left and right move the station along the part, up and down change its diameter, with Alt the rise, depth or side
        after it; Shift makes larger steps. Page Up and Page Down go to the next station, with Shift they choose a group.
        Insert adds a station after it, Delete takes it away.
      </p>
    </div>`
  }

  private isSeen(at: number, layout: PartLayout): boolean {
    const [x] = layout.place(at * layout.scale, 0)
    return x >= -HANDLE && x <= layout.width + HANDLE
  }

  private middle(layout: PartLayout): number {
    return pointOnPart(layout, layout.width / 2, 0).at
  }

  /** The layout as it is on the screen. */
  private layout(): PartLayout {
    const longest = Math.max(0, ...this.marks().flatMap((marks) => marks.map(({ text }) => text.length)))
    return this.pointer.hold?.layout ?? windowLayout(this.input(keptOutline(this.profile), longest))
  }

  private point(event: MouseEvent, layout: PartLayout) {
    const box = this.picture!.getBoundingClientRect()
    return pointOnPart(layout, event.clientX - box.left, event.clientY - box.top)
  }

  private readonly wheeled = (event: WheelEvent) => {
    if (!event.ctrlKey) return
    event.preventDefault()
    const { at } = this.point(event, this.layout())
    this.view = zoomedView(this.input(keptOutline(this.profile), 0), 2 ** (-event.deltaY / 200), at)
  }

  private readonly key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) return
    if (event.key === 'Escape' && this.pointer.hold) this.pointer.cancelled()
    else {
      const act = actOfKey(event, this.chosen[1], this.profile.stations.length - 1)
      if (!act) return
      this.tell(act)
    }
    event.preventDefault()
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-drawing': ProfileDrawing
  }
}
