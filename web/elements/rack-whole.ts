import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { type Piece, pieceOperations } from '../../shared/piece.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'
import { numbersText, piecesLacking, rackOperation } from './rack-steps.ts'
import type { StepTimer } from './step-timer.ts'
import './step-timer.ts'

/** One operation done on several pieces: minutes are those of each. */
export interface StepsDone {
  pieces: readonly Piece[]
  operation: string
  minutes?: number
}

/** One operation on all pieces before the next, or on as many as were done; minutes are shared. Sends `steps-done`. */
@customElement('rack-whole')
export class RackWhole extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .entry {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
      @media (min-width: 60rem) {
        .entry {
          grid-template-columns: minmax(0, 30rem) minmax(0, 12rem);
          align-items: start;
        }
        step-timer {
          max-width: 30rem;
        }
      }
      input,
      select {
        min-height: 3.5rem;
        width: 100%;
      }
    `,
  ]

  @property() jobId = ''
  @property({ attribute: false }) pieces: readonly Piece[] = []
  @property({ attribute: false }) operations: readonly Operation[] = []
  @state() private operation = ''
  @state() private count = ''
  @query('step-timer') private timer?: StepTimer

  /** So many of the pieces that lack it, by number; undefined where the count cannot be read. */
  private chosen(lacking: readonly Piece[]): readonly Piece[] | undefined {
    const written = this.count.trim()
    if (written === '') return lacking
    const count = /^\d{1,5}$/.test(written) ? Number(written) : 0
    return count >= 1 && count <= lacking.length ? lacking.slice(0, count) : undefined
  }

  private done(pieces: readonly Piece[], operation: Operation): void {
    const { minutes, wrong } = this.timer!.entry()
    if (wrong) return
    this.timer!.clear()
    this.count = ''
    const each = minutes === undefined ? {} : { minutes: minutes / pieces.length }
    const detail: StepsDone = { pieces, operation: operation.key, ...each }
    this.dispatchEvent(new CustomEvent('steps-done', { detail }))
  }

  override render() {
    const next = rackOperation(this.pieces, this.operations)
    if (!next) return nothing
    const operation = this.operations.find(({ key }) => key === this.operation) ?? next
    const lacking = piecesLacking(this.pieces, operation.key)
    return html`<section class="card no-print">
      <h2>The whole rack</h2>
      <p>One operation on all pieces before the next keeps a set alike. Time them together and the minutes are shared among them.</p>
      <div class="entry">
        <div class="field">
          <label for="operation">Operation</label>
          <select id="operation" @change=${(event: Event) => {
            this.operation = (event.target as HTMLSelectElement).value
            this.count = ''
          }}>
            ${pieceOperations(this.operations).map((o) => html`<option value=${o.key} .selected=${live(o.key === operation.key)}>${o.name} (${piecesLacking(this.pieces, o.key).length} to do)</option>`)}
          </select>
        </div>
        ${this.howMany(lacking)}
        <step-timer label="Minutes for all of them together" name="the rack, ${operation.name}" .watchKey=${`${this.jobId} ${operation.key}`}></step-timer>
      </div>
      ${this.asking(operation, lacking)}
    </section>`
  }

  private howMany(lacking: readonly Piece[]): TemplateResult {
    const wrong = this.chosen(lacking) === undefined
    return html`<div class="field">
      <label for="count">On how many of them</label>
      <input id="count" inputmode="numeric" autocomplete="off" placeholder="all ${lacking.length}" .value=${this.count}
        aria-invalid=${wrong ? 'true' : nothing} aria-describedby="count-error"
        @input=${(event: Event) => {
          this.count = (event.target as HTMLInputElement).value
        }} />
      <p id="count-error" class="error" role="status">${wrong ? `From 1 to ${lacking.length} pieces lack it; read ${this.count}.` : nothing}</p>
    </div>`
  }

  private asking(operation: Operation, lacking: readonly Piece[]): TemplateResult {
    const pieces = this.chosen(lacking) ?? []
    const some = pieces.length < lacking.length
    const on = pieces.length === 1 ? 'one piece' : `${pieces.length} pieces`
    const label =
      lacking.length === 0
        ? 'Done on every piece'
        : some
          ? `Done on ${on}: ${numbersText(pieces)}`
          : `Done on all ${pieces.length} pieces that lack it`
    return html`<ask-twice label=${label} answer=${some ? `Yes, on ${on}` : `Yes, on all ${pieces.length}`} ?disabled=${pieces.length === 0}
      question="Log “${operation.name}” as done on ${on}? It is taken back piece by piece only."
      @confirmed=${() => this.done(pieces, operation)}></ask-twice>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-whole': RackWhole
  }
}
