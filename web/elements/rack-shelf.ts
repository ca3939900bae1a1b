import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { handOf, type Piece, pieceOperations } from '../../shared/piece.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { pageWear } from '../styles/all.ts'
import { SILHOUETTE_LENGTH, silhouetteOf } from './part-outlines.ts'
import { type PieceState, pieceState } from './rack-steps.ts'
import { woodTone } from './wood-tones.ts'

const symbols: Record<PieceState, string> = { waiting: '○', going: '◐', done: '✓', spoiled: '✕' }
const meanings: Record<PieceState, string> = {
  waiting: 'blank',
  going: 'begun',
  done: 'finished',
  spoiled: 'spoiled',
}

/** Every piece as its own silhouette, filled as far as it has come. Sends `piece-chosen` with its id. */
@customElement('rack-shelf')
export class RackShelf extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ol {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(5.25rem, 1fr));
        gap: var(--space-2);
      }
      button {
        width: 100%;
        height: 100%;
        justify-content: start;
        flex-direction: column;
        gap: var(--space-1);
        padding: var(--space-2) var(--space-1);
        font-weight: 500;
      }
      button[aria-pressed='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 0 0 0 2px var(--accent);
      }
      .spare {
        border-style: dashed;
      }
      svg {
        height: 8.5rem;
        width: 100%;
      }
      .ghost {
        fill: var(--ink);
        opacity: 0.13;
      }
      .outline {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1;
      }
      #part {
        vector-effect: non-scaling-stroke;
      }
      .struck {
        stroke: var(--under);
        stroke-width: 2.5;
        vector-effect: non-scaling-stroke;
      }
      .number {
        font-size: 1.25rem;
        font-weight: 700;
        line-height: 1;
      }
      .state {
        font-size: var(--size-small);
        line-height: 1.2;
        color: var(--ink-soft);
      }
      .done .state {
        color: var(--in);
        font-weight: 650;
      }
      .spoiled .state {
        color: var(--under);
        font-weight: 650;
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-4);
        margin-top: var(--space-3);
      }
      @media print {
        button {
          display: inline-flex !important;
        }
      }
    `,
  ]

  @property({ attribute: false }) pieces: readonly Piece[] = []
  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ attribute: false }) profile?: Profile
  @property() species = ''
  /** Left and right hands differ: each piece says which it is. */
  @property({ type: Boolean }) hands = false
  /** Id of the piece in hand. */
  @property() chosen = ''

  private choose(id: string): void {
    this.dispatchEvent(new CustomEvent('piece-chosen', { detail: { id } }))
  }

  /** Brings the piece in hand back into view. */
  showChosen(): void {
    const slot = this.renderRoot.querySelector<HTMLButtonElement>('[aria-pressed=true]')
    slot?.scrollIntoView({ block: 'center' })
    slot?.focus({ preventScroll: true })
  }

  override render() {
    if (!this.profile) return nothing
    const total = pieceOperations(this.operations).length
    return html`
      <svg width="0" height="0" class="hidden-label" aria-hidden="true"><defs><path id="part" d=${silhouetteOf(this.profile).path}></path></defs></svg>
      <ol class="plain" aria-label="Pieces on the rack">
        ${this.pieces.map((piece) => html`<li>${this.place(piece, total)}</li>`)}
      </ol>
      <p class="key small soft">
        ${(Object.keys(symbols) as PieceState[]).map((state) => html`<span>${symbols[state]} ${meanings[state]}</span>`)}
        <span>dashed frame: spare</span>
        ${this.hands ? html`<span>L left hand, as drawn</span><span>R right hand</span>` : nothing}
      </p>
    `
  }

  private place(piece: Piece, total: number): TemplateResult {
    const state = pieceState(piece)
    const done = Math.round(piece.progress * total)
    const word = state === 'spoiled' ? 'spoiled' : state === 'done' ? 'finished' : `${done}/${total}`
    const told =
      state === 'spoiled' ? `: ${piece.spoiled?.reason}` : state === 'done' ? '' : ' operations done'
    return html`<button
      type="button"
      class="${state} ${piece.spare ? 'spare' : ''}"
      aria-pressed=${piece.id === this.chosen}
      @click=${() => this.choose(piece.id)}
    >
      ${this.silhouette(piece)}
      <span class="number"><span class="hidden-label">Piece</span> ${piece.number}${this.hand(piece)}</span>
      <span class="state">
        <span aria-hidden="true">${symbols[state]}</span> ${word}<span class="hidden-label">${told}</span>
        ${piece.spare ? html`<br />spare` : nothing}
      </span>
    </button>`
  }

  private hand({ number }: Piece): TemplateResult | typeof nothing {
    if (!this.hands) return nothing
    const hand = handOf(number)
    return html` <span aria-hidden="true">${hand === 'left' ? 'L' : 'R'}</span><span class="hidden-label">, ${hand} hand</span>`
  }

  private silhouette({ progress, spoiled }: Piece): TemplateResult {
    const { half } = silhouetteOf(this.profile!)
    const [long, wide] = [SILHOUETTE_LENGTH, Math.max(half, 60)]
    const filled = long * progress
    return html`<svg viewBox="${-wide - 10} ${-long - 10} ${2 * wide + 20} ${long + 20}" aria-hidden="true">
      <g transform="matrix(0 -1 1 0 0 0)">
        <use href="#part" class="ghost"></use>
        ${filled > 0 && !spoiled ? this.filled(filled, half) : nothing}
        <use href="#part" class="outline"></use>
      </g>
      ${spoiled ? svg`<path class="struck" d="M${-wide} ${-0.72 * long}L${wide} ${-0.28 * long}M${wide} ${-0.72 * long}L${-wide} ${-0.28 * long}"></path>` : nothing}
    </svg>`
  }

  /** A nested drawing cuts the shape off where the piece has come to. */
  private filled(filled: number, half: number): SVGTemplateResult {
    return svg`<svg x="0" y=${-half} width=${filled} height=${2 * half} viewBox="0 ${-half} ${filled} ${2 * half}"><use href="#part" fill=${woodTone(this.species)}></use></svg>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-shelf': RackShelf
  }
}
