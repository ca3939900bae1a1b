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
        grid-template-columns: repeat(4, minmax(0, 1fr));
        gap: 0.375rem;
      }
      .five {
        grid-template-columns: repeat(5, minmax(0, 1fr));
      }
      button {
        min-height: 3.5rem;
        min-width: 0;
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
    const rows = keypadRows(this.lengthStyle)
    return html`<div class="keys ${rows[0]?.length === 5 ? 'five' : ''}" role="group" aria-label="${this.name}, keys">
      ${rows.map((row) =>
        row.map(
          (
            key,
          ) => html`<button type="button" class="${/[/-]/.test(key) ? 'fraction' : ''} ${row.length === 2 ? 'wide' : ''}"
            aria-label=${keyName(key)} @click=${() => this.press(key)}>${key === '-' ? 'in –' : key}</button>`,
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
