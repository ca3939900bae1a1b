import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import type { Breach } from '../../shared/problem.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { type BoardEntry, type DefectEntry, type EntryField, quarterText, saidLength } from '../yard-entry.ts'
import './big-keypad.ts'
import './yard-stick.ts'

/** Rough thicknesses in quarters of an inch, as yards sell them. */
const QUARTERS = ['4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4']

/** Fetches the keys for defects: most boards are entered without. */
export const fetchDefects = (): Promise<unknown> => import('./yard-defects.ts')

/** What the keys below the fields do. */
type Keys = 'stick' | EntryField | 'defects'

const labels: Record<EntryField, string> = {
  width: 'Width',
  length: 'Length',
  thickness: 'Thick',
  price: 'Price',
  crook: 'Crook',
}

/**
 * One board, in as few presses as can be. Sends `entered` with the entry as it is now, `add` when it is whole,
 * `again` for one more like the last, `undo`, and `leave` to leave a board unchanged.
 */
@customElement('yard-board-entry')
export class YardBoardEntry extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .entry,
      .keys {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
      }
      .chips {
        display: grid;
        gap: 0.3125rem;
        grid-template-columns: repeat(4, minmax(0, 1fr));
      }
      .chips label {
        font-size: 0.75rem;
        white-space: nowrap;
      }
      .chips input {
        padding: 0;
        min-height: 3.25rem;
        font-size: 1.0625rem;
        font-weight: 700;
        text-align: center;
      }
      .chips input.on {
        border-color: var(--accent);
        border-width: 3px;
      }
      .chips input::placeholder {
        color: var(--ink-soft);
        font-weight: 500;
        opacity: 1;
      }
      .acts {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: 1fr 1fr 1fr;
      }
      .acts button {
        min-height: 3.25rem;
        padding: 0 var(--space-1);
        font-size: 0.9375rem;
        line-height: 1.1;
      }
      .add {
        min-height: 4.25rem;
        font-size: 1.375rem;
        line-height: 1.15;
      }
      /* As high as the kinds of defects, so that nothing moves when they come. */
      yard-defects:not(:defined) {
        display: block;
        min-height: 14.125rem;
      }
      .quarters {
        display: grid;
        gap: 0.3125rem;
        grid-template-columns: repeat(7, minmax(0, 1fr));
      }
      .quarters button,
      .two button {
        min-width: 0;
        min-height: 3.25rem;
        padding: 0 0.125rem;
        font-size: 0.9375rem;
      }
      .two {
        display: grid;
        gap: 0.3125rem;
        grid-template-columns: 1fr 1fr;
      }
      button[aria-pressed='true'],
      button[aria-pressed='true']:hover:not(:disabled) {
        background: var(--accent);
        border-color: var(--accent);
        color: var(--accent-ink);
      }
    `,
  ]

  @property({ attribute: false }) entry!: BoardEntry
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @property() currency = ''
  /** The number the board will have. */
  @property({ type: Number }) number = 1
  /** What the yard's list asks for it, where nothing is entered. */
  @property() listPrice = ''
  /** The last board in words; empty without one. */
  @property() last = ''
  /** What can be taken back; empty for nothing. */
  @property() undoable = ''
  @property({ attribute: false }) errors: readonly Breach[] = []
  /** What is wrong with the board itself. */
  @property() caution = ''
  @state() private keys: Keys = 'stick'
  /** Whether the keys for defects could not be fetched. */
  @state() private isAway = false

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('lengthStyle') && !this.hasStick && this.keys === 'stick') this.keys = 'width'
    const before = changed.get('entry')
    // A board that was added, changed or left leaves the keys at the beginning.
    if (changed.get('number') !== undefined || (before && before.mends !== this.entry.mends))
      this.keys = this.first
    const [wrong] = changed.has('errors') ? this.errors : []
    if (wrong) this.keys = this.keysFor(wrong.path)
    if (this.keys === 'defects') void this.fetchDefects()
  }

  private async fetchDefects(): Promise<void> {
    try {
      await fetchDefects()
      this.isAway = false
    } catch {
      this.isAway = true
    }
  }

  private get hasStick(): boolean {
    return this.lengthStyle !== 'mm'
  }

  private get unit(): string {
    return this.lengthStyle === 'mm' ? ', mm' : ', in'
  }

  private get first(): Keys {
    return this.hasStick ? 'stick' : 'width'
  }

  /** Where what is wrong is put right. */
  private keysFor(path: string): Keys {
    if (path === 'crook' || path.startsWith('defects')) return 'defects'
    if (this.hasStick && (path === 'width' || path === 'length')) return 'stick'
    return path as EntryField
  }

  private change(change: Partial<BoardEntry>): void {
    this.dispatchEvent(new CustomEvent('entered', { detail: { ...this.entry, ...change } }))
  }

  private write(field: EntryField, text: string): void {
    this.change({ [field]: text })
    // Boards are some hundreds of mm wide: the third figure ends the width.
    if (!this.hasStick && field === 'width' && this.keys === 'width' && /^\d{3}$/.test(text))
      this.keys = 'length'
  }

  private say(name: 'add' | 'again' | 'undo' | 'leave'): void {
    this.dispatchEvent(new CustomEvent(name))
  }

  override render() {
    const { entry } = this
    return html`<div class="entry">
      <div class="chips">${(['width', 'length', 'thickness', 'price'] as const).map((field) => this.chip(field))}</div>
      ${this.errors.map(({ message }) => html`<p class="error" role="alert">${message}</p>`)}
      ${this.caution ? html`<p class="caution" role="status">${this.caution}</p>` : nothing}
      <div class="keys">${this.keyRows()}</div>
      <div class="acts">
        <button type="button" aria-pressed=${this.keys === 'defects' ? 'true' : 'false'} @click=${() => this.show('defects')}>
          ${this.defectCount()}
        </button>
        ${
          entry.mends === undefined
            ? html`<button type="button" ?disabled=${!this.last} @click=${() => this.say('again')}>Same again</button>`
            : html`<button type="button" @click=${() => this.say('leave')}>Leave it as it was</button>`
        }
        <button type="button" ?disabled=${!this.undoable} @click=${() => this.say('undo')}>Undo${this.undoable ? html`<br />${this.undoable}` : nothing}</button>
      </div>
      <button type="button" class="main add" @click=${() => this.say('add')}>${this.addText()}</button>
    </div>`
  }

  private show(keys: Keys): void {
    this.keys = this.keys === keys ? this.first : keys
  }

  private defectCount(): string {
    const count = this.entry.defects.length + (this.entry.crook.trim() ? 1 : 0)
    return count === 0 ? 'Knot, split, crook…' : count === 1 ? '1 defect' : `${count} defects`
  }

  private addText(): string {
    const { width, length, mends } = this.entry
    const does = mends === undefined ? `Add board ${this.number}` : `Change board ${mends}`
    if (!width.trim() || !length.trim()) return does
    return `${does}: ${saidLength(width, this.lengthStyle)} × ${saidLength(length, this.lengthStyle)}`
  }

  /** The price there, or about to be keyed, is of the whole board; the yard's list always tells that of a board foot. */
  private get isWholePrice(): boolean {
    const { priceOf, price } = this.entry
    return priceOf === 'board' && (price.trim() !== '' || this.keys === 'price')
  }

  private get priceUnit(): string {
    return `${this.currency}/${this.isWholePrice ? 'board' : 'bd ft'}`
  }

  private chip(field: 'width' | 'length' | 'thickness' | 'price'): TemplateResult {
    const { entry } = this
    const unit = {
      width: this.unit,
      length: /[a-z]/.test(entry.length) || !entry.length ? '' : this.unit,
      thickness: this.unit,
      price: `, ${this.priceUnit}`,
    }[field]
    const isPrice = field === 'price'
    const listed = isPrice && !this.isWholePrice ? this.listPrice : ''
    const isWrong = this.errors.some((each) => each.path === field)
    return html`<div class="field">
      <label for=${field}>${isPrice ? this.priceUnit : labels[field] + unit}</label>
      <input id=${field} inputmode="none" autocomplete="off" spellcheck="false" class=${this.keys === field ? 'on' : ''}
        .value=${live(entry[field])} placeholder=${listed || '–'} aria-label=${isPrice ? labels.price + unit : nothing} aria-invalid=${isWrong ? 'true' : nothing}
        @click=${() => this.show(field)}
        @input=${(event: Event) => this.write(field, (event.target as HTMLInputElement).value)}
        @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && this.say('add')} />
    </div>`
  }

  private keyRows(): TemplateResult {
    const { entry, keys } = this
    switch (keys) {
      case 'stick':
        return html`<yard-stick .width=${entry.width} .length=${entry.length}
          @keyed=${(event: CustomEvent<{ field: EntryField; text: string }>) => this.write(event.detail.field, event.detail.text)}
          @other=${(event: CustomEvent<{ field: EntryField }>) => this.show(event.detail.field)}></yard-stick>`
      case 'defects':
        return html`<yard-defects .defects=${entry.defects} .crook=${entry.crook} .lengthStyle=${this.lengthStyle}
          @defects=${(event: CustomEvent<DefectEntry[]>) => this.change({ defects: event.detail })}
          @crook=${(event: CustomEvent<string>) => this.write('crook', event.detail)}
          @done=${() => this.show('defects')}>${this.isAway ? 'These keys cannot be fetched without a signal: leave them and press again where there is one.' : 'Fetching…'}</yard-defects>`
      default:
        return html`${keys === 'thickness' ? this.quarters() : nothing}${keys === 'price' ? this.priceOf() : nothing}
          <big-keypad name=${labels[keys]} .text=${this.keyedText(keys)} .lengthStyle=${keys === 'price' ? 'decimal' : this.lengthStyle}
            @keyed=${(event: CustomEvent<{ text: string }>) => this.write(keys, event.detail.text)}></big-keypad>
          <button type="button" @click=${() => this.onward(keys)}>${keys === 'width' ? 'Next: length' : 'Back to the board'}</button>`
    }
  }

  private onward(keys: EntryField): void {
    this.keys = keys === 'width' ? 'length' : this.first
  }

  /** What the keypad goes on from: words such as `8 ft` are begun anew. */
  private keyedText(field: EntryField): string {
    const text = this.entry[field]
    return /[a-z ]/i.test(text) ? '' : text
  }

  private quarters(): TemplateResult {
    return html`<div class="quarters" role="group" aria-label="Sold as">
      ${QUARTERS.map(
        (
          nominal,
        ) => html`<button type="button" aria-pressed=${this.entry.nominal === nominal ? 'true' : 'false'}
          @click=${() => this.change({ nominal, thickness: quarterText(nominal, this.lengthStyle) })}>${nominal}</button>`,
      )}
    </div>
    <p class="hint">Sold as; then key in what the board really measures.</p>`
  }

  private priceOf(): TemplateResult {
    const choice = (priceOf: BoardEntry['priceOf'], text: string) =>
      html`<button type="button" aria-pressed=${this.entry.priceOf === priceOf ? 'true' : 'false'} @click=${() => this.change({ priceOf })}>${text}</button>`
    return html`<div class="two" role="group" aria-label="Price of">
      ${choice('board-foot', `${this.currency} a board foot`)}${choice('board', `${this.currency} the whole board`)}
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-board-entry': YardBoardEntry
  }
}
