import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { keyName, keypadRows, pressed } from './big-keypad-text.ts'

/** Keys large enough for a dusty thumb. Sends `keyed` with the text as it is now. */
@customElement('big-keypad')
export class BigKeypad extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .keys {
        display: grid;
        grid-template-columns: repeat(4, 1fr);
        gap: var(--space-2);
      }
      button {
        min-height: 3.75rem;
        padding: 0;
        font-size: 1.5rem;
        touch-action: manipulation;
      }
      .fraction {
        font-size: 1.25rem;
        background: var(--well);
      }
      .wide {
        grid-column: span 2;
      }
    `,
  ]

  @property() text = ''
  @property({ attribute: false }) lengthStyle: LengthStyle | 'whole' = 'fraction'
  @property() name = 'Reading'

  private press(key: string): void {
    const text = pressed(this.text, key, this.lengthStyle)
    this.dispatchEvent(new CustomEvent('keyed', { detail: { text } }))
  }

  override render() {
    return html`<div class="keys" role="group" aria-label="${this.name}, keys">
      ${keypadRows(this.lengthStyle).map((row) =>
        row.map(
          (
            key,
          ) => html`<button type="button" class="${key.includes('/') ? 'fraction' : ''} ${row.length === 2 ? 'wide' : ''}"
            aria-label=${keyName(key)} @click=${() => this.press(key)}>${key.replace('-', '−')}</button>`,
        ),
      )}
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'big-keypad': BigKeypad
  }
}
