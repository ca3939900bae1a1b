import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { isMeasuring } from '../../shared/library.ts'
import type { LibraryFile } from '../library-file.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import type { LiveSheet } from '../sheet-live.ts'
import { pageWear } from '../styles/all.ts'
import './turned-part.ts'

/** So many reasons why it is no whole profile yet are told at once. */
const LACKING_TOLD = 4

/** The profile that a sheet makes so far, what it lacks, and where to go with it. Sends `draw` and `make-job`. */
@customElement('measure-drawn')
export class MeasureDrawn extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) live!: LiveSheet
  @property({ attribute: false }) file!: LibraryFile
  /** The profile was deleted: there is nowhere to go with it. */
  @property({ type: Boolean }) gone = false

  constructor() {
    super()
    new SessionController(this)
  }

  private tell(name: 'draw' | 'make-job') {
    this.dispatchEvent(new CustomEvent(name))
  }

  override render() {
    const { profile, made } = this.live
    const { units, species = '', name } = this.file
    const long = profile && length(profile.stations.at(-1)!.at, units)
    return html`<div class="card">
      <h2>Drawing${long ? html` <span class="soft small">${long} long so far</span>` : nothing}</h2>
      ${
        profile
          ? html`<turned-part .profile=${profile} .species=${species} .lengthStyle=${lengthStyle(units)} dimensions .name=${name || 'Copied piece'}></turned-part>`
          : html`<p class="soft">It grows from the second station on.</p>`
      }
      ${this.gone ? nothing : this.onwards()}
      ${made.notes.map((note) => html`<p class="caution">${note}</p>`)}
      ${profile ? this.lacking() : nothing}
    </div>`
  }

  private onwards() {
    const nothingDrawn = isMeasuring(this.file)
    return html`<div class="buttons no-print">
      <button type="button" ?disabled=${nothingDrawn} @click=${() => this.tell('draw')}>Draw it</button>
      <button type="button" ?disabled=${nothingDrawn} @click=${() => this.tell('make-job')}>Make a job of it</button>
    </div>`
  }

  private lacking() {
    const { lacking } = this.live
    const more = lacking.length - LACKING_TOLD
    return html`
      ${lacking.slice(0, LACKING_TOLD).map((told) => html`<p class="soft">${told}</p>`)}
      ${more > 0 ? html`<p class="soft">… and ${more} more.</p>` : nothing}
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-drawn': MeasureDrawn
  }
}
