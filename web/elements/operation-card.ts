import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Profile } from '../../shared/profile/profile.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { restText } from '../../shared/route/order-rows.ts'
import { type LengthStyle, lengthFigure } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { changesText, latheChanges } from './lathe-changes.ts'
import { operationGroups, rpmFigure, unbroken, whereText } from './operation-words.ts'
import { Stroke } from './stroke.ts'
import './turned-part.ts'

/**
 * One operation large enough to read from the lathe. Sends `operation-turn` with `by` -1 or 1 on its buttons and on
 * a stroke sideways.
 */
@customElement('operation-card')
export class OperationCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        touch-action: pan-y;
      }
      .card {
        gap: var(--space-3);
      }
      .read {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
      .head {
        display: flex;
        justify-content: space-between;
        gap: var(--space-4);
      }
      h2 {
        font-size: clamp(1.625rem, 7vw, 3rem);
        line-height: 1.1;
      }
      .tool {
        font-size: clamp(1.25rem, 5.5vw, 2rem);
      }
      .at-hand {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr));
        gap: var(--space-3) var(--space-6);
      }
      .at-hand dt {
        font-size: 1rem;
        color: var(--ink-soft);
      }
      .at-hand dd {
        font-size: clamp(3.25rem, 15vw, 5.5rem);
        font-weight: 700;
        line-height: 1;
        white-space: nowrap;
      }
      .at-hand dd.below {
        font-size: 1.0625rem;
        font-weight: 400;
        line-height: 1.35;
        white-space: normal;
        color: var(--ink-soft);
      }
      .at-hand dd.none {
        font-size: 1.75rem;
        color: var(--under);
        white-space: normal;
      }
      .at-hand .unit {
        font-size: 0.38em;
      }
      .change {
        padding-left: var(--space-2);
        border-left: 0.375rem solid var(--accent);
        font-weight: 600;
      }
      .caution {
        font-size: clamp(1.125rem, 4.6vw, 1.5rem);
      }
      .why {
        font-size: 1.0625rem;
      }
      .turn {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--space-3);
        position: sticky;
        bottom: 0;
        margin-inline: calc(-1 * var(--space-2));
        padding: var(--space-2);
        border-top: 1px solid var(--line);
        background: var(--sheet);
      }
      .turn button {
        min-height: 4.5rem;
        padding: 0;
        font-size: 1.25rem;
        white-space: nowrap;
      }
    `,
  ]

  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ type: Number }) index = 0
  @property({ attribute: false }) profile?: Profile
  @property() species = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @property() each = 'a piece'
  private readonly stroke = new Stroke((by) => this.turn(by))

  private turn(by: -1 | 1): void {
    this.dispatchEvent(new CustomEvent('operation-turn', { detail: { by } }))
  }

  override render() {
    const operation = this.operations[this.index]
    if (!operation) return html`<p>This plan has no operation here.</p>`
    const group = operationGroups(this.operations).find((g) => g.operations.includes(operation))
    const change = changesText(latheChanges(this.operations, this.index, this.lengthStyle))
    return html`<article class="card" @pointerdown=${this.stroke.pressed} @pointerup=${this.stroke.lifted}>
      <div aria-live="polite" class="read">
        <p class="head soft"><span>${group?.heading ?? ''}</span> <span>${this.index + 1} of ${this.operations.length}</span></p>
        <div>
          <h2>${unbroken(operation.name)}</h2>
          <p class="tool">${operation.tool}</p>
        </div>
        ${change ? html`<p class="change">Change: ${unbroken(change)}</p>` : nothing}
        <dl class="at-hand">${this.speed(operation)} ${this.lengths(operation)}</dl>
        ${operation.caution ? html`<p class="caution">${operation.caution}</p>` : nothing}
        ${this.drawing(operation)}
        <p class="why">${operation.why}</p>
        <p class="soft">${timeText(operation, this.each)}</p>
      </div>
      <div class="turn no-print">
        <button type="button" ?disabled=${this.index === 0} @click=${() => this.turn(-1)}>‹ Previous</button>
        <button type="button" class="main" ?disabled=${this.index >= this.operations.length - 1} @click=${() => this.turn(1)}>Next ›</button>
      </div>
    </article>`
  }

  private drawing(operation: Operation): TemplateResult | typeof nothing {
    if (!operation.where || !this.profile) return nothing
    return html`<figure>
      <turned-part orientation="horizontal" most="180" .profile=${this.profile} .species=${this.species} .highlight=${operation.where}></turned-part>
      <figcaption>${whereText(operation.where, this.lengthStyle)} <span class="soft">from the foot</span></figcaption>
    </figure>`
  }

  private speed({ rpm, rpmCeiling, ceilingBy }: Operation): TemplateResult | typeof nothing {
    if (rpm === undefined && rpmCeiling === undefined) return nothing
    return html`<div>
      <dt>Speed</dt>
      ${rpm === undefined ? html`<dd class="none">No safe speed on this lathe</dd>` : html`<dd>${rpmFigure(rpm)} <span class="unit">rpm</span></dd>`}
      ${rpmCeiling === undefined ? nothing : html`<dd class="below">never above ${rpmFigure(rpmCeiling)} rpm${ceilingBy ? `: ${ceilingBy}` : ''}</dd>`}
    </div>`
  }

  private lengths(operation: Operation): TemplateResult {
    const { caliper } = operation
    const rest = restText(operation)
    const unit = this.lengthStyle === 'mm' ? 'mm' : 'in'
    const figure = (name: string, mm: number, below: string) => html`<div>
      <dt>${name}</dt>
      <dd>${lengthFigure(mm, this.lengthStyle)} <span class="unit">${unit}</span></dd>
      <dd class="below">${below}</dd>
    </div>`
    return html`${caliper === undefined ? nothing : figure('Caliper', caliper, 'set to this: what later stages take off is left on')}
    ${
      rest === ''
        ? nothing
        : html`<div>
            <dt>Tool rest</dt>
            <dd><span class="unit">position</span> ${rest}</dd>
            <dd class="below">counted from the tailstock; moved only while the lathe stands</dd>
          </div>`
    }`
  }
}

const timeText = ({ minutesOnce, minutesEach }: Operation, each: string): string =>
  [
    minutesOnce > 0 ? `${minutesText(minutesOnce)} once` : '',
    minutesEach > 0 ? `${minutesText(minutesEach)} ${each}` : '',
  ]
    .filter(Boolean)
    .join(', ')

declare global {
  interface HTMLElementTagNameMap {
    'operation-card': OperationCard
  }
}
