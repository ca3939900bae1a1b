import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { OtherDraft } from '../drafts.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'

/** What a draft has to have to be told of. */
type Named = OtherDraft<{ name: string; profile: { stations: unknown[] } }>

/**
 * What stands between a draft and what is stored: changed or deleted elsewhere, edits of other tabs. Sends `discard`,
 * `overwrite`, `save-as-new`, `abandon`, and `adopt`, `save-other` and `drop-other` with the draft of another tab.
 */
@customElement('draft-notices')
export class DraftNotices extends LitElement {
  static override styles = pageWear

  /** What is written, e.g. `profile`. */
  @property() what = ''
  @property({ type: Boolean }) conflict = false
  @property({ type: Boolean }) gone = false
  /** Nothing of it is stored yet. */
  @property({ type: Boolean }) fresh = false
  /** A batch was started: no edits of it can reach it any more. */
  @property({ type: Boolean }) started = false
  @property({ attribute: false }) others: readonly Named[] = []

  private tell(name: string, detail?: Named) {
    this.dispatchEvent(new CustomEvent(name, { detail }))
  }

  private get quiet(): boolean {
    return !this.conflict && !this.gone && this.others.length === 0
  }

  protected override willUpdate() {
    this.hidden = this.quiet
  }

  override render() {
    if (this.quiet) return nothing
    return html`<div class="page">
      ${this.conflict ? this.conflicted() : nothing} ${this.gone ? this.deleted() : nothing}
      ${this.others.map((other) => this.other(other))}
    </div>`
  }

  private conflicted() {
    return html`<div class="problem" role="alert">
      <p>This ${this.what} was changed elsewhere while you were editing. Your edits are still here.</p>
      <div class="buttons">
        <button type="button" @click=${() => this.tell('discard')}>Load theirs, drop mine</button>
        <button type="button" class="danger" @click=${() => this.tell('overwrite')}>Save mine over theirs</button>
      </div>
    </div>`
  }

  private deleted() {
    return html`<div class="problem" role="alert">
      <p>This ${this.what} was deleted elsewhere. What you entered is still here.</p>
      <div class="buttons">
        <button type="button" class="main" @click=${() => this.tell('save-as-new')}>Save as a new ${this.what}</button>
        <button type="button" class="danger" @click=${() => this.tell('abandon')}>Drop it</button>
      </div>
    </div>`
  }

  private other(other: Named) {
    const { name, profile } = other.draft.file
    const told = this.started
      ? 'These edits were not saved when the batch was started and cannot reach it any more'
      : this.fresh
        ? `Another new ${this.what} is kept unsaved on this device, from another tab or one that was closed`
        : `Other unsaved edits of this ${this.what} are kept on this device, from another tab or one that was closed`
    const them = this.fresh ? 'it' : 'them'
    return html`<div class="notice no-print">
      <div class="page-head">
        <p>${told}: ${name || 'no name yet'}, ${profile.stations.length} stations.</p>
        <div class="buttons">
          ${
            this.started || this.gone
              ? html`<button type="button" @click=${() => this.tell('save-other', other)}>Save them as a new ${this.what}</button>`
              : html`<button type="button" @click=${() => this.tell('adopt', other)}>Go on with ${them}</button>`
          }
          <ask-twice
            label="Drop ${them}"
            question="Drop what was entered for good?"
            answer="Yes, drop it"
            @confirmed=${() => this.tell('drop-other', other)}
          ></ask-twice>
        </div>
      </div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'draft-notices': DraftNotices
  }
}
