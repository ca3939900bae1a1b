import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { MESSAGE_MOST } from '../../shared/cutting/yard-message.ts'
import { pageWear } from '../styles/all.ts'

/** A message to the yard: to be changed, copied, shared, or sent as a text. */
@customElement('lumber-message')
export class LumberMessage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      textarea {
        min-height: 9rem;
      }
      @media (max-width: 46rem) {
        textarea {
          min-height: 16rem;
        }
      }
    `,
  ]

  @property() text = ''
  /** Where there are several: which of them. */
  @property() name = 'Message to the yard'
  @state() private written = ''
  @state() private said = ''
  @query('textarea') private area!: HTMLTextAreaElement

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('text')) return
    this.written = this.text
    this.said = ''
  }

  private readonly copy = async () => {
    try {
      await navigator.clipboard.writeText(this.written)
      this.said = 'Copied.'
    } catch {
      // Over plain HTTP browsers give no way to the clipboard but the person's own.
      this.area.focus()
      this.area.select()
      this.said = 'Marked: copy it with the keys or the menu of your device.'
    }
  }

  private readonly share = async () => {
    try {
      await navigator.share({ text: this.written })
      this.said = 'Handed over.'
    } catch {
      this.said = ''
    }
  }

  private readonly change = (event: Event) => {
    this.written = (event.target as HTMLTextAreaElement).value
    this.said = ''
  }

  override render() {
    const over = this.written.length > MESSAGE_MOST
    return html`
      <div class="field">
        <label for="message">${this.name}</label>
        <textarea id="message" aria-describedby="count" .value=${this.written} @input=${this.change}></textarea>
        <p class="hint" id="count">
          ${this.written.length} of ${MESSAGE_MOST} characters${over ? ': it may be sent in more than two parts' : ''}
        </p>
      </div>
      <div class="buttons no-print">
        <button type="button" class="main" @click=${this.copy}>Copy</button>
        ${'share' in navigator ? html`<button type="button" @click=${this.share}>Share</button>` : nothing}
        <a class="button" href="sms:?&body=${encodeURIComponent(this.written)}">Text message</a>
        <span role="status">${this.said}</span>
      </div>
    `
  }
}
