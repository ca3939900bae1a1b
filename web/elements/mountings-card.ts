import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Passes, PassSegment } from '../../shared/route/operation.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'

/** Whether each blank is mounted once or several times, what either takes, and where the work is parted. */
@customElement('mountings-card')
export class MountingsCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ol {
        display: grid;
        gap: var(--space-2);
        padding-left: var(--space-6);
      }
      .ways th.number {
        white-space: normal;
      }
      .ways th[scope='row'] p {
        font-weight: 400;
      }
    `,
  ]

  @property({ attribute: false }) passes?: Passes
  /** Blanks of the batch. */
  @property({ type: Number }) blanks = 0

  override render() {
    const { passes } = this
    if (!passes) return nothing
    const { chosen, segments = [], why } = passes
    return html`<section class="card" aria-labelledby="mountings">
      <h2 id="mountings">Mountings</h2>
      <p>${
        chosen === 'one'
          ? `Each of the ${this.blanks} blanks is mounted once and turned through before the next.`
          : `Each of the ${this.blanks} blanks is mounted ${segments.length > 1 ? `${segments.length} times` : 'several times'}: all go through one stretch of the work before any goes on.`
      }</p>
      ${segments.length > 1 ? html`<ol>${segments.map((segment) => this.segment(segment))}</ol>` : nothing}
      ${this.ways(passes)}
      <p class="small soft">${why}</p>
      ${passes.withGauges ? html`<p class="small soft">Reckoned with a preset gauge for every diameter instead of setting calipers.</p>` : nothing}
      <p class="caution">Every mounting is its own start: speed down first, the blank turned by hand, the rest clear, and stand aside.</p>
    </section>`
  }

  private segment({ from, to, operations, minutes }: PassSegment): TemplateResult {
    const what = operations.length === 1 ? from : `${from} … ${to}`
    const count = operations.length === 1 ? '1 operation' : `${operations.length} operations`
    return html`<li>${what} <span class="small soft">(${count}; mounting and changes ${minutesText(minutes)} for the batch)</span></li>`
  }

  private ways({ one, several, byOperation, chosen }: Passes): TemplateResult {
    const row = (name: string, minutes: number, isChosen: boolean, note = '') => html`<tr>
      <th scope="row">${name}${note ? html`<p class="small soft">${note}</p>` : nothing}</th>
      <td class="number">${minutesText(minutes)}</td>
      <td>${isChosen ? html`<span class="mark in">taken</span>` : nothing}</td>
    </tr>`
    return html`<table class="ways">
      <thead><tr><th scope="col">Way</th><th scope="col" class="number">Mounting and changes, the batch</th><th scope="col"><span class="hidden-label">Taken</span></th></tr></thead>
      <tbody>
        ${row('Piece by piece', one, chosen === 'one', 'one mounting each')}
        ${byOperation === one && several === one ? nothing : row('Several mountings', several, chosen === 'several', 'parted where it costs least')}
        ${byOperation === undefined || (byOperation === one && several === one) ? nothing : row('Operation by operation', byOperation, false, 'parted wherever a blank may come off')}
      </tbody>
    </table>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mountings-card': MountingsCard
  }
}
