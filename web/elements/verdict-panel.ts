import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Limits } from '../../shared/matching/reading.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import {
  commonStyle,
  differenceText,
  readingText,
  verdictNames,
  verdictSymbols,
  verdictWords,
} from './verdict-words.ts'

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
      .panel,
      .none {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        align-items: center;
        align-content: center;
        min-height: 7.5rem;
        padding: var(--space-2) var(--space-3);
        border: 2px solid currentColor;
        border-radius: var(--round);
      }
      .none {
        grid-template-columns: minmax(0, 1fr);
        border-style: dashed;
        border-color: var(--line);
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
        font-size: 2.75rem;
        line-height: 1;
      }
      .word {
        font-size: 1.75rem;
        font-weight: 750;
        line-height: 1;
      }
      .lead {
        font-size: 1.0625rem;
        font-weight: 650;
        line-height: 1.2;
      }
      .panel button {
        grid-row: span 2;
        grid-column: 3;
      }
      .rest {
        grid-column: 1 / -1;
        color: var(--ink);
        font-size: var(--size-small);
        line-height: 1.3;
      }
      @media (max-width: 30rem) {
        .panel,
        .none {
          min-height: 6.75rem;
          padding: var(--space-1) var(--space-2);
        }
        .symbol {
          font-size: 2rem;
        }
        .word {
          font-size: 1.375rem;
        }
        .lead {
          font-size: 0.9375rem;
        }
        .panel button {
          padding: 0 var(--space-2);
        }
        .rest {
          font-size: 0.8125rem;
          line-height: 1.25;
        }
      }
    `,
  ]

  @property({ attribute: false }) logged?: Logged
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    return html`<div aria-live="polite">${this.logged ? this.verdict(this.logged) : html`<div class="none"><p class="soft">The verdict on a reading stands here at once.</p></div>`}</div>`
  }

  private verdict({ where, value, limits, outOfRound, state, why }: Logged): TemplateResult {
    const style = commonStyle(this.lengthStyle, value)
    const { verdict, lead, detail } = verdictWords(value, limits, style)
    return html`<div class="panel ${verdict}">
      <span class="symbol" aria-hidden="true">${verdictSymbols[verdict]}</span>
      <span class="word">${verdictNames[verdict]}</span>
      <button type="button" aria-label="Measure it again" @click=${() => this.dispatchEvent(new CustomEvent('measure-again'))}>Again</button>
      <span class="lead">${lead}</span>
      <div class="rest">
        <p>${where}: <strong>${readingText(value, style)}</strong>; ${detail}.${outOfRound === undefined ? nothing : ` Out of round by ${differenceText(outOfRound, style)}.`}
          <span class="soft">${states[state]}${state === 'refused' && why ? `: ${why}` : ''}</span></p>
      </div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-panel': VerdictPanel
  }
}
