import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { pageWear } from '../styles/all.ts'

const timesText = (count: number): string => (count === 1 ? 'once' : `${count} times`)

/** The lathe of a plan with the reasons for it and against the others of the shop. Properties in; it sends nothing. */
@customElement('lathe-card')
export class LatheCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.25rem;
      }
      dl.others dt {
        font-weight: 650;
      }
      dl.others dd {
        margin-bottom: var(--space-2);
      }
    `,
  ]

  /** Absent where no lathe of the shop takes the blank, and in plans frozen before it was told. */
  @property({ attribute: false }) lathe?: Plan['lathe']

  override render() {
    const { lathe } = this
    if (!lathe) return nothing
    const { name, why, others, restMoves, speedChanges } = lathe
    return html`<section class="card">
      <h2>Lathe: ${name}</h2>
      <ul>${why.map((reason) => html`<li>${reason}</li>`)}</ul>
      <dl class="figures">
        <div><dt>Tool rest moved</dt><dd>${timesText(restMoves)}</dd><dd class="note">a blank, each with the lathe stopped</dd></div>
        <div><dt>Speed changed</dt><dd>${timesText(speedChanges)}</dd><dd class="note">a blank; every mounting starts with it down</dd></div>
      </dl>
      ${
        others.length === 0
          ? nothing
          : html`<h3>Why not another</h3><dl class="others">${others.map((other) => html`<dt>${other.name}</dt><dd>${other.why}</dd>`)}</dl>`
      }
      <p class="caution">The lathe maker’s own limits of speed, size and weight come first.</p>
    </section>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lathe-card': LatheCard
  }
}
