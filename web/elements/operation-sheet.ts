import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Operation } from '../../shared/route/operation.ts'
import {
  ceilingReasons,
  type OrderRow,
  orderRows,
  reasonLetter,
  rowCautions,
  rowMinutes,
  rowNumber,
  rowText,
} from '../../shared/route/order-rows.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'

/**
 * The whole order of work on one sheet of paper, in two columns: what sets the lathe once for all operations at that
 * setting, a caution once, with the number of its row wherever it holds again.
 */
@customElement('operation-sheet')
export class OperationSheet extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .order {
        columns: 2;
        column-gap: 5mm;
        font-size: 8pt;
        line-height: 1.15;
      }
      section {
        break-inside: avoid;
        border-bottom: 0.25pt solid #000;
      }
      h2,
      h3 {
        padding: 0.3pt 2pt;
        font-family: var(--sans);
        font-size: inherit;
        font-weight: 700;
        line-height: inherit;
        text-wrap: wrap;
        print-color-adjust: exact;
        -webkit-print-color-adjust: exact;
      }
      h2 {
        margin-top: 2pt;
        background: #222;
        color: #fff;
      }
      h3 {
        background: #e4e4e4;
        color: #000;
      }
      .row {
        display: grid;
        grid-template-columns: 2em minmax(0, 1fr) auto auto;
        gap: 0 0.6em;
      }
      .row.several {
        grid-template-columns: 3.6em minmax(0, 1fr) auto auto;
      }
      .row > * {
        white-space: nowrap;
      }
      .row > .words {
        white-space: normal;
      }
      .mind,
      .caliper {
        font-weight: 700;
      }
      .mind {
        padding-left: 2.6em;
      }
      .notes {
        padding-top: 2pt;
      }
    `,
  ]

  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** What minutes are for: a piece, or a stick of several. */
  @property() each = 'a piece'

  override render() {
    const said = new Map<string, number>()
    return html`<div class="order">${orderRows(this.operations).map((row) => this.row(row, said))} ${this.notes()}</div>`
  }

  private row(row: OrderRow, said: Map<string, number>): TemplateResult {
    const { heading, setting, setAnew, operations, first } = row
    const { fresh, before } = rowCautions(row, said)
    for (const sentence of fresh) said.set(sentence, first)
    const minutes = rowMinutes(row)
    const caliper = operations[0].caliper
    return html`<section>
      ${heading ? html`<h2>${heading}</h2>` : nothing}
      ${setAnew ? html`<h3>${setting}</h3>` : nothing}
      <div class="row ${operations.length > 1 ? 'several' : ''}">
        <span>${rowNumber(row)}</span>
        <span class="words">${rowText(row, this.lengthStyle)}${before.length > 0 ? ` ▲\u00a0${before.join(',\u00a0')}` : nothing}</span>
        <span class="caliper">${caliper === undefined ? nothing : `⌀ ${lengthText(caliper, this.lengthStyle)}`}</span>
        <span>${minutes > 0 ? minutesText(minutes) : nothing}</span>
      </div>
      ${fresh.length > 0 ? html`<p class="mind">▲ ${fresh.join(' ')}</p>` : nothing}
    </section>`
  }

  private notes(): TemplateResult {
    const reasons = ceilingReasons(this.operations).map((reason, i) => `${reasonLetter(i)}: ${reason}`)
    return html`<p class="notes">Lengths from the foot; ⌀ caliper setting; rest: position of the tool rest; minutes for ${this.each}; ▲ with a number: what is written there to mind holds again.
      ${reasons.length > 0 ? `Never run above the ceiling, which comes from ${reasons.join('; ')}. The lathe maker’s limits come first.` : nothing}</p>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'operation-sheet': OperationSheet
  }
}
