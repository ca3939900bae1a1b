import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { handOf, type Piece } from '../../shared/piece.ts'
import { pageWear } from '../styles/all.ts'
import './big-keypad.ts'

/** Chooses the piece in hand by its number: one up, one down, or by the number pad. Sends `piece-chosen` with its id. */
@customElement('verdict-piece')
export class VerdictPiece extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .row {
        display: grid;
        grid-template-columns: 4.5rem minmax(0, 1fr) 4.5rem;
        gap: var(--space-2);
      }
      .row button {
        min-height: 4.5rem;
        font-size: 1.75rem;
      }
      .row .piece {
        flex-direction: column;
        gap: 0;
        font-size: 1.5rem;
        line-height: 1.1;
      }
      .row .small {
        font-weight: 400;
        color: var(--ink-soft);
      }
      .pad {
        display: grid;
        gap: var(--space-2);
        margin-top: var(--space-2);
      }
      input {
        font-size: 1.75rem;
        text-align: center;
      }
    `,
  ]

  /** Pieces that are not spoiled, by number. */
  @property({ attribute: false }) pieces: readonly Piece[] = []
  /** Left and right hands differ. */
  @property({ type: Boolean }) hands = false
  @property() chosen = ''
  @state() private open = false
  @state() private text = ''

  private tell(piece: Piece | undefined): void {
    if (!piece) return
    this.open = false
    this.text = ''
    this.dispatchEvent(new CustomEvent('piece-chosen', { detail: { id: piece.id } }))
  }

  private readonly accept = () =>
    this.tell(this.pieces.find(({ number }) => String(number) === this.text.trim()))

  private toggle(): void {
    this.open = !this.open
    if (this.open) void this.updateComplete.then(() => this.renderRoot.querySelector('input')?.focus())
  }

  override render() {
    const at = this.pieces.findIndex(({ id }) => id === this.chosen)
    const piece = this.pieces[at]
    return html`
      <div class="row" role="group" aria-label="Piece in hand">
        <button type="button" aria-label="Piece before" ?disabled=${at <= 0} @click=${() => this.tell(this.pieces[at - 1])}>‹</button>
        <button type="button" class="piece" aria-expanded=${this.open} @click=${() => this.toggle()}>
          <span>${piece ? `Piece ${piece.number}` : 'Choose a piece'}</span>
          <span class="small">${piece && this.hands ? `${handOf(piece.number)} hand, ` : ''}${piece?.spare ? 'spare, ' : ''}another by number</span>
        </button>
        <button type="button" aria-label="Piece after" ?disabled=${at >= this.pieces.length - 1} @click=${() => this.tell(this.pieces[at + 1])}>›</button>
      </div>
      ${this.open ? this.pad() : nothing}
    `
  }

  private pad() {
    const known = this.pieces.some(({ number }) => String(number) === this.text.trim())
    const wrong = this.text.trim() !== '' && !known
    const last = this.pieces.at(-1)?.number ?? 0
    return html`<div class="pad card">
      <div class="field">
        <label for="number">Number of the piece</label>
        <input id="number" inputmode="none" autocomplete="off" .value=${this.text} aria-invalid=${wrong ? 'true' : nothing}
          @input=${(event: Event) => {
            this.text = (event.target as HTMLInputElement).value
          }}
          @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && this.accept()} />
        ${wrong ? html`<p class="error">No piece ${this.text} that is not spoiled; the numbers go up to ${last}.</p>` : nothing}
      </div>
      <big-keypad name="Piece" .lengthStyle=${'whole'} .text=${this.text} @keyed=${(
        event: CustomEvent<{ text: string }>,
      ) => {
        this.text = event.detail.text
      }}></big-keypad>
      <button type="button" class="main" ?disabled=${!known} @click=${this.accept}>Take this piece</button>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-piece': VerdictPiece
  }
}
