import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Limits } from '../../shared/matching/reading.ts'
import { verdictOf } from '../../shared/matching/reading.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { limitsText, verdictNames, verdictSymbols } from './verdict-words.ts'

/** A place to be read, with the limits of the stage at hand. Lengths mm. */
export interface StationToRead {
  key: string
  name: string
  at: number
  kind: 'diameter' | 'side'
  limits: Limits
  /** Never brought down: it has to fit something. */
  fixed: boolean
  /** The reading the piece in hand has there already. */
  value?: number
  caution?: string
}

/** The places of a piece to be read, each with its target. Sends `station-chosen` with the key. */
@customElement('verdict-stations')
export class VerdictStations extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ol {
        display: grid;
        gap: var(--space-2);
      }
      button {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        width: 100%;
        padding: var(--space-2) var(--space-3);
        text-align: left;
        font-weight: 500;
      }
      button[aria-pressed='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 0 0 0 2px var(--accent);
      }
      .name {
        font-weight: 650;
      }
      .target {
        font-size: 1.375rem;
        font-weight: 700;
        line-height: 1.1;
        text-align: right;
        white-space: nowrap;
      }
      .small {
        color: var(--ink-soft);
      }
      .limits {
        text-align: right;
        white-space: nowrap;
      }
    `,
  ]

  @property({ attribute: false }) stations: readonly StationToRead[] = []
  @property() chosen = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    return html`<ol class="plain" aria-label="Stations to check">
      ${this.stations.map((station) => html`<li>${this.row(station)}</li>`)}
    </ol>`
  }

  private row(station: StationToRead): TemplateResult {
    const { key, name, at, kind, limits, fixed, value, caution } = station
    const verdict = value === undefined ? undefined : verdictOf(value, limits)
    return html`<button type="button" aria-pressed=${key === this.chosen} @click=${() => this.dispatchEvent(new CustomEvent('station-chosen', { detail: { key } }))}>
        <span class="name">${name}${verdict ? html` <span class="mark ${verdict}">${verdictSymbols[verdict]} ${verdictNames[verdict]}</span>` : nothing}</span>
        <span class="target">${kind === 'side' ? '□' : 'Ø'} ${lengthText(limits.target, this.lengthStyle)}</span>
        <span class="small">${lengthText(at, this.lengthStyle)} from the foot${fixed ? '; fixed' : ''}</span>
        <span class="small limits">${limitsText(limits, this.lengthStyle)}</span>
      </button>
      ${caution ? html`<p class="caution small">${caution}</p>` : nothing}`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'verdict-stations': VerdictStations
  }
}
