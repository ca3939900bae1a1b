import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { TouchUp } from '../../shared/piece.ts'
import type { ToolGrinding } from '../../shared/turning/edge.ts'
import type { CountedEdge, EdgeState } from '../../shared/turning/edge-wear.ts'
import { pageWear } from '../styles/all.ts'
import { momentText } from '../time-text.ts'
import { countedText, leftText } from './rack-edge-states.ts'
import { rowLook } from './row-look.ts'

/** An edge as it was brought back. */
export interface BroughtBack {
  tool: string
  kind: TouchUp['kind']
}

/** Touch-ups that can be taken back are the latest ones. */
const SHOWN = 12

/**
 * Which edges want the stone or the wheel, and when the others will; what was logged of them, and what it says of their
 * lives. Sends `brought-back`, `touch-up-taken-back` with the key, `life-taken` and `life-left` with the counted edge.
 */
@customElement('rack-edges')
export class RackEdges extends LitElement {
  static override styles = [
    ...pageWear,
    rowLook,
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
      .due p,
      .counted p {
        flex: 1 1 12rem;
      }
      .counted {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
        align-items: center;
        padding: var(--space-2) var(--space-3);
        border-left: 4px solid var(--accent);
        background: var(--accent-wash);
      }
      .card {
        gap: var(--space-2);
      }
      @media (max-width: 30rem) {
        .tools li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  @property({ attribute: false }) edges: readonly EdgeState[] = []
  @property({ attribute: false }) grinding: readonly ToolGrinding[] = []
  @property({ attribute: false }) touchUps: readonly TouchUp[] = []
  @property({ attribute: false }) counted: readonly CountedEdge[] = []
  /** Why something could not be taken back or taken over; what became of it. */
  @property() failure = ''
  @property() note = ''

  override render() {
    if (this.edges.length === 0) return nothing
    const due = this.edges.filter(({ left }) => left === 0)
    const later = this.edges.filter(({ left }) => left > 0)
    return html`<section class="card" aria-label="Edges">
      ${due.map((edge) => this.due(edge))}
      ${later.length === 0 ? nothing : html`<p class="small">Touch up ${later.map(({ tool, left }, i) => html`${i > 0 ? '; ' : ''}the ${tool} <strong>${leftText(left)}</strong>`)}.</p>`}
      ${this.counted.map((count) => this.life(count))}
      ${this.note ? html`<p role="status">${this.note}</p>` : nothing}
      ${this.failure ? html`<p class="problem" role="alert">${this.failure}</p>` : nothing}
      <details>
        <summary>Log a touch-up or a regrind</summary>
        <ul class="plain tools">${this.edges.map((edge) => this.tool(edge))}</ul>
        <p class="caution">At the grinder: eyes shielded, wheel guarded and ring-tested, the maker’s instructions first.</p>
        ${this.log()}
      </details>
    </section>`
  }

  private tell(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail }))
  }

  private broughtBack(tool: string, kind: TouchUp['kind']): void {
    this.tell('brought-back', { tool, kind } satisfies BroughtBack)
  }

  private due({ tool, regrind }: EdgeState): TemplateResult {
    const kind = regrind ? 'regrind' : 'touch-up'
    return html`<div class="due" role="status">
      <p>${
        regrind
          ? html`<strong>Regrind the ${tool}</strong> at the wheel before the next piece: it was touched up as often as the stone does it.`
          : html`<strong>Touch up the ${tool}</strong> before the next piece.`
      }</p>
      <button type="button" @click=${() => this.broughtBack(tool, kind)}>${regrind ? 'It is reground' : 'It is sharp again'}</button>
    </div>`
  }

  private life(count: CountedEdge): TemplateResult {
    const planned = this.grinding.find(({ tool }) => tool === count.tool)?.piecesBetween ?? 0
    return html`<div class="counted" role="group" aria-label="Life of the ${count.tool}">
      <p><strong>${count.tool}.</strong> ${countedText(count, planned)} New plans will reckon with it; this batch keeps its own.</p>
      <div class="buttons">
        <button type="button" @click=${() => this.tell('life-taken', count)}>Take it</button>
        <button type="button" @click=${() => this.tell('life-left', count)}>No, leave it</button>
      </div>
    </div>`
  }

  private tool({ tool, worked, last, regrind }: EdgeState): TemplateResult {
    const pieces = Math.round(worked * 10) / 10
    return html`<li>
      <div>
        <p>${tool}</p>
        <p class="small soft">${pieces} ${pieces === 1 ? 'piece' : 'pieces'} since ${last === undefined ? 'the start' : momentText(last)}${regrind ? '; the wheel is next' : ''}</p>
      </div>
      <div class="buttons">
        <button type="button" aria-label="Touched up the ${tool}" @click=${() => this.broughtBack(tool, 'touch-up')}>Touched up</button>
        <button type="button" aria-label="Reground the ${tool}" @click=${() => this.broughtBack(tool, 'regrind')}>Reground</button>
      </div>
    </li>`
  }

  private log(): TemplateResult | typeof nothing {
    if (this.touchUps.length === 0) return nothing
    const latest = [...this.touchUps].reverse().slice(0, SHOWN)
    return html`<p class="label">Logged, the latest first</p>
      <ul class="plain">${latest.map(
        ({ key, tool, kind, at, by }) => html`<li>
          <div>
            <p>${tool}: ${kind === 'regrind' ? 'reground' : 'touched up'}</p>
            <p class="small soft">${momentText(at)}${by ? html`, ${by}` : nothing}</p>
          </div>
          <button type="button" aria-label="Take back: the ${tool}, ${momentText(at)}" @click=${() => this.tell('touch-up-taken-back', { key })}>Take back</button>
        </li>`,
      )}</ul>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-edges': RackEdges
  }
}
