import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { pageWear } from '../styles/all.ts'

/** Save, by Ctrl+S too, and how things stand, always in reach. Sends `save` and `discard`. */
@customElement('save-bar')
export class SaveBar extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        position: sticky;
        bottom: 0;
        z-index: 1;
        margin: 0 calc(-1 * var(--space-4));
        padding: var(--space-2) var(--space-4);
        background: var(--sheet);
        border-top: 2px solid var(--line);
      }
      .bar {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        align-items: center;
      }
      p {
        flex: 1 1 8rem;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ]

  @property({ type: Number }) errors = 0
  @property({ type: Boolean }) saved = true
  @property({ type: Boolean }) saving = false
  @property() message = ''
  /** Nothing is stored yet: there is nothing to go back to. */
  @property({ type: Boolean }) fresh = false
  @property() what = 'the job'

  override connectedCallback() {
    super.connectedCallback()
    document.documentElement.classList.add('with-save-bar')
    addEventListener('keydown', this.pressed)
  }

  override disconnectedCallback() {
    document.documentElement.classList.remove('with-save-bar')
    removeEventListener('keydown', this.pressed)
    super.disconnectedCallback()
  }

  private readonly pressed = (event: KeyboardEvent) => {
    if (
      !(event.ctrlKey || event.metaKey) ||
      event.altKey ||
      event.shiftKey ||
      event.key.toLowerCase() !== 's'
    )
      return
    event.preventDefault()
    if (!this.saving && !this.saved) this.tell('save')
  }

  private tell(name: 'save' | 'discard') {
    this.dispatchEvent(new CustomEvent(name))
  }

  private state() {
    if (this.saving) return 'Saving…'
    const errors =
      this.errors === 0 ? '' : ` ${this.errors} ${this.errors === 1 ? 'entry' : 'entries'} to put right.`
    if (this.message) return this.message + errors
    if (this.saved) return errors.trim() || 'Everything is saved.'
    return `Unsaved edits, kept on this device.${errors}`
  }

  override render() {
    return html`
      <div class="bar">
        <button type="button" class="main" aria-keyshortcuts="Control+S" ?disabled=${this.saving} @click=${() => this.tell('save')}>Save ${this.what}</button>
        ${this.saved ? nothing : html`<button type="button" @click=${() => this.tell('discard')}>${this.fresh ? 'Start over' : 'Drop edits'}</button>`}
        <p role="status" class=${this.errors > 0 ? 'error' : 'soft'}>${this.state()}</p>
      </div>
    `
  }
}
