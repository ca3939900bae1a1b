import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { countsMoney } from '../../shared/cutting/prices.ts'
import { ringText } from '../../shared/cutting/rings.ts'
import type { CuttingSheet, SheetBoard } from '../../shared/cutting/sheet.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, percentText, priceText } from './amounts.ts'
import './board-drawing.ts'
import { boundWords, cutLines } from './cut-words.ts'

const processWords = { 'rip-first': 'rip first, then crosscut', 'crosscut-first': 'crosscut first, then rip' }

/** Boards drawn at once; a longer list is opened by a button. */
const SHOWN = 24

/** What is counted where no money is. */
const whatCounts = ({ boards }: CutOrder): string =>
  boards.every(({ onHand }) => onHand)
    ? 'Nothing is bought: the wood that is used up counts, in board feet.'
    : 'No prices are entered: board feet count.'

/** A cutting plan: its figures, how good it is, and every board drawn with its cuts and numbered pieces. */
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
  @property({ attribute: false }) sheet!: CuttingSheet
  @state() private all = false

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { cut, order } = this
    const priced = countsMoney(order)
    return html`
      <div class="page">
        <dl class="figures">
          <div><dt>Boards</dt><dd>${cut.boards.length}</dd></div>
          <div><dt>Bought</dt><dd>${boardFeetText(cut.boardFeetBought)}</dd><dd class="note">as they measure</dd></div>
          <div><dt>Tallied</dt><dd>${boardFeetText(cut.boardFeetTallied)}</dd><dd class="note">by surface measure</dd></div>
          ${
            cut.boardFeetOnHand
              ? html`<div><dt>On hand</dt><dd>${boardFeetText(cut.boardFeetOnHand)}</dd><dd class="note">the shop’s own boards</dd></div>`
              : nothing
          }
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
        <p>${boundWords(cut, order.currency, priced)}${priced ? '' : html` <span class="soft">${whatCounts(order)}</span>`}</p>
        <p class="small soft">
          Kerf ${length(order.kerf, order.units)}, ${length(order.endTrim, order.units)} trimmed off each end,
          ${length(order.edgeTrim, order.units)} off each edge. Hatched is waste; offcuts of
          ${length(order.minOffcut, order.units)} and longer are kept.
        </p>
        ${this.boards()}
      </div>
    `
  }

  private boards() {
    const { boards } = this.sheet
    const shown = this.all ? boards : boards.slice(0, SHOWN)
    const more = boards.length - shown.length
    return html`${shown.map((board) => this.board(board))}
      ${
        more > 0
          ? html`<div class="buttons no-print">
              <button type="button" @click=${() => (this.all = true)}>Draw the other ${more} boards</button>
            </div>`
          : nothing
      }`
  }

  private board(board: SheetBoard) {
    const { units } = this.order
    const mm = (value: number) => length(value, units)
    const name = `${mm(board.width)} × ${mm(board.length)}, ${mm(board.thickness)} thick`
    const ordered = this.order.boards.find(({ key }) => key === board.key)
    const known = ordered ?? board
    const lines = cutLines(board, units, (acrosses) => ringText(known, acrosses))
    return html`
      <section class="board">
        <h3>Board ${board.number}: ${name}</h3>
        <p class="small soft">
          ${ordered?.count === null ? 'To buy; ' : `Board ${board.key}${board.onHand ? ', on hand' : ''}; `}${processWords[board.process]}; ${boardFeetText(board.boardFeet)}
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
