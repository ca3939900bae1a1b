import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { defectKinds } from '../../shared/cutting/stock-board.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { type DefectEntry, freshDefect, placesAsked, type Reach } from '../yard-entry.ts'
import { enteredDefectWords } from '../yard-words.ts'
import './big-keypad.ts'

const along: Record<Reach, string> = {
  whole: 'whole length',
  first: 'butt end',
  last: 'far end',
  between: 'from – to',
}
const across: Record<Reach, string> = {
  whole: 'whole width',
  first: 'near edge',
  last: 'far edge',
  between: 'from – to',
}
const REACHES: Reach[] = ['whole', 'first', 'last', 'between']

/** What each place of a defect is called, by what its reach is: two words, for two lines. */
function placeName(place: number, { along: long, across: wide }: DefectEntry): [string, string] {
  const isAlong = place < 2
  if ((isAlong ? long : wide) !== 'between') return ['How', isAlong ? 'long' : 'wide']
  return [isAlong ? 'Along' : 'Across', place % 2 === 0 ? 'from' : 'to']
}

/**
 * Knots, splits, sap, pith and crook of the board being entered. Sends `defects` with all of them, `crook` with its
 * text, `done` to go back to the board.
 */
@customElement('yard-defects')
export class YardDefects extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .defects {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
      }
      .four {
        display: grid;
        gap: 0.3125rem;
        grid-template-columns: repeat(4, minmax(0, 1fr));
      }
      .five {
        grid-template-columns: repeat(3, minmax(0, 1fr));
      }
      button {
        min-width: 0;
        min-height: 3.25rem;
        padding: 0 0.125rem;
        line-height: 1.1;
      }
      button[aria-pressed='true'],
      button[aria-pressed='true']:hover:not(:disabled) {
        background: var(--accent);
        border-color: var(--accent);
        color: var(--accent-ink);
      }
      input {
        min-height: 3.25rem;
        font-size: 1.25rem;
        font-weight: 700;
        text-align: center;
      }
      input.on {
        border-color: var(--accent);
        border-width: 3px;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2);
        align-items: center;
      }
    `,
  ]

  @property({ attribute: false }) defects: readonly DefectEntry[] = []
  @property() crook = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** The defect being entered; `crook`, or nothing while one is chosen. */
  @state() private at?: number | 'crook' | undefined
  /** The place of it the keys write to. */
  @state() private place?: number | undefined

  private get unit(): string {
    return this.lengthStyle === 'mm' ? 'mm' : 'in'
  }

  private tell(defects: DefectEntry[]): void {
    this.dispatchEvent(new CustomEvent('defects', { detail: defects }))
  }

  private change(index: number, change: Partial<DefectEntry>): void {
    this.tell(this.defects.map((defect, i) => (i === index ? { ...defect, ...change } : defect)))
  }

  private write(index: number, place: number, text: string): void {
    const { at } = this.defects[index]!
    this.change(index, { at: at.map((old, i) => (i === place ? text : old)) as DefectEntry['at'] })
  }

  private begin(kind: (typeof defectKinds)[number]): void {
    const fresh = freshDefect(kind)
    this.at = this.defects.length
    this.place = placesAsked(fresh)[0]
    this.tell([...this.defects, fresh])
  }

  override render() {
    const { at } = this
    if (at === 'crook') return this.crookKeys()
    const defect = at === undefined ? undefined : this.defects[at]
    return html`<div class="defects">${defect ? this.one(defect, at as number) : this.kinds()}</div>`
  }

  private kinds(): TemplateResult {
    return html`
      ${
        this.defects.length === 0
          ? nothing
          : html`<ul class="plain">${this.defects.map(
              (defect, i) => html`<li>
                <button type="button" @click=${() => this.open(i)}>${enteredDefectWords(defect, this.unit)}</button>
                <button type="button" class="danger" aria-label="Take out the ${defect.kind}" @click=${() => this.tell(this.defects.filter((_, j) => j !== i))}>Take out</button>
              </li>`,
            )}</ul>`
      }
      <div class="four five" role="group" aria-label="What is on the board">
        ${defectKinds.map((kind) => html`<button type="button" @click=${() => this.begin(kind)}>${kind}</button>`)}
        <button type="button" @click=${() => {
          this.at = 'crook'
        }}>crook${this.crook.trim() ? `: ${this.crook} ${this.unit}` : ''}</button>
      </div>
      <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('done'))}>Back to the board</button>`
  }

  private open(index: number): void {
    this.at = index
    this.place = placesAsked(this.defects[index]!)[0]
  }

  private readonly close = () => {
    this.at = undefined
  }

  private one(defect: DefectEntry, index: number): TemplateResult {
    const asked = placesAsked(defect)
    const place = asked.includes(this.place ?? -1) ? this.place! : asked[0]
    return html`
      <p class="label">Where the ${defect.kind} lies along the board, from the butt end</p>
      ${this.reaches('along', along, defect, index)}
      <p class="label">and across it, from the near edge</p>
      ${this.reaches('across', across, defect, index)}
      <div class="four">
        ${asked.map((each) => {
          const [way, end] = placeName(each, defect)
          return html`<div class="field">
            <label for="place-${each}">${way} <br />${end}, ${this.unit}</label>
            <input id="place-${each}" inputmode="none" autocomplete="off" class=${each === place ? 'on' : ''} .value=${live(defect.at[each]!)}
              @focus=${() => {
                this.place = each
              }}
              @input=${(event: Event) => this.write(index, each, (event.target as HTMLInputElement).value)} />
          </div>`
        })}
      </div>
      ${
        place === undefined
          ? nothing
          : html`<big-keypad name=${placeName(place, defect).join(' ')} .text=${defect.at[place]!} .lengthStyle=${this.lengthStyle}
              @keyed=${(event: CustomEvent<{ text: string }>) => this.write(index, place, event.detail.text)}></big-keypad>`
      }
      ${this.onward(asked, place)}`
  }

  /** The next place to key in, or the end of this defect. */
  private onward(asked: number[], place: number | undefined): TemplateResult {
    const next = place === undefined ? undefined : asked[asked.indexOf(place) + 1]
    return next === undefined
      ? html`<button type="button" @click=${this.close}>Done with this one</button>`
      : html`<button type="button" @click=${() => {
          this.place = next
        }}>Next</button>`
  }

  private reaches(
    way: 'along' | 'across',
    names: Record<Reach, string>,
    defect: DefectEntry,
    index: number,
  ): TemplateResult {
    return html`<div class="four" role="group" aria-label=${way}>
      ${REACHES.map(
        (reach) => html`<button type="button" aria-pressed=${defect[way] === reach ? 'true' : 'false'}
          @click=${() => this.change(index, { [way]: reach })}>${names[reach]}</button>`,
      )}
    </div>`
  }

  private crookKeys(): TemplateResult {
    const write = (text: string) => this.dispatchEvent(new CustomEvent('crook', { detail: text }))
    return html`<div class="defects">
      <label for="crook">Crook: how far the edge bends from a straight line over the whole length, ${this.unit}</label>
      <input id="crook" class="on" inputmode="none" autocomplete="off" .value=${live(this.crook)}
        @input=${(event: Event) => write((event.target as HTMLInputElement).value)} />
      <big-keypad name="Crook" .text=${this.crook} .lengthStyle=${this.lengthStyle}
        @keyed=${(event: CustomEvent<{ text: string }>) => write(event.detail.text)}></big-keypad>
      <button type="button" @click=${this.close}>Done with the crook</button>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-defects': YardDefects
  }
}
