import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Step } from '../../shared/piece.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText, momentText } from '../time-text.ts'
import './ask-twice.ts'
import { rowLook } from './row-look.ts'

/** The steps logged on one piece, the latest first. Sends `step-taken-back` with the key. */
@customElement('rack-done')
export class RackDone extends LitElement {
  static override styles = [...pageWear, rowLook]

  @property({ attribute: false }) steps: readonly Step[] = []
  @property({ attribute: false }) operations: readonly Operation[] = []

  override render() {
    if (this.steps.length === 0) return html`<p class="soft">No step on this piece is stored yet.</p>`
    return html`<ul class="plain">${[...this.steps].reverse().map((step) => this.row(step))}</ul>`
  }

  private row({ key, operation, minutes, by, at }: Step): TemplateResult {
    const name = this.operations.find((o) => o.key === operation)?.name ?? operation
    return html`<li>
      <div>
        <p>${name}</p>
        <p class="small soft">${minutes === undefined ? nothing : html`${minutesText(minutes)}, `}${momentText(at)}${by ? html`, ${by}` : nothing}</p>
      </div>
      <ask-twice danger label="Take back" answer="Yes, take it back" question="“${name}” will be to do again on this piece. Take it back?"
        @confirmed=${() => this.dispatchEvent(new CustomEvent('step-taken-back', { detail: { key } }))}></ask-twice>
    </li>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-done': RackDone
  }
}
