import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Limits } from '../../shared/matching/reading.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { differenceText, readingText, verdictNames, verdictSymbols, verdictWords } from './verdict-words.ts'

/** A reading that was just logged. Lengths mm. */
export interface Logged {
  /** `Piece 3, foot bead, sanded`. */
  where: string
  value: number
  limits: Limits & { fixed?: boolean }
  outOfRound?: number
  /** Whether the server has it. */
  state: 'sending' | 'stored' | 'waiting' | 'refused'
  why?: string
}

const states: Record<Logged['state'], string> = {
  sending: 'being stored…',
  stored: 'stored',
  waiting: 'kept on this device until the server answers',
  refused: 'refused by the server',
}

/** The verdict on the last reading, to be seen from the lathe. Sends `measure-again`. */
@customElement('verdict-panel')
export class VerdictPanel extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .panel {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: var(--space-1) var(--space-4);
        align-items: center;
        padding: var(--space-3) var(--space-4);
        border: 2px solid currentColor;
        border-radius: var(--round);
      }
      .in {
        color: var(--in);
        background: var(--in-wash);
      }
      .over {
        color: var(--over);
        background: var(--over-wash);
      }
      .under {
        color: var(--under);
        background: var(--under-wash);
      }
      .symbol {
        grid-row: span 2;
        font-size: 3.5rem;
        line-height: 1;
      }
      .word {
        font-size: 2.25rem;
        font-weight: 750;
        line-height: 1;
      }
      .lead {
        font-size: 1.25rem;
        font-weight: 650;
        line-height: 1.25;
      }
      .rest {
        grid-column: 1 / -1;
        color: var(--ink);
      }
      .rest p + p {
        margin-top: var(--space-1);
      }
    `,
  ]

  @property({ attribute: false }) logged?: Logged
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    if (!this.logged) return html`<p class="soft">The verdict on a reading stands here at once.</p>`
    const { where, value, limits, outOfRound, state, why } = this.logged
    const { verdict, lead, detail } = verdictWords(value, limits, this.lengthStyle)
    return html`<div class="panel ${verdict}" role="status">
      <span class="symbol" aria-hidden="true">${verdictSymbols[verdict]}</span>
      <span class="word">${verdictNames[verdict]}</span>
      <span class="lead">${lead}</span>
      <div class="rest">
        <p>${where}: <strong>${readingText(value, this.lengthStyle)}</strong>; ${detail}.</p>
        ${outOfRound === undefined ? nothing : html`<p>Out of round by ${differenceText(outOfRound, this.lengthStyle)}.</p>`}
        <p class="small">${states[state]}${state === 'refused' && why ? `: ${why}` : ''}</p>
        <p><button type="button" @click=${() => this.dispatchEvent(new CustomEvent('measure-again'))}>Measure it again</button></p>
      </div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-panel': VerdictPanel
  }
}
