import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Defect } from '../../shared/cutting/board.ts'
import { blanksOf, type SheetBlank, type SheetBoard } from '../../shared/cutting/sheet.ts'
import type { Units } from '../../shared/units/length.ts'
import { Room } from '../room.ts'
import { length, SessionController } from '../session.ts'
import { base } from '../styles/base.ts'

const CHARACTER = 6.6
/** Least height of a strip that its piece’s number can stand in, px. */
const STRIP = 16
/** A board is drawn no larger than so many times the room there is: the rest is scrolled to. */
const SCROLLED = 4

interface Rect {
  from: number
  to: number
  across: [number, number]
}

/**
 * A board with its strips, blanks, kerfs and offcuts, to scale; the butt end lies left, the edge that places are
 * measured from above. It is drawn at least as large as the numbers of the pieces need.
 */
@customElement('board-drawing')
export class BoardDrawing extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        min-width: 0;
      }
      .room {
        overflow-x: auto;
      }
      text {
        font: 600 12px var(--sans);
        font-variant-numeric: tabular-nums;
        fill: #1c120a;
        text-anchor: middle;
        dominant-baseline: central;
      }
      .board {
        fill: var(--kerf);
      }
      .waste {
        fill: url(#hatch);
      }
      .hatch {
        stroke: var(--edge);
        stroke-width: 1;
      }
      .ground {
        fill: var(--well);
      }
      .blank {
        fill: #d9ac74;
        stroke: #3f2a12;
        stroke-width: 1;
      }
      .offcut {
        fill: #f0dfc2;
        stroke: #3f2a12;
        stroke-width: 1;
        stroke-dasharray: 4 3;
      }
      .defect {
        fill: var(--under);
        opacity: 0.55;
      }
      .frame {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
    `,
  ]

  @property({ attribute: false }) board!: SheetBoard
  @property({ attribute: false }) defects: readonly Defect[] = []
  @property() units: Units = 'in'
  /** The drawing told in a sentence. */
  @property() told = ''
  private readonly room = new Room(this)

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    if (this.room.px === 0) return html``
    const { board } = this
    const scale = this.scale()
    const [width, height] = [board.length * scale, board.width * scale]
    const blanks = blanksOf(board)
    const isScrolled = width > this.room.px
    return html`<div class="room" tabindex=${isScrolled ? 0 : nothing} role=${isScrolled ? 'group' : nothing}
      aria-label=${isScrolled ? `Board ${board.number}, to be scrolled sideways` : nothing}><svg width=${width + 2} height=${height + 2} viewBox="-1 -1 ${width + 2} ${height + 2}" role="img" aria-label=${this.told}>
      <defs>
        <pattern id="hatch" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect class="ground" width="8" height="8"></rect>
          <line class="hatch" x1="0" x2="0" y1="0" y2="8"></line>
        </pattern>
      </defs>
      <rect class="waste" width=${width} height=${height}></rect>
      ${board.offcuts.map((offcut) => this.rect(offcut, scale, 'offcut', `offcut ${length(offcut.to - offcut.from, this.units)}`))}
      ${blanks.map((blank) => this.rect(blank, scale, 'blank', ...this.labels(blank)))}
      ${this.defects.map((defect) => this.defect(defect, scale, height))}
      <rect class="frame" width=${width} height=${height}></rect>
    </svg></div>`
  }

  /** Fits the room; larger, and scrolled, where numbered strips would be too narrow for their numbers. */
  private scale(): number {
    const { board } = this
    const fits = (this.room.px - 2) / board.length
    const narrowest = Math.min(...blanksOf(board).map(({ across }) => across[1] - across[0]))
    return Math.max(fits, Math.min(STRIP / narrowest, SCROLLED * fits))
  }

  /** What may stand in a blank, the fullest first. */
  private labels({ label, from, to }: SheetBlank): string[] {
    return [`${label} · ${length(to - from, this.units)}`, label]
  }

  private rect(
    { from, to, across }: Rect,
    scale: number,
    look: string,
    ...labels: string[]
  ): SVGTemplateResult {
    const [x, y] = [from * scale, across[0] * scale]
    const [width, height] = [(to - from) * scale, (across[1] - across[0]) * scale]
    const label = labels.find((text) => height >= 14 && width >= text.length * CHARACTER + 4)
    return svg`
      <rect class=${look} x=${x} y=${y} width=${width} height=${height}></rect>
      ${label ? svg`<text x=${x + width / 2} y=${y + height / 2}>${label}</text>` : nothing}`
  }

  private defect({ from, to, across }: Defect, scale: number, height: number): SVGTemplateResult {
    const [top, bottom] = across ? [across[0] * scale, across[1] * scale] : [0, height]
    const [start, end] = [Math.max(0, from), Math.min(this.board.length, to)]
    return svg`<rect class="defect" x=${start * scale} y=${top} width=${Math.max(0, end - start) * scale} height=${bottom - top}></rect>`
  }
}
