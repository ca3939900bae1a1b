import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'
import type { Headline } from '../yard-words.ts'

/** Enough or not, large enough for arm’s length, and what it comes to. */
@customElement('yard-verdict')
export class YardVerdict extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .verdict {
        display: grid;
        gap: 0 var(--space-3);
        grid-template-columns: auto minmax(0, 1fr);
        align-items: center;
        min-height: 5.25rem;
        padding: var(--space-2) var(--space-3);
        border: 3px solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
      }
      .mark {
        all: unset;
        grid-row: span 2;
        font-size: 2.5rem;
        line-height: 1;
        font-weight: 700;
      }
      .word {
        font-size: 2.375rem;
        font-weight: 800;
        line-height: 1.05;
        overflow-wrap: anywhere;
      }
      .small-word {
        font-size: 1.5rem;
      }
      .sum {
        font-size: 1.0625rem;
        font-weight: 650;
        line-height: 1.2;
      }
      .enough {
        color: var(--in);
        background: var(--in-wash);
        border-color: var(--in);
      }
      .missing {
        color: var(--over);
        background: var(--over-wash);
        border-color: var(--over);
      }
      .sum {
        color: var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) headline: Headline = { state: 'none', text: '' }
  /** What the kept boards come to. */
  @property() sum = ''

  override render() {
    const { state, text } = this.headline
    const mark = { enough: '✓', missing: '▲', none: '' }[state]
    return html`<div class="verdict ${state}" role="status">
      <span class="mark" aria-hidden="true">${mark}</span>
      <span class="word ${state === 'none' ? 'small-word' : ''}">${text}</span>
      ${this.sum ? html`<span class="sum">${this.sum}</span>` : nothing}
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-verdict': YardVerdict
  }
}
