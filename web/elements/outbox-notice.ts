import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'

/** One thing that waits, in words. */
export interface WaitingLine {
  key: string
  text: string
  /** Why the server will not store it. */
  refused?: string
}

/** What was logged but is not stored yet. Sends `send-now` and `take-out` with the key. */
@customElement('outbox-notice')
export class OutboxNotice extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      li {
        display: grid;
        gap: var(--space-1);
        padding: var(--space-1) 0;
      }
    `,
  ]

  @property({ attribute: false }) lines: readonly WaitingLine[] = []
  /** False when this device has no room to keep them. */
  @property({ type: Boolean }) keeps = true

  override render() {
    if (this.lines.length === 0) return nothing
    const waiting = this.lines.filter(({ refused }) => refused === undefined)
    const refused = this.lines.filter((line) => line.refused !== undefined)
    return html`<section class="card" role="status" aria-label="Not stored yet">
      ${waiting.length === 0 ? nothing : this.waiting(waiting)}
      ${refused.length === 0 ? nothing : html`<h2>The server refused</h2><ul class="plain">${refused.map((line) => this.refused(line))}</ul>`}
    </section>`
  }

  private waiting(lines: readonly WaitingLine[]): TemplateResult {
    const kept = this.keeps
      ? 'kept on this device and sent as soon as the server answers'
      : 'this device has no room to keep it: leave this page open'
    return html`<h2>${lines.length === 1 ? 'One entry waits' : `${lines.length} entries wait`}</h2>
      <p>Nothing is lost: ${kept}.</p>
      <ul class="plain small">${lines.slice(0, 8).map(({ text }) => html`<li>${text}</li>`)}${lines.length > 8 ? html`<li>and ${lines.length - 8} more</li>` : nothing}</ul>
      <p><button type="button" @click=${() => this.dispatchEvent(new CustomEvent('send-now'))}>Send now</button></p>`
  }

  private refused({ key, text, refused }: WaitingLine): TemplateResult {
    return html`<li>
      <span>${text}</span>
      <span class="error">${refused}</span>
      <ask-twice danger label="Take it out" answer="Yes, take it out" question="It was not stored and will be gone. Take it out?"
        @confirmed=${() => this.dispatchEvent(new CustomEvent('take-out', { detail: { key } }))}></ask-twice>
    </li>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'outbox-notice': OutboxNotice
  }
}
