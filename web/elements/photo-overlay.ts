import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { Room } from '../room.ts'
import { pageWear } from '../styles/all.ts'
import { keptOutline } from './part-outlines.ts'
import { silhouettePath } from './part-silhouette.ts'

const NARROW = 560

/** A photograph behind the outline of the profile, both in mm: lying, and upright on a narrow screen. */
@customElement('photo-overlay')
export class PhotoOverlay extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      svg {
        width: 100%;
        max-height: 75vh;
        background: var(--well);
      }
      path,
      line {
        fill: none;
        vector-effect: non-scaling-stroke;
      }
      .under {
        stroke: #fff;
        stroke-width: 4;
        opacity: 0.8;
      }
      .over {
        stroke: #1c4a84;
        stroke-width: 2;
      }
      line {
        stroke: #1c4a84;
        stroke-width: 1;
        stroke-dasharray: 5 4;
      }
    `,
  ]

  @property() image = ''
  @property({ attribute: false }) size = { width: 1, height: 1 }
  /** Lays the photograph, one unit a pixel, on mm from the foot. */
  @property({ attribute: false }) matrix: readonly number[] = [1, 0, 0, 1, 0, 0]
  @property({ attribute: false }) profile?: Profile
  @property({ type: Number }) opacity = 0.6
  private readonly room = new Room(this)

  private get upright(): boolean {
    return this.room.px > 0 && this.room.px < NARROW
  }

  /** What is shown, mm: the profile with room about it; without one, the photograph. */
  private frame(): { from: number; to: number; half: number } {
    if (this.profile) {
      const length = this.profile.stations.at(-1)!.at
      const half = outlineRadius(keptOutline(this.profile)) * 1.5 + length * 0.02
      return { from: -length * 0.05, to: length * 1.05, half }
    }
    const [a, b, c, d, e, f] = this.matrix as [number, number, number, number, number, number]
    const corners = [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ].map(([u, v]): [number, number] => {
      const [x, y] = [u! * this.size.width, v! * this.size.height]
      return [a * x + c * y + e, b * x + d * y + f]
    }) // prettier-ignore
    const along = corners.map(([x]) => x)
    return {
      from: Math.min(...along),
      to: Math.max(...along),
      half: Math.max(...corners.map(([, y]) => Math.abs(y))),
    }
  }

  override render() {
    const { from, to, half } = this.frame()
    const box = this.upright
      ? `${-half} ${-to} ${2 * half} ${to - from}`
      : `${from} ${-half} ${to - from} ${2 * half}`
    const path = this.profile ? silhouettePath(keptOutline(this.profile)) : ''
    return html`<svg viewBox=${box} role="img" aria-label="The photograph behind the outline of the profile">
      <g transform=${this.upright ? 'matrix(0 -1 1 0 0 0)' : nothing}>
        <g transform="matrix(${this.matrix.join(' ')})" opacity=${this.opacity}>
          <image href=${this.image} width=${this.size.width} height=${this.size.height}></image>
        </g>
        ${path ? svg`<path class="under" d=${path}></path><path class="over" d=${path}></path>` : nothing}
        ${this.profile?.stations.map(({ at }) => svg`<line x1=${at} x2=${at} y1=${-half} y2=${half}></line>`)}
        <line x1=${from} x2=${to} y1="0" y2="0"></line>
      </g>
    </svg>`
  }
}
