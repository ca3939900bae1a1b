import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { EnteredPhotoLine } from '../sheet-file.ts'
import { pageWear } from '../styles/all.ts'

type Point = [number, number]

const steps: Record<string, Point> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/**
 * Points on a photograph: tapped, or set by keyboard with a crosshair. Sends `line` with the two ends of a length, or
 * `foot` with one point.
 */
@customElement('photo-points')
export class PhotoPoints extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .sheet {
        overflow: auto;
        max-height: 70vh;
        border: 1px solid var(--line);
      }
      svg {
        width: 100%;
        max-width: none;
        touch-action: manipulation;
        cursor: crosshair;
      }
      svg:not(.twice, .four) {
        max-height: 55vh;
      }
      svg.twice {
        width: 200%;
      }
      svg.four {
        width: 400%;
      }
      .under {
        stroke: #fff;
        stroke-width: 5;
      }
      .over {
        stroke: #1c4a84;
        stroke-width: 2.5;
      }
      line,
      path,
      circle {
        fill: none;
        vector-effect: non-scaling-stroke;
      }
    `,
  ]

  @property() image = ''
  @property({ attribute: false }) size = { width: 1, height: 1 }
  @property({ attribute: false }) lines: readonly EnteredPhotoLine[] = []
  @property({ attribute: false }) foot?: Point
  @property({ type: Boolean }) setsFoot = false
  @state() private first?: Point
  @state() private cross?: Point
  /** The crosshair is shown to those who move it by keyboard. */
  @state() private shown = false
  @state() private zoom: 1 | 2 | 4 = 1
  @query('svg') private drawing!: SVGSVGElement

  private readonly tap = (event: MouseEvent) => {
    const matrix = this.drawing.getScreenCTM()
    if (!matrix) return
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
    this.cross = this.within([x, y])
    this.shown = false
    this.set(this.cross)
  }

  private within([x, y]: Point): Point {
    const clamp = (n: number, most: number) => Math.round(Math.min(Math.max(0, n), most) * 10) / 10
    return [clamp(x, this.size.width), clamp(y, this.size.height)]
  }

  private set(point: Point) {
    if (this.setsFoot) this.dispatchEvent(new CustomEvent('foot', { detail: point }))
    else if (this.first) {
      this.dispatchEvent(new CustomEvent('line', { detail: [this.first, point] }))
      this.first = undefined
    } else this.first = point
  }

  private readonly pressed = (event: KeyboardEvent) => {
    const { width, height } = this.size
    const at: Point = this.cross ?? [width / 2, height / 2]
    const step = steps[event.key]
    const by = event.shiftKey ? 1 : Math.max(width, height) / 50
    if (step) this.cross = this.within([at[0] + step[0] * by, at[1] + step[1] * by])
    else if (event.key === 'Enter' || event.key === ' ') {
      this.cross = at
      this.set(at)
    } else if (event.key === 'Escape') this.first = undefined
    else return
    this.shown = true
    event.preventDefault()
  }

  override render() {
    const { width, height } = this.size
    const scale = Math.max(width, height) / 400 / this.zoom
    return html`
      <div class="sheet">
        <svg class=${this.zoom === 4 ? 'four' : this.zoom === 2 ? 'twice' : ''} viewBox="0 0 ${width} ${height}" tabindex="0" role="application"
          aria-label="Photograph of the piece: tap points, or move the crosshair with the arrow keys (Shift: by one pixel) and set a point with Enter"
          @click=${this.tap} @keydown=${this.pressed}>
          <image href=${this.image} width=${width} height=${height}></image>
          ${this.lines.map(({ from, to }) => this.marked(`M${from}L${to}`, [from, to], scale))}
          ${this.first ? this.marked('', [this.first], scale) : nothing}
          ${this.foot ? this.marked(`M${this.foot}m${-9 * scale} 0h${18 * scale}m${-9 * scale} ${-9 * scale}v${18 * scale}`, [], scale) : nothing}
          ${this.cross && this.shown ? this.marked(`M${this.cross[0]} 0V${height}M0 ${this.cross[1]}H${width}`, [], scale) : nothing}
        </svg>
      </div>
      <div class="buttons">
        <button type="button" @click=${() => {
          this.zoom = this.zoom === 1 ? 2 : this.zoom === 2 ? 4 : 1
        }}>${this.zoom === 4 ? 'Whole photograph' : 'Larger'}</button>
        ${
          this.first
            ? html`<button type="button" @click=${() => {
                this.first = undefined
              }}>Drop the first point</button>`
            : nothing
        }
      </div>
    `
  }

  /** Lines and rings that show on light and on dark wood. */
  private marked(path: string, points: readonly Point[], scale: number) {
    return ['under', 'over'].map(
      (look) => svg`
        ${path ? svg`<path class=${look} d=${path}></path>` : nothing}
        ${points.map(([x, y]) => svg`<circle class=${look} cx=${x} cy=${y} r=${5 * scale}></circle>`)}`,
    )
  }
}
