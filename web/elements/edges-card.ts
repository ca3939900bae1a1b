import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { ToolGrinding } from '../../shared/turning/edge.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { everyText } from './rack-edge-states.ts'

/** How long each edge cuts and how often it is brought back over the batch, with what its life rests on. */
@customElement('edges-card')
export class EdgesCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      th p {
        font-weight: 400;
      }
    `,
  ]

  @property({ attribute: false }) grinding: readonly ToolGrinding[] = []

  override render() {
    if (this.grinding.length === 0)
      return html`<section class="card"><h2>Edges</h2><p>No turning tool cuts in this plan.</p></section>`
    const minutes = this.grinding.reduce((sum, tool) => sum + tool.minutes, 0)
    return html`<section class="card">
      <h2>Edges</h2>
      <p>Touch-ups and regrinds of the batch take <strong>${minutesText(minutes)}</strong>; they are in its time, as sharpening.</p>
      <table class="stack">
        <thead><tr><th scope="col">Tool</th><th class="number" scope="col">Cutting in the batch</th><th class="number" scope="col">Touch up</th><th class="number" scope="col">Touch-ups</th><th class="number" scope="col">Regrinds</th></tr></thead>
        <tbody>${this.grinding.map(
          (tool) => html`<tr>
            <th scope="row">${tool.tool}<p class="small soft">${tool.angle === undefined ? '' : `Ground to ${tool.angle}°. `}${tool.why}</p></th>
            <td class="number" data-label="Cutting in the batch">${minutesText(tool.minutesCutting)}</td>
            <td class="number" data-label="Touch up"><span>${everyText(tool.piecesBetween)}<br /><span class="small soft">Cuts for ${minutesText(tool.life)} between touch-ups</span></span></td>
            <td class="number" data-label="Touch-ups">${tool.touchUps}</td>
            <td class="number" data-label="Regrinds">${tool.regrinds}</td>
          </tr>`,
        )}</tbody>
      </table>
      <p class="caution">At the grinder: eyes shielded, wheel guarded and ring-tested, the maker’s instructions first.</p>
    </section>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'edges-card': EdgesCard
  }
}
