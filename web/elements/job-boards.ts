import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { HeldBoard } from '../../shared/contract/board.ts'
import type { JobWood, SawnAnswer } from '../../shared/contract/sawn.ts'
import { boardsFor, takenOnHand } from '../../shared/cutting/on-hand.ts'
import type { StockBoard } from '../../shared/cutting/stock-board.ts'
import type { Plan } from '../../shared/plan.ts'
import { nm, type Units } from '../../shared/units/length.ts'
import { lumberPath } from '../router.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { momentText } from '../time-text.ts'
import { boardFeetText, priceText } from './amounts.ts'
import './ask-twice.ts'

/** Boards of one key that a plan takes, and how many. */
interface Taken {
  key: string
  count: number
  board: StockBoard
}

/** The boards on hand that a plan is cut from, with what was known of them. */
function boardsTaken({ cut, cutOrder }: Plan, rack: readonly StockBoard[]): Taken[] {
  return [...takenOnHand(cut)].map(([key, count]) => ({
    key,
    count,
    // A board that is sawn has left the rack; the plan still knows its measures.
    board: rack.find((board) => board.key === key) ?? cutOrder.boards.find((board) => board.key === key)!,
  }))
}

/**
 * The boards on hand that a job is cut from: in the plan of a draft, reserved for a started batch, and gone with their
 * offcuts once its blanks are sawn. Sends `sawn` and `take-back`.
 */
@customElement('job-boards')
export class JobBoards extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .parts {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
      li {
        padding-block: var(--space-2);
        border-bottom: 1px solid var(--line);
        overflow-wrap: anywhere;
      }
      .buttons {
        --ask-height: var(--touch);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  @property({ attribute: false }) rack: readonly HeldBoard[] = []
  /** What the job has reserved and what was sawn for it; nothing for a draft. */
  @property({ attribute: false }) wood?: JobWood
  @property({ type: Boolean }) busy = false

  constructor() {
    super()
    new SessionController(this)
  }

  private get units(): Units {
    return this.plan.job.units
  }

  private readonly size = ({ width, length: long, thickness }: StockBoard) =>
    `${length(width, this.units)} × ${length(long, this.units)}, ${length(thickness, this.units)} thick`

  override render() {
    const { plan, wood } = this
    const taken = boardsTaken(plan, this.rack)
    return html`<div class="parts">
      ${taken.length > 0 ? this.taken(taken) : html`<p>${this.whyNone()}</p>`}
      ${wood ? this.sawing(wood) : nothing}
      <p class="no-print"><a href=${lumberPath('boards')}>All boards on hand</a></p>
    </div>`
  }

  private taken(taken: Taken[]) {
    const { boardFeetOnHand, worthOnHand, boards } = this.plan.cut
    const isAll = boards.every(({ onHand }) => onHand)
    return html`
      <p>
        ${isAll ? 'Nothing is bought: the blanks come from boards on hand' : 'Part of the blanks comes from boards on hand, before any is bought'},
        ${boardFeetText(boardFeetOnHand ?? 0)} of them${worthOnHand === undefined ? '' : `, worth ${priceText(worthOnHand, this.plan.cutOrder.currency)}`}.
      </p>
      <ul class="plain">
        ${taken.map(
          ({ key, count, board }) => html`<li>
            <b>${key}</b>${count > 1 ? `, ${count} of them` : ''}: ${this.size(board)}${board.moisture === undefined ? '' : `; ${board.moisture} % moisture`}${board.from ? `; from ${board.from}` : ''}
          </li>`,
        )}
      </ul>
      ${this.minded(taken).map((text) => html`<p class="caution"><span>${text}</span></p>`)}
    `
  }

  /** What the plan has to say of these boards: another moisture than the job's, no wood written down. */
  private minded(taken: Taken[]): string[] {
    const { cautions, yard } = this.plan
    return cautions.flatMap(({ about, text }) =>
      about === 'lumber' && !yard.notes.includes(text) && taken.some(({ key }) => text.includes(key))
        ? [text]
        : [],
    )
  }

  /** Why the plan takes no board of the rack. */
  private whyNone(): string {
    const { job, blank, cut } = this.plan
    if (job.lumber?.fromRack === false) return 'This job leaves the rack alone: its wood is all bought.'
    if (this.wood) return 'This batch was planned from bought boards alone.'
    const lumber = { ...job.lumber, fromRack: true }
    const usable = boardsFor({ species: job.species, lumber }, this.rack)
    if (usable.length === 0) return 'No board of this wood is on the rack.'
    const large = usable.filter(
      ({ width, length: long, thickness }) =>
        nm(thickness) >= nm(blank.layerThickness) &&
        nm(width) >= nm(blank.sawn) &&
        nm(long) >= nm(blank.length),
    )
    if (large.length === 0) return 'Boards of this wood are on the rack, but none that a blank comes out of.'
    return cut.boards.length === 0
      ? 'Boards of this wood are on the rack, but no blank can be cut.'
      : 'Boards of this wood are on the rack, but reserved, not clear enough, or no board less is bought for them.'
  }

  private sawing({ sawn }: JobWood) {
    if (sawn) return this.sawn(sawn)
    return html`
      <p class="soft">
        Once the blanks are sawn, say so: the boards leave the rack, and offcuts of
        ${length(this.plan.cutOrder.minOffcut, this.units)} and longer come onto it.
      </p>
      <div class="buttons no-print">
        <button type="button" class="main" ?disabled=${this.busy} @click=${() => this.dispatchEvent(new CustomEvent('sawn'))}>
          The blanks are sawn
        </button>
      </div>
    `
  }

  private sawn({ at, offcuts }: SawnAnswer) {
    return html`
      <p>Sawn ${momentText(at)}. ${offcuts.length === 0 ? 'No offcut was long enough to keep.' : 'Write these on the offcuts and lay them on the rack:'}</p>
      <ul class="plain">
        ${offcuts.map(
          (offcut) => html`<li>
            <b>${offcut.key}</b>${offcut.count !== null && offcut.count > 1 ? `, on all ${offcut.count}` : ''}: ${this.size(offcut)}${offcut.from ? `; ${offcut.from}` : ''}
          </li>`,
        )}
      </ul>
      <div class="buttons no-print">
        <ask-twice
          .label=${'Not sawn yet: take it back'}
          .question=${'The boards are reserved on the rack again, and these offcuts are not there.'}
          .answer=${'Take it back'}
          ?disabled=${this.busy}
          @confirmed=${() => this.dispatchEvent(new CustomEvent('take-back'))}
        ></ask-twice>
      </div>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'job-boards': JobBoards
  }
}
