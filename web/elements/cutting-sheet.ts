import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { countsMoney } from '../../shared/cutting/prices.ts'
import { riftWords } from '../../shared/cutting/rift-places.ts'
import { sameBoardWords } from '../../shared/cutting/same-board-words.ts'
import { sawOrder, settingsOf } from '../../shared/cutting/saw-order.ts'
import {
  piecesText,
  type CuttingSheet as Sheet,
  setBoardText,
  sparesText,
} from '../../shared/cutting/sheet.ts'
import { type Plan, partsOf, sheetOf, togetherOf } from '../../shared/plan.ts'
import { SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, priceText } from './amounts.ts'
import { boardNumbers, settingWords } from './cut-words.ts'
import './cut-list.ts'

/** How the boards of a plan are sawn: fence by fence, then board by board, with every piece by its number. */
@customElement('cutting-sheet')
export class CuttingSheet extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ol {
        padding-left: 1.75rem;
        display: grid;
        gap: var(--space-2);
      }
      .setting {
        font-weight: 650;
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const sheet = sheetOf(this.plan)
    const { cut, cutOrder } = this.plan
    return html`
      <div class="page">
        ${this.together(sheet)}
        ${this.plan.job.grain === 'rift' ? html`<p>${riftWords}</p>` : nothing} ${this.uncut(sheet)} ${this.atTheSaw(sheet)}
        <cut-list .cut=${cut} .order=${cutOrder} .sheet=${sheet}></cut-list>
      </div>
    `
  }

  private together(sheet: Sheet) {
    const { job, blank, cut, cutOrder } = this.plan
    if (!job.match && blank.layers === 1) return nothing
    const money = countsMoney(cutOrder)
    const amount = (cost: number) => (money ? priceText(cost, cutOrder.currency) : boardFeetText(cost))
    const words = sameBoardWords(cutOrder, cut, togetherOf(this.plan), amount)
    const text = [setBoardText(sheet, job.quantity), ...words].filter(Boolean).join(' ')
    return text === '' ? nothing : html`<p>${text}</p>`
  }

  private uncut({ uncut }: Sheet) {
    if (uncut.length === 0) return nothing
    return html`<p class="problem">No wood is cut for ${uncut.length === 1 ? 'piece' : 'pieces'}
      ${piecesText(uncut.map((number) => ({ label: String(number) })))}.</p>`
  }

  private atTheSaw(sheet: Sheet) {
    const { units } = this.plan.job
    const order = sawOrder(sheet)
    if (order.length === 0) return nothing
    const times = settingsOf(order)
    return html`
      <section>
        <h3>At the saw: ${times} ${times === 1 ? 'setting' : 'settings'}</h3>
        <ol>
          ${order.map(
            (setting) => html`<li>
              <span class="setting">${settingWords(setting, units)}</span>: ${setting.count}
              ${setting.count === 1 ? setting.what.slice(0, -1) : setting.what} from ${boardNumbers(setting.boards)}
            </li>`,
          )}
        </ol>
        <p class="caution">
          <span>Guard and riving knife on, push stick at hand, hearing and dust protection; the saw maker’s
          instructions come first. Rip slightly wide where a strip springs, and let it rest before planing.</span>
        </p>
        <p class="small soft">
          The number on each blank is the piece it becomes when the batch starts; layers of one glue-up say a, b, c.
          Mark it on the butt end before the blank leaves its strip: the foot, unless the set layout says otherwise.
          ${sparesText(partsOf(this.plan), this.plan.job.quantity)}
        </p>
      </section>
    `
  }
}
