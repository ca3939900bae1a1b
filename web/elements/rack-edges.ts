import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'
import { type EdgeState, leftText } from './rack-edge-states.ts'

/** Which edges want the stone, and when the others will. Sends `sharpened` with the tool and its count. */
@customElement('rack-edges')
export class RackEdges extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .due {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
        align-items: center;
        justify-content: space-between;
        padding: var(--space-2) var(--space-3);
        border-left: 4px solid var(--over);
        background: var(--over-wash);
      }
      .due::before {
        content: '◆';
        color: var(--over);
      }
      .due p {
        flex: 1 1 12rem;
      }
      .card {
        gap: var(--space-2);
      }
    `,
  ]

  @property({ attribute: false }) edges: readonly EdgeState[] = []
  /** Touch-ups already made, by tool. */
  @property({ attribute: false }) sharpened: Readonly<Record<string, number>> = {}

  override render() {
    if (this.edges.length === 0) return nothing
    const due = this.edges.filter(({ tool, due }) => due > (this.sharpened[tool] ?? 0))
    const later = this.edges.filter((edge) => !due.includes(edge))
    return html`<section class="card" aria-label="Edges">
      ${due.map(
        ({ tool, due }) => html`<div class="due" role="status">
          <p><strong>Touch up the ${tool}</strong> before the next piece.</p>
          <button type="button" @click=${() => this.tell(tool, due)}>It is sharp again</button>
        </div>`,
      )}
      ${later.length === 0 ? nothing : html`<p class="small">Touch up ${later.map(({ tool, left }, i) => html`${i > 0 ? '; ' : ''}the ${tool} <strong>${leftText(left)}</strong>`)}.</p>`}
    </section>`
  }

  private tell(tool: string, due: number): void {
    this.dispatchEvent(new CustomEvent('sharpened', { detail: { tool, due } }))
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-edges': RackEdges
  }
}
