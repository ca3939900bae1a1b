import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { HeldBoard } from '../../shared/contract/board.ts'
import { boardFeet } from '../../shared/units/board-foot.ts'
import type { Units } from '../../shared/units/length.ts'
import { jobPath } from '../router.ts'
import { length, SessionController } from '../session.ts'
import { defectText } from '../stock-entry.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, priceText } from './amounts.ts'
import './ask-twice.ts'
import './board-sketch.ts'

/**
 * A board on hand: what it measures, what it is like, who has it reserved. Sends `change`, `alike` and `drop` with the
 * board.
 */
@customElement('board-card')
export class BoardCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        display: grid;
      }
      article {
        display: grid;
        gap: var(--space-2);
        grid-template-columns: minmax(0, 1fr);
        align-content: start;
        padding: var(--space-3);
        border: 1px solid var(--line);
        border-radius: var(--round);
        background: var(--sheet);
      }
      h3 {
        overflow-wrap: anywhere;
      }
      .held {
        padding: var(--space-2);
        border-radius: var(--round);
        background: var(--accent-wash);
      }
      .buttons {
        --ask-height: var(--touch);
        gap: 0.375rem;
      }
      .buttons > button {
        padding-inline: 0.625rem;
      }
    `,
  ]

  @property({ attribute: false }) board!: HeldBoard
  @property() wood = ''
  @property() units: Units = 'in'
  @property() currency = ''

  constructor() {
    super()
    new SessionController(this)
  }

  private readonly mm = (value: number) => length(value, this.units)

  private get held(): number {
    return (this.board.reserved ?? []).reduce((sum, { count }) => sum + count, 0)
  }

  /** How many there are, and how many of them can be had. */
  private counted(): string {
    const { count } = this.board
    if (count === null) return 'as many as are needed'
    const free = count - this.held
    if (this.held === 0) return count === 1 ? '' : `${count} alike`
    return count === 1 ? 'reserved' : `${count} alike, ${free === 0 ? 'none' : free} free`
  }

  private facts(): string[] {
    const { board } = this
    const price =
      board.price !== undefined
        ? `${priceText(board.price, this.currency)} the board`
        : board.pricePerBoardFoot !== undefined
          ? `${priceText(board.pricePerBoardFoot, this.currency)} a board foot`
          : undefined
    return [
      boardFeetText(boardFeet(board)) + (board.count === 1 ? '' : ' each'),
      board.moisture === undefined ? 'moisture not measured' : `${board.moisture} % moisture`,
      board.grade,
      price,
      board.trimmed ? 'sawn all round, no trim' : undefined,
      board.crook ? `crook ${this.mm(board.crook)}, lost along the edge` : undefined,
      board.heart &&
        `heart ${this.mm(board.heart.across)} across, ${this.mm(board.heart.below)} below the face`,
    ].filter((fact) => fact !== undefined)
  }

  override render() {
    const { board } = this
    const size = `${this.mm(board.width)} × ${this.mm(board.length)}, ${this.mm(board.thickness)} thick`
    const defects = (board.defects ?? []).map((defect) => defectText(defect, this.mm))
    const counted = this.counted()
    return html`
      <article aria-label="Board ${board.key}">
        <h3>${board.key}</h3>
        <p>${this.wood}: ${size}${counted ? `; ${counted}` : ''}</p>
        <board-sketch .board=${board} .told="${board.key}, ${size}. ${defects.length > 0 ? defects.join('; ') : 'Clear'}"></board-sketch>
        <p class="small">${this.facts().join(' · ')}</p>
        <p class="small soft">${defects.length > 0 ? `Not clear: ${defects.join('; ')}` : 'No defects entered.'}</p>
        ${board.from ? html`<p class="small soft">From: ${board.from}</p>` : nothing}
        ${board.notes ? html`<p class="small soft">${board.notes}</p>` : nothing}
        ${(board.reserved ?? []).map(
          ({ job, name, count }) => html`<p class="small held">
            ${board.count === 1 ? 'Reserved' : `${count} reserved`} for <a href=${jobPath(job, 'wood')}>${name}</a>
          </p>`,
        )}
        ${this.actions(board)}
      </article>
    `
  }

  private actions(board: HeldBoard) {
    const tell = (name: string) => () => this.dispatchEvent(new CustomEvent(name, { detail: board }))
    return html`<div class="buttons no-print">
      <button type="button" aria-label="Change board ${board.key}" @click=${tell('change')}>Change</button>
      <button type="button" aria-label="More like it: board ${board.key}" @click=${tell('alike')}>More like it</button>
      <ask-twice
        danger
        .label=${'Delete'}
        .named="Delete board ${board.key}"
        .question="Delete ${board.key}? It is gone from the rack for good."
        .answer=${'Delete it'}
        ?disabled=${this.held > 0}
        @confirmed=${tell('drop')}
      ></ask-twice>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-card': BoardCard
  }
}
