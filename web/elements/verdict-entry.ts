import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { type LengthStyle, lengthText, readLength } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import './big-keypad.ts'
import type { StationToRead } from './verdict-stations.ts'
import { commonStyle, isUnlikely, limitsText, readingText } from './verdict-words.ts'

/** Takes one reading, or two at 90° to each other. Sends `reading-taken` with the values in mm. */
@customElement('verdict-entry')
export class VerdictEntry extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .entry {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
      }
      .target {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        align-items: center;
        line-height: 1.25;
      }
      .target strong {
        grid-row: span 2;
        grid-column: 2;
        font-size: 1.625rem;
        white-space: nowrap;
      }
      .target .soft {
        font-size: var(--size-small);
      }
      .reading {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2);
        align-items: center;
      }
      .reading input {
        min-height: 3.75rem;
        font-size: 2.25rem;
        font-weight: 700;
        text-align: right;
      }
      .reading span {
        font-size: 1.5rem;
        color: var(--ink-soft);
      }
      .send {
        display: grid;
        grid-template-columns: 1fr 1.6fr;
        gap: var(--space-2);
      }
      .send button {
        min-height: 4rem;
        padding: 0 var(--space-2);
        font-size: 1.125rem;
        line-height: 1.15;
      }
      /* It takes the place of the keys, so that it is where the eye and the thumb are. */
      .doubt {
        display: grid;
        gap: var(--space-3);
        align-content: center;
        min-height: 15.125rem;
        padding: var(--space-3);
        border: 2px solid var(--over);
        border-radius: var(--round);
      }
      .doubt p {
        font-size: var(--size-large);
      }
      .doubt .buttons {
        display: grid;
        grid-template-columns: 1fr 1fr;
      }
      @media (max-width: 30rem) {
        .reading input {
          min-height: 3.5rem;
          font-size: 1.875rem;
        }
        .send button {
          min-height: 3.5rem;
        }
      }
    `,
  ]

  @property({ attribute: false }) station?: StationToRead
  /** What is being read, for the label: `Piece 3, foot bead`. */
  @property() where = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @state() private text = ''
  /** The diameter read first, mm, while the second is taken. */
  @state() private first?: number
  @state() private fault = ''
  @state() private doubted?: number[]
  @query('#reading') private field?: HTMLInputElement

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('where') && changed.get('where') !== undefined) this.clear()
    if (changed.has('lengthStyle')) this.text = ''
  }

  private clear(): void {
    this.text = ''
    this.first = undefined
    this.fault = ''
    this.doubted = undefined
  }

  override connectedCallback(): void {
    super.connectedCallback()
    addEventListener('keydown', this.typed)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('keydown', this.typed)
  }

  /** A figure typed while nothing else takes text goes to the reading. */
  private readonly typed = (event: KeyboardEvent) => {
    if (!/^[\d.,]$/.test(event.key) || event.altKey || event.ctrlKey || event.metaKey) return
    const writing = event
      .composedPath()
      .some((node) => node instanceof HTMLElement && node.matches('input, select, textarea'))
    if (!writing) this.takeFocus()
  }

  /** Puts the cursor where the next figure goes. */
  takeFocus(): void {
    this.field?.focus({ preventScroll: true })
  }

  private get unit(): 'in' | 'mm' {
    return this.lengthStyle === 'mm' ? 'mm' : 'in'
  }

  private read(): number | undefined {
    const mm = readLength(this.text, this.unit)
    if (mm !== undefined && mm > 0) return mm
    const forms = this.unit === 'mm' ? '44.5 or 44,5' : '1 3/4, 1-3/4 or 1.75'
    this.fault =
      this.text.trim() === ''
        ? `Key in the reading first, such as ${forms}.`
        : `“${this.text}” is no length above 0; write it like ${forms}.`
    return undefined
  }

  private readonly second = () => {
    const mm = this.read()
    if (mm === undefined) return
    this.first = mm
    this.text = ''
    this.fault = ''
    this.takeFocus()
  }

  private readonly log = () => {
    const mm = this.read()
    if (mm === undefined || !this.station) return
    const values = this.first === undefined ? [mm] : [this.first, mm]
    if (values.some((value) => isUnlikely(value, this.station!.limits.target))) this.doubted = values
    else this.tell(values)
  }

  private tell(values: number[]): void {
    this.clear()
    this.dispatchEvent(new CustomEvent('reading-taken', { detail: { values } }))
  }

  override render() {
    const { station } = this
    if (!station) return html`<p class="soft">Choose a station to read.</p>`
    const { limits } = station
    return html`<div class="entry">
      <div class="target">
        <strong>${station.kind === 'side' ? '□' : 'Ø'} ${lengthText(limits.target, this.lengthStyle)}</strong>
        <span>${this.where}: target</span>
        <span class="soft">in from ${limitsText(limits, this.lengthStyle)}</span>
      </div>
      <div class="field">
        <label for="reading">${this.first === undefined ? 'Reading' : `Second reading, a quarter turn on (first: ${readingText(this.first, this.lengthStyle)})`}</label>
        <div class="reading">
          <input id="reading" inputmode="none" autocomplete="off" spellcheck="false" .value=${this.text} aria-invalid=${this.fault ? 'true' : nothing}
            aria-describedby=${this.fault ? 'fault' : nothing}
            @input=${(event: Event) => this.write((event.target as HTMLInputElement).value)}
            @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && this.log()} />
          <span>${this.unit}</span>
        </div>
        ${this.fault ? html`<p class="error" id="fault" role="alert">${this.fault}</p>` : nothing}
      </div>
      ${
        this.doubted
          ? this.doubt(this.doubted, limits.target)
          : html`<big-keypad .lengthStyle=${this.lengthStyle} .text=${this.text} @keyed=${(event: CustomEvent<{ text: string }>) => this.write(event.detail.text)}></big-keypad>`
      }
      <div class="send">
        ${
          this.first === undefined
            ? html`<button type="button" @click=${this.second}>+ 2nd at 90°</button>`
            : html`<button type="button" @click=${() => {
                this.first = undefined
              }}>Drop the first</button>`
        }
        <button type="button" class="main" @click=${this.log}>Log the reading</button>
      </div>
    </div>`
  }

  private write(text: string): void {
    this.text = text
    this.fault = ''
    this.doubted = undefined
  }

  private doubt(values: number[], target: number): TemplateResult {
    const style = commonStyle(this.lengthStyle, target, ...values)
    return html`<div class="doubt" role="alert">
      <p>Read ${values.map((value) => readingText(value, style)).join(' and ')} where ${readingText(target, style)} is wanted: is that right?</p>
      <div class="buttons">
        <button type="button" @click=${() => this.tell(values)}>Yes, log it</button>
        <button type="button" @click=${() => {
          this.doubted = undefined
          this.takeFocus()
        }}>No, mend it</button>
      </div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-entry': VerdictEntry
  }
}
