import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { outlineRadius } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { keptOutline } from './part-outlines.ts'
import { halfPath, scaledOutline } from './part-silhouette.ts'
import { woodTone } from './wood-tones.ts'

const LONG = 1000

/** A half of a split part seen on edge, its flat face down, foot at the left. Properties in; it sends nothing. */
@customElement('half-drawing')
export class HalfDrawing extends LitElement {
  @property({ attribute: false }) profile!: Profile
  @property() species = ''

  static override styles = css`
    :host { display: block; min-width: 0; }
    svg { display: block; width: 100%; max-height: 8rem; }
    path { stroke: #1c120a; vector-effect: non-scaling-stroke; }
    .flat { stroke: var(--accent, #1c4a84); stroke-width: 2.5; }
  `

  override render() {
    const outline = keptOutline(this.profile)
    const points = scaledOutline(outline, LONG / (outline.at(-1)?.x ?? 1))
    const half = outlineRadius(points)
    return html`<svg viewBox="-10 ${-half - 10} 1020 ${half + 20}" role="img" aria-label="A half seen on edge, flat face down, foot at the left">
      <path fill=${woodTone(this.species)} d=${halfPath(points, -1)}></path>
      <path class="flat" d="M0 0H${LONG}"></path>
    </svg>`
  }
}
