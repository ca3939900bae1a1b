import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { StoredReading } from '../../shared/piece.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { momentText } from '../time-text.ts'
import './ask-twice.ts'
import { rowLook } from './row-look.ts'
import { readingText, verdictNames, verdictSymbols } from './verdict-words.ts'

/** The readings stored of one piece, the latest first. Sends `reading-taken-back` with the key. */
@customElement('check-readings')
export class CheckReadings extends LitElement {
  static override styles = [...pageWear, rowLook]

  @property({ attribute: false }) readings: readonly StoredReading[] = []
  @property({ attribute: false }) names: Readonly<Record<string, string>> = {}
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    if (this.readings.length === 0) return html`<p class="soft">No reading of this piece is stored yet.</p>`
    return html`<ul class="plain">${[...this.readings].reverse().map((reading) => this.row(reading))}</ul>`
  }

  private row({ key, station, stage, value, verdict, by, at }: StoredReading): TemplateResult {
    const name = this.names[station] ?? station
    const read = readingText(value, this.lengthStyle)
    return html`<li>
      <div>
        <p><strong>${read}</strong> <span class="mark ${verdict}">${verdictSymbols[verdict]} ${verdictNames[verdict]}</span></p>
        <p>${name}, ${stage}</p>
        <p class="small soft">${momentText(at)}${by ? html`, ${by}` : nothing}</p>
      </div>
      <ask-twice danger label="Take back" answer="Yes, take it back" question="The reading of ${read} at ${name}, ${stage}, leaves the set. Take it back?"
        @confirmed=${() => this.dispatchEvent(new CustomEvent('reading-taken-back', { detail: { key } }))}></ask-twice>
    </li>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'check-readings': CheckReadings
  }
}
