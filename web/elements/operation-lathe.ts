import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query } from 'lit/decorators.js'
import type { Profile } from '../../shared/profile/profile.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { restText } from '../../shared/route/order-rows.ts'
import type { ToolGrinding } from '../../shared/turning/edge.ts'
import { type LengthStyle, lengthFigure } from '../../shared/units/length.ts'
import { KeepAwake } from '../keep-awake.ts'
import { pageWear } from '../styles/all.ts'
import { changesText, type LatheChanges, latheChanges } from './lathe-changes.ts'
import { fitType } from './lathe-fit.ts'
import { latheLook } from './lathe-look.ts'
import { latheCall, latheTool, latheWhere } from './lathe-words.ts'
import { operationGroups, rpmFigure, unbroken } from './operation-words.ts'
import { everyText } from './rack-edge-states.ts'
import { Stroke } from './stroke.ts'
import './turned-part.ts'

/** What each key turns by. */
const keys: Record<string, -1 | 1> = {
  ArrowRight: 1,
  PageDown: 1,
  ArrowLeft: -1,
  PageUp: -1,
}

/**
 * One operation over the whole screen, to be read a step back from the lathe. Sends `operation-turn` with `by` -1 or
 * 1 on buttons, arrows, the space bar and strokes sideways, and `lathe-left` when it is closed.
 */
@customElement('operation-lathe')
export class OperationLathe extends LitElement {
  static override styles = [
    ...pageWear,
    latheLook,
    css`
      :host {
        display: contents;
      }
      @media print {
        dialog {
          display: none !important;
        }
      }
    `,
  ]

  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ type: Number }) index = 0
  @property({ attribute: false }) profile?: Profile
  @property() species = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  @property({ attribute: false }) grits: readonly number[] = []
  /** When each edge is to be brought back. */
  @property({ attribute: false }) grinding: readonly ToolGrinding[] = []
  @query('dialog') private readonly dialog!: HTMLDialogElement | null
  @query('.work') private readonly work!: HTMLElement | null
  /** The operation it was opened at. */
  private from = 0
  private readonly awake = new KeepAwake(this)
  private readonly stroke = new Stroke((by) => this.turn(by))
  private readonly sized = new ResizeObserver(() => this.fit())

  override connectedCallback(): void {
    super.connectedCallback()
    addEventListener('keydown', this.turnByKey)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('keydown', this.turnByKey)
    this.sized.disconnect()
    this.awake.stop()
    if (document.fullscreenElement) void document.exitFullscreen()
  }

  protected override firstUpdated(): void {
    this.from = this.index
    this.dialog?.showModal()
    this.renderRoot.querySelector<HTMLElement>('footer .main')?.focus()
    this.awake.start()
    if (this.dialog) this.sized.observe(this.dialog)
    document.documentElement.requestFullscreen?.().catch(() => {
      // Not every device has it, nor gives it after a reload: the view fills the window all the same.
    })
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('index') && this.work) this.work.scrollTop = 0
    this.fit()
  }

  private fit(): void {
    if (this.dialog) fitType(this.dialog)
  }

  private turn(by: -1 | 1): void {
    this.dispatchEvent(new CustomEvent('operation-turn', { detail: { by } }))
  }

  private readonly leave = () => void this.dispatchEvent(new CustomEvent('lathe-left'))

  private readonly turnByKey = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return
    const pressing = event.composedPath()[0] instanceof HTMLButtonElement && !event.shiftKey
    const by = event.key === ' ' && !pressing ? (event.shiftKey ? -1 : 1) : keys[event.key]
    if (by === undefined) return
    event.preventDefault()
    this.turn(by)
  }

  override render() {
    const operation = this.operations[this.index]
    if (!operation || !this.profile) return nothing
    const changes = latheChanges(this.operations, this.index, this.lengthStyle)
    return html`<dialog aria-label="From the lathe" @close=${this.leave}
      @pointerdown=${this.stroke.pressed} @pointerup=${this.stroke.lifted}>
      ${this.head(operation)} ${this.body(operation, this.profile, changes)}
      ${this.mind(operation, changes)} ${this.foot(this.profile)}
    </dialog>`
  }

  private head(operation: Operation): TemplateResult {
    const group = operationGroups(this.operations).find((g) => g.operations.includes(operation))
    return html`<header>
      <p>${this.index + 1} of ${this.operations.length} · ${group?.heading.replace('On the lathe, ', '') ?? ''}</p>
      <div class="buttons"><button type="button" @click=${this.leave}>Leave</button></div>
    </header>`
  }

  private body(operation: Operation, profile: Profile, changes: LatheChanges): TemplateResult {
    const figures = [
      this.speed(operation, changes),
      this.caliper(operation, changes),
      this.rest(operation, changes),
    ]
    const alone = figures.every((one) => one === nothing)
    return html`<div class="work ${alone ? 'alone' : ''}" tabindex="0" role="group" aria-label="Operation" aria-live="polite">
      <div class="half">
        <div class="set">
          <h2>${unbroken(latheCall(operation, profile, this.lengthStyle))}</h2>
          ${this.place(operation, profile)}
        </div>
        ${this.tool(operation, changes)}
      </div>
      ${alone ? nothing : html`<div class="half">${figures}</div>`}
    </div>`
  }

  private tool(operation: Operation, changes: LatheChanges): TemplateResult | typeof nothing {
    if (!operation.tool) return nothing
    const edge = this.grinding.find(({ tool }) => tool === operation.tool)
    return html`<div class="set ${changes.tool ? 'changed' : ''}">
      <p class="big tool">${unbroken(latheTool(operation, this.grits))}</p>
      ${edge ? html`<p class="beside why">to the stone ${everyText(edge.piecesBetween)}</p>` : nothing}
    </div>`
  }

  private place(operation: Operation, profile: Profile): TemplateResult | typeof nothing {
    if (!operation.where) return nothing
    return html`<div class="place">
      <p>${latheWhere(operation, this.lengthStyle)}</p>
      <turned-part compact orientation="horizontal" .profile=${profile} .species=${this.species} .highlight=${operation.where}></turned-part>
    </div>`
  }

  private speed(
    { rpm, rpmCeiling, ceilingBy }: Operation,
    { speed }: LatheChanges,
  ): TemplateResult | typeof nothing {
    if (rpm === undefined && rpmCeiling === undefined) return nothing
    return html`<div class="set side ${speed ? 'changed' : ''}">
      ${rpm === undefined ? html`<p class="big no-speed">No safe speed</p>` : html`<p class="big number">${rpmFigure(rpm)}<span class="unit"> rpm</span></p>`}
      ${rpmCeiling === undefined ? nothing : html`<p class="beside">never above ${rpmFigure(rpmCeiling)} rpm<span class="why soft">${ceilingBy ? `: ${ceilingBy}` : ''}</span></p>`}
    </div>`
  }

  private caliper({ caliper }: Operation, changes: LatheChanges): TemplateResult | typeof nothing {
    if (caliper === undefined) return nothing
    return html`<div class="set side ${changes.caliper ? 'changed' : ''}">
      <p class="big number">${lengthFigure(caliper, this.lengthStyle)}<span class="unit"> ${this.lengthStyle === 'mm' ? 'mm' : 'in'}</span></p>
      <p class="beside short">caliper</p>
    </div>`
  }

  private rest(operation: Operation, { rest }: LatheChanges): TemplateResult | typeof nothing {
    const at = restText(operation)
    if (!at && !rest) return nothing
    const words = at ? `tool rest: position ${at}` : 'tool rest away'
    return html`<p class="set beside ${rest ? 'changed' : ''}">${words}</p>`
  }

  private mind(operation: Operation, changes: LatheChanges): TemplateResult | typeof nothing {
    const change = changesText(changes)
    const sleeps = this.awake.held === false && this.index === this.from
    if (!change && !operation.caution && !sleeps) return nothing
    return html`<div class="mind" tabindex="0" role="group" aria-label="To mind">
      ${change ? html`<p class="change">Change: ${unbroken(change)}</p>` : nothing}
      ${operation.caution ? html`<p class="caution">${operation.caution}</p>` : nothing}
      ${sleeps ? html`<p>This browser lets the screen go dark: set the device to stay on.</p>` : nothing}
    </div>`
  }

  private foot(profile: Profile): TemplateResult {
    const next = this.operations[this.index + 1]
    return html`<footer>
      <button type="button" aria-label="Previous" ?disabled=${this.index === 0} @click=${() => this.turn(-1)}>‹</button>
      <button type="button" class="main" ?disabled=${!next} @click=${() => this.turn(1)}>
        <span>Next ›</span>
        ${next ? html`<span class="then">${latheCall(next, profile, this.lengthStyle)} ${latheWhere(next, this.lengthStyle)}</span>` : nothing}
      </button>
    </footer>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'operation-lathe': OperationLathe
  }
}
