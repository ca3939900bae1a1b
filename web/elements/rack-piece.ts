import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { handOf, type Piece, pieceOperations, type Step } from '../../shared/piece.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'
import { rpmFigure, whereText } from './operation-words.ts'
import './rack-done.ts'
import { nextOperation, pieceWords } from './rack-steps.ts'
import type { StepTimer } from './step-timer.ts'
import './step-timer.ts'
import './turned-part.ts'

export interface StepDone {
  operation: string
  minutes?: number
}

/**
 * One piece in hand: what is next, what is done. Sends `step-done`, `piece-spoiled`, `step-taken-back` with the key,
 * and, on a narrow screen, `rack-wanted`.
 */
@customElement('rack-piece')
export class RackPiece extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .next {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
      /* Nothing above the button changes its height with the operation: it stays under the thumb. */
      .next h3 {
        min-height: 3.6em;
        font-size: 1.1875rem;
      }
      .big {
        height: 5.5rem;
        padding: 0 var(--space-2);
        font-size: 1.25rem;
        line-height: 1.2;
        width: 100%;
        overflow: hidden;
        touch-action: manipulation;
      }
      .waiting {
        min-height: 1.5em;
        font-weight: 650;
        color: var(--over);
      }
      .card {
        scroll-margin-top: var(--space-2);
      }
      .steps li {
        display: flex;
        gap: var(--space-2);
        padding: var(--space-1) 0;
      }
      .steps .mark {
        border: 0;
        padding: 0;
        background: none;
        width: 1.25rem;
      }
      .back {
        justify-self: start;
      }
      @media (min-width: 60rem) {
        .back {
          display: none;
        }
      }
      .spoil {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ]

  @property({ attribute: false }) piece?: Piece
  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ attribute: false }) profile?: Profile
  @property() species = ''
  /** Left and right hands differ. */
  @property({ type: Boolean }) hands = false
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** Where its wood was cut. */
  @property() place = ''
  /** What is logged on this job and not stored yet. */
  @property({ type: Number }) waiting = 0
  /** Steps stored on this piece; undefined while they are fetched. */
  @property({ attribute: false }) logged?: readonly Step[]
  @property() takeBackFailure = ''
  /** Tools whose edge is due. */
  @property({ attribute: false }) dull: readonly string[] = []
  @state() private reason = ''
  @query('step-timer') private timer?: StepTimer

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('piece') as Piece | undefined
    if (changed.has('piece') && before?.id !== this.piece?.id) {
      this.reason = ''
    }
  }

  private done(operation: Operation): void {
    const { minutes, wrong } = this.timer!.entry()
    if (wrong) return
    this.timer!.clear()
    const detail: StepDone = { operation: operation.key, ...(minutes !== undefined && { minutes }) }
    this.dispatchEvent(new CustomEvent('step-done', { detail }))
  }

  override render() {
    const piece = this.piece
    if (!piece)
      return html`<section class="card"><p class="soft">Choose a piece to log what is done on it.</p></section>`
    const next = nextOperation(piece, this.operations)
    return html`<section class="card" aria-label="Piece ${piece.number}">
      <h2 tabindex="-1">Piece ${piece.number}${this.hands ? `, ${handOf(piece.number)} hand` : ''}${piece.spare ? ' (spare)' : ''}</h2>
      ${piece.spoiled ? html`<p class="problem">Spoiled: ${piece.spoiled.reason}. It keeps its number and its record.</p>` : next ? this.next(piece, next) : html`<p><span class="mark in">✓ finished</span> All its operations are done.</p>`}
      <p class="soft">${pieceWords(piece, this.operations)}</p>
      ${this.place ? html`<p class="small soft">Cut from ${this.place}.</p>` : nothing}
      <button type="button" class="back no-print" @click=${() => this.dispatchEvent(new CustomEvent('rack-wanted'))}>‹ Back to the rack</button>
      ${this.steps(piece, next)} ${this.takingBack()}
      ${piece.spoiled ? nothing : this.spoiling(piece)}
    </section>`
  }

  private next({ id, number }: Piece, operation: Operation): TemplateResult {
    const { rpm, rpmCeiling, caliper, where, caution } = operation
    return html`<div class="next">
      <div>
        <p class="label">Next</p>
        <h3>${operation.name}</h3>
      </div>
      <step-timer .watchKey=${`${id} ${operation.key}`} name="piece ${number}, ${operation.name}"></step-timer>
      <button type="button" class="main big" @click=${() => this.done(operation)}>✓ Done: ${operation.name}</button>
      <p class="waiting small" role="status">${waitingText(this.waiting)}</p>
      <p>${operation.tool}${where ? `, ${whereText(where, this.lengthStyle)}` : ''}</p>
      ${this.dull.includes(operation.tool) ? html`<p class="caution"><span>Its edge is due: bring the ${operation.tool} back first, and log it at the top of the rack.</span></p>` : nothing}
      ${where && this.profile ? html`<turned-part orientation="horizontal" most="90" .profile=${this.profile} .species=${this.species} .highlight=${where}></turned-part>` : nothing}
      <dl class="figures">
        ${rpm === undefined ? nothing : html`<div><dt>Speed</dt><dd>${rpmFigure(rpm)} rpm</dd>${rpmCeiling === undefined ? nothing : html`<dd class="note">never above ${rpmFigure(rpmCeiling)} rpm</dd>`}</div>`}
        ${caliper === undefined ? nothing : html`<div><dt>Caliper at</dt><dd>${lengthText(caliper, this.lengthStyle)}</dd></div>`}
      </dl>
      ${caution ? html`<p class="caution">${caution}</p>` : nothing}
    </div>`
  }

  private steps(piece: Piece, next: Operation | undefined): TemplateResult {
    return html`<details>
      <summary>All steps of this piece</summary>
      <ol class="plain steps">
        ${pieceOperations(this.operations).map((operation) => {
          const done = piece.done.includes(operation.key)
          return html`<li aria-current=${operation === next ? 'step' : nothing}>
            <span class="mark ${done ? 'in' : ''}">${done ? '✓' : operation === next ? '→' : '○'}</span>
            <span>${operation.name}<span class="hidden-label">${done ? ', done' : operation === next ? ', next' : ', to do'}</span></span>
          </li>`
        })}
      </ol>
    </details>`
  }

  private takingBack(): TemplateResult {
    return html`<details>
      <summary>Steps logged, to take one back</summary>
      ${this.takeBackFailure ? html`<p class="problem" role="alert">${this.takeBackFailure}</p>` : nothing}
      ${
        this.logged
          ? html`<rack-done .steps=${this.logged} .operations=${this.operations} @step-taken-back=${(event: CustomEvent<{ key: string }>) => this.dispatchEvent(new CustomEvent('step-taken-back', { detail: event.detail }))}></rack-done>`
          : html`<p class="soft">Not fetched yet.</p>`
      }
    </details>`
  }

  private spoiling(piece: Piece): TemplateResult {
    const reason = this.reason.trim()
    return html`<details>
      <summary>Spoiled it?</summary>
      <div class="spoil">
        <div class="field">
          <label for="reason">What happened</label>
          <input id="reason" maxlength="400" autocomplete="off" placeholder="catch, tear-out, under size…" .value=${this.reason}
            @input=${(event: Event) => {
              this.reason = (event.target as HTMLInputElement).value
            }} />
        </div>
        <ask-twice danger label="Mark piece ${piece.number} spoiled" answer="Yes, it is spoiled" ?disabled=${reason === ''}
          question="Piece ${piece.number} leaves the set for good. Is it spoiled?"
          @confirmed=${() => this.dispatchEvent(new CustomEvent('piece-spoiled', { detail: { reason } }))}></ask-twice>
        ${reason === '' ? html`<p class="hint">Say what happened first: the record helps to plan spares.</p>` : nothing}
      </div>
    </details>`
  }

  /** Brings the piece into view and to the ear. */
  showHeading(): void {
    const heading = this.renderRoot.querySelector('h2')
    heading?.focus({ preventScroll: true })
    this.scrollIntoView({ block: matchMedia('(max-width: 60rem)').matches ? 'start' : 'nearest' })
  }
}

const waitingText = (count: number): string =>
  count === 0 ? '' : `${count} ${count === 1 ? 'step' : 'steps'} kept on this device, not sent yet`

declare global {
  interface HTMLElementTagNameMap {
    'rack-piece': RackPiece
  }
}
