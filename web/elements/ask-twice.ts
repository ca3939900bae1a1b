import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/**
 * A button for what cannot be taken back: the first press asks, the second does. Sends `confirmed`.
 */
@customElement('ask-twice')
export class AskTwice extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .asking {
        display: grid;
        gap: var(--space-2);
        padding: var(--space-3);
        border: 1.5px solid var(--under);
        border-radius: var(--round);
      }
      button {
        min-height: var(--ask-height, 3.5rem);
      }
    `,
  ]

  /** What the button says, and what is asked before it is done. */
  @property() label = ''
  /** What it says where it is read out among others; the label when empty. */
  @property() named = ''
  @property() question = ''
  /** What the second button says. */
  @property() answer = 'Yes'
  @property({ type: Boolean }) disabled = false
  @property({ type: Boolean }) danger = false
  @state() private asking = false

  private ask(asking: boolean): void {
    this.asking = asking
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLButtonElement>(asking ? '.cancel' : 'button')?.focus(),
    )
  }

  private readonly confirm = () => {
    this.ask(false)
    this.dispatchEvent(new CustomEvent('confirmed'))
  }

  override render() {
    const look = this.danger ? 'danger' : ''
    if (!this.asking || this.disabled) {
      return html`<button type="button" class=${look} ?disabled=${this.disabled} aria-label=${this.named || nothing} @click=${() => this.ask(true)}>${this.label}</button>`
    }
    return html`<div class="asking" role="group" aria-label=${this.question}>
      <p role="alert">${this.question}</p>
      <div class="buttons">
        <button type="button" class=${look || 'main'} @click=${this.confirm}>${this.answer}</button>
        <button type="button" class="cancel" @click=${() => this.ask(false)}>No, leave it</button>
      </div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ask-twice': AskTwice
  }
}
