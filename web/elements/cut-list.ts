import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { CutBoard, CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, percentText, priceText } from './amounts.ts'
import './board-drawing.ts'
import { alikeBoards, boundWords, cutLines } from './cut-words.ts'

const processWords = { 'rip-first': 'rip first, then crosscut', 'crosscut-first': 'crosscut first, then rip' }

/** A cutting plan: its figures, how good it is, and every board drawn with its cuts. */
@customElement('cut-list')
export class CutList extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .board {
        display: grid;
        gap: var(--space-2);
        break-inside: avoid;
      }
      .board ul {
        padding-left: 1.25rem;
      }
    `,
  ]

  @property({ attribute: false }) cut!: CutPlan
  @property({ attribute: false }) order!: CutOrder

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { cut, order } = this
    const priced = order.boards.some(
      (board) => board.price !== undefined || board.pricePerBoardFoot !== undefined,
    )
    return html`
      <div class="page">
        <dl class="figures">
          <div><dt>Boards</dt><dd>${cut.boards.length}</dd></div>
          <div><dt>Bought</dt><dd>${boardFeetText(cut.boardFeetBought)}</dd><dd class="note">as they measure</dd></div>
          <div><dt>Tallied</dt><dd>${boardFeetText(cut.boardFeetTallied)}</dd><dd class="note">as a yard bills them</dd></div>
          <div><dt>In blanks</dt><dd>${boardFeetText(cut.boardFeetInBlanks)}</dd></div>
          <div><dt>Yield</dt><dd>${percentText(cut.yield)}</dd></div>
          ${priced ? html`<div><dt>Cost</dt><dd>${priceText(cut.cost, order.currency)}</dd></div>` : nothing}
        </dl>
        ${cut.unmet.map(
          ({
            key,
            count,
          }) => html`<p class="problem">${count} ${key === 'layer' ? 'layers' : 'blanks'} cannot be cut from these boards:
            none that is left is long, wide and thick enough.</p>`,
        )}
        <p>${boundWords(cut, order.currency, priced)}${priced ? '' : html` <span class="soft">No prices are entered: board feet count.</span>`}</p>
        <p class="small soft">
          Kerf ${length(order.kerf, order.units)}, ${length(order.endTrim, order.units)} trimmed off each end,
          ${length(order.edgeTrim, order.units)} off each edge. Hatched is waste; offcuts of
          ${length(order.minOffcut, order.units)} and longer are kept.
        </p>
        ${alikeBoards(cut.boards).map(({ board, count }) => this.board(board, count))}
      </div>
    `
  }

  private board(board: CutBoard, count: number) {
    const { units } = this.order
    const mm = (value: number) => length(value, units)
    const name = `${mm(board.width)} × ${mm(board.length)}, ${mm(board.thickness)} thick`
    const ordered = this.order.boards.find(({ key }) => key === board.key)
    const lines = cutLines(board, units)
    return html`
      <section class="board">
        <h3>${count > 1 ? `${count} boards alike: ` : ''}${name}</h3>
        <p class="small soft">
          ${ordered?.count === null ? '' : `Board ${board.key}; `}${processWords[board.process]}; ${boardFeetText(board.boardFeet)}${
            count > 1 ? ' each' : ''
          }
        </p>
        <board-drawing
          .board=${board}
          .defects=${ordered?.defects ?? []}
          .units=${units}
          .told="${name}. ${lines.join('. ')}"
        ></board-drawing>
        <ul class="small">
          ${lines.map((line) => html`<li>${line}</li>`)}
        </ul>
      </section>
    `
  }
}
