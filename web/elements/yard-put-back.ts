import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Lifts to one place that follow each other, by the numbers chalked on the boards. */
export interface LiftRun {
  to: 'back' | 'aside'
  numbers: number[]
}

/** Which boards go back and what is lifted off them, from the top of the pile down. Sends `done`. */
@customElement('yard-put-back')
export class YardPutBack extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host,
      ol {
        display: grid;
        gap: var(--space-2);
      }
      ol {
        list-style: none;
        padding: 0;
      }
      li {
        display: grid;
        grid-template-columns: 7.5rem minmax(0, 1fr);
        gap: var(--space-2);
        align-items: baseline;
        padding: var(--space-1) var(--space-2);
        border-left: 4px solid var(--edge);
      }
      .numbers {
        font-size: 1.75rem;
        font-weight: 750;
        line-height: 1.2;
      }
      .back {
        border-color: var(--over);
        background: var(--over-wash);
      }
      button {
        min-height: 3.5rem;
        width: 100%;
      }
    `,
  ]

  @property({ attribute: false }) runs: readonly LiftRun[] = []
  /** Kept boards at the bottom that stay where they are. */
  @property({ attribute: false }) stay: readonly number[] = []

  override render() {
    return html`
      <p class="soft">From the top of the pile down. Each board is lifted once; the yard’s stack lies as it lay.</p>
      <ol>
        ${this.runs.map(
          ({ to, numbers }) => html`<li class=${to}>
            <span>${to === 'back' ? '↩ put back' : 'lay aside'}</span><span class="numbers">${numbers.join(', ')}</span>
          </li>`,
        )}
        ${this.stay.length === 0 ? '' : html`<li><span>✓ stay put</span><span class="numbers">${[...this.stay].reverse().join(', ')}</span></li>`}
      </ol>
      <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('done'))}>Done: they are back</button>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-put-back': YardPutBack
  }
}
