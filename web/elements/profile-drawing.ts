import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { type OutlinePoint, outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { type Handle, handleNear, handlesOf } from './drawing-handles.ts'
import { bracketMark, handleMark, marksLook, stationLine, warningMark } from './drawing-marks.ts'
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

/** What a person does in the drawing. Lengths mm. */
export type DrawingAct =
  | { act: 'pick'; index: number; extend: boolean }
  | { act: 'drag'; handle: Handle; at?: number; r?: number }
  | { act: 'drop' }
  | { act: 'cancel' }
  | { act: 'nudge'; field: 'at' | 'diameter' | 'size'; steps: number; merge: boolean }
  | { act: 'insert'; at: number }

export interface DrawingWarning {
  index: number
  text: string
}

/** px within which a handle is taken hold of. */
const REACH = { mouse: 14, pen: 18, touch: 26 } as const
/** px a pointer moves before it drags. */
const STILL = 5
/** A drag flatter than this goes along or across only. */
const FLAT = 0.5
/** px a handle takes to each side. */
const HANDLE = 22
const FIGURES_MOST = 400
const LARGE = 8

interface Hold {
  handle: Handle
  x: number
  y: number
  layout: PartLayout
  /** Undefined until the pointer has moved. */
  ways?: { along: boolean; across: boolean }
}

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
  @state() private room = 0
  @state() private view: View = wholeView
  @state() private hold?: Hold
  @query('svg') private picture?: SVGSVGElement
  private pan?: { x: number; from: number; at: number }
  private observer?: ResizeObserver
  private frame = 0
  private latest?: PointerEvent
  private drawn?: { of: unknown[]; geometry: PartGeometry; handles: Handle[] }

  override connectedCallback() {
    super.connectedCallback()
    this.observer = new ResizeObserver(() => {
      this.room = Math.floor(this.clientWidth)
    })
    this.observer.observe(this)
  }

  override disconnectedCallback() {
    super.disconnectedCallback()
    this.observer?.disconnect()
    cancelAnimationFrame(this.frame)
  }

  private tell(detail: DrawingAct) {
    this.dispatchEvent(new CustomEvent<DrawingAct>('draw', { detail }))
  }

  /** Brings the focus to the stations of the drawing. */
  override focus() {
    this.renderRoot.querySelector<SVGElement>('.stage')?.focus()
  }

  private input(outline: readonly OutlinePoint[], longestLabel: number): WindowInput {
    const { room, view } = this
    return { lengthMm: outline.at(-1)!.x, diameterMm: 2 * outlineRadius(outline), room, view, longestLabel }
  }

  /** What is drawn, made anew only when something it rests on changes. */
  private parts(outline: readonly OutlinePoint[], layout: PartLayout) {
    const { profile, joints } = this
    const rough = this.hold !== undefined
    const of = [profile, joints, layout.scale, rough]
    if (!this.drawn?.of.every((value, i) => value === of[i])) {
      const geometry = rough
        ? roughGeometry(profile, outline, layout.scale)
        : partGeometry(profile, outline, joints, layout)
      this.drawn = { of, geometry, handles: handlesOf(profile) }
    }
    return this.drawn!
  }

  override render() {
    if (this.room === 0) return html``
    const outline = keptOutline(this.profile)
    const [below, above] = this.marks()
    const longest = Math.max(0, ...[...below, ...above].map(({ text }) => text.length))
    const layout = this.hold?.layout ?? windowLayout(this.input(outline, longest))
    const { geometry, handles } = this.parts(outline, layout)
    const light = { species: this.species, from: 1, rough: this.hold !== undefined } as const
    return html`
      <div class="window">
        <svg
          class=${this.hold ? 'held' : ''}
          width=${layout.width}
          height=${layout.height}
          viewBox="0 0 ${layout.width} ${layout.height}"
          @pointerdown=${this.down}
          @pointermove=${this.moved}
          @pointerup=${this.up}
          @pointercancel=${this.cancelled}
          @dblclick=${this.doubled}
          @wheel=${this.wheeled}
        >
          <defs>${woodDefs(geometry, light)}</defs>
          <g role="img" aria-labelledby="title" aria-describedby="words">
            <title id="title">${partTitle(this.profile, this.lengthStyle, this.name)}</title>
            <desc id="words">${this.hold ? '' : partWords(this.profile, this.lengthStyle)}</desc>
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
    const diameters = diameterMarks(profile, lengthStyle, this.hold ? [] : checks)
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
      this.hold
        ? this.hold.handle.index === index && this.hold.handle.field === field
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
        ${this.warnings.map(({ index, text }) => (stations[index] ? warningMark(stations[index].at * scale, text) : nothing))}
        ${from < to && stations[to] ? bracketMark(stations[from]!.at * scale, stations[to].at * scale, layout) : nothing}
        ${this.disabled ? nothing : seen.map((handle) => (handle.field === 'station' ? stationLine(handle, layout, isOn(handle)) : nothing))}
        ${this.disabled ? nothing : seen.map((handle) => handleMark(handle, layout, isOn(handle), this.hold !== undefined))}
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
      <p class="readout">${this.profile.stations[this.chosen[1]] ? stationWords(this.profile, this.chosen[1], this.lengthStyle) : ''}</p>
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
    return this.hold?.layout ?? windowLayout(this.input(keptOutline(this.profile), longest))
  }

  private point(event: MouseEvent, layout: PartLayout) {
    const box = this.picture!.getBoundingClientRect()
    return pointOnPart(layout, event.clientX - box.left, event.clientY - box.top)
  }

  private readonly down = (event: PointerEvent) => {
    if (event.button !== 0 || this.hold) return
    const layout = this.layout()
    const point = this.point(event, layout)
    const reach = REACH[event.pointerType as keyof typeof REACH] ?? REACH.mouse
    const handle = this.disabled
      ? undefined
      : handleNear(handlesOf(this.profile), point, reach / layout.scale)
    if (!handle) {
      this.pan = {
        x: event.clientX,
        from: viewWithin(this.input(keptOutline(this.profile), 0)).from,
        at: point.at,
      }
      return
    }
    event.preventDefault()
    this.focus()
    this.picture!.setPointerCapture(event.pointerId)
    this.hold = { handle, x: event.clientX, y: event.clientY, layout }
    this.tell({ act: 'pick', index: handle.index, extend: event.shiftKey })
  }

  private readonly moved = (event: PointerEvent) => {
    if (this.pan && this.view.zoom > 1 && event.buttons > 0) {
      const layout = this.layout()
      const from = this.pan.from - (event.clientX - this.pan.x) / layout.scale
      this.view = viewWithin({ ...this.input(keptOutline(this.profile), 0), view: { ...this.view, from } })
    }
    if (!this.hold) return
    this.latest = event
    if (this.frame === 0) this.frame = requestAnimationFrame(() => this.drag())
  }

  /** Tells where the pointer has dragged what is held; once a frame. */
  private drag() {
    this.frame = 0
    const { hold, latest } = this
    if (!hold || !latest) return
    const [dx, dy] = [latest.clientX - hold.x, latest.clientY - hold.y]
    if (!hold.ways) {
      if (Math.hypot(dx, dy) < STILL) return
      const station = hold.handle.field === 'station'
      hold.ways = {
        along: station && Math.abs(dx) > FLAT * Math.abs(dy),
        across: !station || Math.abs(dy) > FLAT * Math.abs(dx),
      }
    }
    const { handle, layout, ways } = hold
    this.tell({
      act: 'drag',
      handle,
      ...(ways.along && { at: handle.at + dx / layout.scale }),
      ...(ways.across && { r: handle.r - dy / layout.scale }),
    })
  }

  private readonly up = (event: PointerEvent) => {
    const { hold, pan } = this
    this.pan = undefined
    if (!hold) {
      if (pan && Math.abs(event.clientX - pan.x) < STILL) this.pickSpan(pan.at, event.shiftKey)
      return
    }
    this.latest = event
    cancelAnimationFrame(this.frame)
    this.drag()
    this.hold = undefined
    this.latest = undefined
    this.tell({ act: 'drop' })
  }

  /** Picks the station whose span was pressed. */
  private pickSpan(at: number, extend: boolean) {
    const { stations } = this.profile
    const after = stations.findIndex((station) => station.at > at)
    const index = after < 0 ? stations.length - 1 : Math.max(0, after - 1)
    this.tell({ act: 'pick', index, extend })
  }

  private readonly cancelled = () => {
    this.pan = undefined
    if (!this.hold) return
    cancelAnimationFrame(this.frame)
    this.frame = 0
    this.hold = undefined
    this.tell({ act: 'cancel' })
  }

  private readonly doubled = (event: MouseEvent) => {
    if (this.disabled) return
    const layout = this.layout()
    const { at, r } = this.point(event, layout)
    if (!handleNear(handlesOf(this.profile), { at, r }, REACH.mouse / layout.scale))
      this.tell({ act: 'insert', at })
  }

  private readonly wheeled = (event: WheelEvent) => {
    if (!event.ctrlKey) return
    event.preventDefault()
    const { at } = this.point(event, this.layout())
    this.view = zoomedView(this.input(keptOutline(this.profile), 0), 2 ** (-event.deltaY / 200), at)
  }

  private readonly key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) return
    if (event.key === 'Escape' && this.hold) this.cancelled()
    else if (!this.nudged(event) && !this.went(event)) return
    event.preventDefault()
  }

  private nudged({ key, altKey, shiftKey, repeat }: KeyboardEvent): boolean {
    const along = { ArrowLeft: -1, ArrowRight: 1 }[key]
    const across = { ArrowDown: -1, ArrowUp: 1 }[key]
    const steps = (along ?? across ?? 0) * (shiftKey ? LARGE : 1)
    if (steps === 0) return false
    const field = along !== undefined ? 'at' : altKey ? 'size' : 'diameter'
    this.tell({ act: 'nudge', field, steps, merge: repeat })
    return true
  }

  private went({ key, shiftKey }: KeyboardEvent): boolean {
    const last = this.profile.stations.length - 1
    const hand = this.chosen[1]
    const to = { PageUp: hand + 1, PageDown: hand - 1, Home: 0, End: last }[key]
    if (to === undefined) return false
    this.tell({ act: 'pick', index: Math.max(0, Math.min(last, to)), extend: shiftKey })
    return true
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-drawing': ProfileDrawing
  }
}
