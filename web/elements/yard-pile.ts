import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { CutOrder } from '../../shared/cutting/board.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import type { PileAct } from '../yard-desk.ts'
import type { Choice } from '../yard-order.ts'
import { type PileRow, pileRows } from '../yard-pile-rows.ts'
import type { YardTally } from '../yard-tally.ts'

const marks = { keep: '✓ keep', back: '↩ put back', taken: '✓ taken', gone: 'went back', '': '' }

/** The boards as they lie, the top of the pile first. Sends `act` with the board's number and what to do. */
@customElement('yard-pile')
export class YardPile extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .row {
        display: grid;
        grid-template-columns: 3rem minmax(0, 1fr) auto;
        gap: 0 var(--space-2);
        align-items: center;
        width: 100%;
        min-height: 3.5rem;
        padding: var(--space-1) var(--space-2);
        border: 0;
        border-bottom: 1px solid var(--line);
        border-radius: 0;
        background: none;
        text-align: left;
        font-weight: 400;
      }
      .no {
        font-size: 1.75rem;
        font-weight: 750;
        text-align: center;
      }
      .size {
        font-weight: 650;
      }
      .what > span {
        display: block;
      }
      .mark.taken {
        color: var(--in);
        background: var(--in-wash);
      }
      .mark.back {
        color: var(--over);
        background: var(--over-wash);
        font-size: var(--size);
      }
      .mark.keep {
        color: var(--in);
        background: var(--in-wash);
        font-size: var(--size);
      }
      .gone {
        color: var(--ink-soft);
      }
      .acts {
        padding: var(--space-2);
        border-bottom: 1px solid var(--line);
        background: var(--well);
      }
    `,
  ]

  @property({ attribute: false }) tally!: YardTally
  @property({ attribute: false }) choice?: Choice | undefined
  /** What the boards are for; nothing where they are only counted. */
  @property({ attribute: false }) wanted?: CutOrder | undefined
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @state() private open?: number | undefined

  /** Nothing can be changed any more. */
  private get isClosed(): boolean {
    return this.tally.bought !== undefined
  }

  private act(number: number, act: PileAct): void {
    this.open = undefined
    this.dispatchEvent(new CustomEvent('act', { detail: { number, act } }))
  }

  override render() {
    const { choice, wanted, lengthStyle: style } = this
    const rows = pileRows(this.tally, { choice, wanted, style })
    return html`<ul class="plain">${rows.map((row) => html`<li>${this.row(row)}</li>`)}</ul>`
  }

  private row(row: PileRow): TemplateResult {
    const { number, fate } = row
    const isOpen = this.open === number && !this.isClosed
    return html`<button type="button" class="row ${fate === 'gone' ? 'gone' : ''}" ?disabled=${this.isClosed}
        aria-expanded=${this.isClosed ? nothing : isOpen ? 'true' : 'false'}
        @click=${() => {
          this.open = isOpen ? undefined : number
        }}>
        <span class="no">${number}</span>
        <span class="what">
          <span class="size">${row.size}</span>
          <span class="small soft">${row.worth}</span>
          ${row.defects.map((words) => html`<span class="small">${words}</span>`)}
          ${row.caution ? html`<span class="small error">${row.caution}</span>` : nothing}
        </span>
        ${fate ? html`<span class="mark ${fate}">${marks[fate]}</span>` : nothing}
      </button>
      ${isOpen ? this.acts(row) : nothing}`
  }

  private acts({ number, fate }: PileRow): TemplateResult {
    const button = (act: PileAct, text: string) =>
      html`<button type="button" @click=${() => this.act(number, act)}>${text}</button>`
    if (fate === 'gone')
      return html`<div class="buttons acts">${button('again', 'Pulled again')}${this.out(number)}</div>`
    return html`<div class="buttons acts">
      ${button('mend', 'Change it')}
      ${fate === 'taken' ? button('leave', 'Let the search decide') : button('take', 'Take it anyway')}
      ${this.out(number)}
    </div>`
  }

  private out(number: number): TemplateResult {
    return html`<button type="button" class="danger" @click=${() => this.act(number, 'out')}>Strike it out</button>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-pile': YardPile
  }
}
