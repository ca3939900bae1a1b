import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'
import { withEighth, withFeet, withInch, withInches } from '../yard-entry.ts'

/** Whole inches and feet that boards are mostly sold in. Common practice, no source. */
const INCHES = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]
const EIGHTHS = ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8']
const FEET = [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]
const REST = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]

/** Width and length of a board as on a tally stick, a press each. Sends `keyed` with the field and its text. */
@customElement('yard-stick')
export class YardStick extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .row {
        display: grid;
        grid-template-columns: repeat(7, minmax(0, 1fr));
        gap: 0.3125rem;
      }
      .rows {
        display: grid;
        gap: 0.3125rem;
      }
      .label {
        margin-top: var(--space-1);
      }
      button {
        min-width: 0;
        min-height: 3.25rem;
        padding: 0;
        font-size: 1.375rem;
        touch-action: manipulation;
      }
      .eighths button {
        font-size: 1.125rem;
        background: var(--well);
      }
      .row .other {
        font-size: 0.75rem;
        background: var(--well);
      }
      button[aria-pressed='true'],
      button[aria-pressed='true']:hover:not(:disabled) {
        background: var(--accent);
        border-color: var(--accent);
        color: var(--accent-ink);
      }
    `,
  ]

  @property() width = ''
  @property() length = ''
  @state() private inInches = false

  private tell(field: 'width' | 'length', text: string): void {
    this.dispatchEvent(new CustomEvent('keyed', { detail: { field, text } }))
  }

  private readonly eighth = (fraction: string) => this.tell('width', withEighth(this.width, fraction))

  private readonly rest = (inch: number) => {
    this.inInches = false
    this.tell('length', withInches(this.length, inch))
  }

  private key(text: string, name: string, isOn: boolean, press: () => void, look = ''): TemplateResult {
    return html`<button type="button" class=${look} aria-label=${name} aria-pressed=${isOn ? 'true' : 'false'} @click=${press}>${text}</button>`
  }

  override render() {
    const [whole, fraction] =
      this.width.includes('/') && !this.width.includes('-') ? ['', this.width] : this.width.split('-')
    return html`<div class="rows">
      <span class="label" id="width">Width, in</span>
      <div class="rows" role="group" aria-labelledby="width">
        <div class="row">
          ${INCHES.map((n) => this.key(String(n), `${n} in wide`, whole === String(n), () => this.tell('width', withInch(n))))}
          <button type="button" class="other" aria-label="Other width" @click=${() => this.other('width')}>other</button>
        </div>
        <div class="row eighths">
          ${EIGHTHS.map((part) => this.key(part, `and ${part} in wide`, fraction === part, () => this.eighth(part)))}
        </div>
      </div>
      <span class="label" id="length">${this.inInches ? 'Inches over the whole feet' : 'Length, ft'}</span>
      <div class="row" role="group" aria-labelledby="length">${this.inInches ? this.inchKeys() : this.feetKeys()}</div>
    </div>`
  }

  private other(field: 'width' | 'length'): void {
    this.dispatchEvent(new CustomEvent('other', { detail: { field } }))
  }

  private feetKeys() {
    const feet = /^\d+(?= ft)/.exec(this.length)?.[0]
    const inch = /ft (\d+) in$/.exec(this.length)?.[1]
    return html`${FEET.map((n) => this.key(String(n), `${n} ft long`, feet === String(n), () => this.tell('length', withFeet(n))))}
      ${this.key(
        inch ? `+${inch} in` : '+ in',
        '+ in, inches over the whole feet',
        inch !== undefined,
        () => {
          this.inInches = true
        },
        'other',
      )}`
  }

  private inchKeys() {
    const inch = /ft (\d+) in$/.exec(this.length)?.[1]
    return html`${REST.map((n) => this.key(String(n), `and ${n} in long`, inch === String(n), () => this.rest(n)))}
      <button type="button" class="other" aria-label="Other length" @click=${() => this.other('length')}>other</button>
      <span></span>
      <button type="button" class="other" aria-label="Back to feet" @click=${() => {
        this.inInches = false
      }}>ft</button>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-stick': YardStick
  }
}
