import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Operation } from '../../shared/route/operation.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { cautionsOf, operationGroups, rpmFigure, whereText } from './operation-words.ts'

/** The whole order of work on paper: one close table, each caution once below it under its number. */
@customElement('operation-sheet')
export class OperationSheet extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      table,
      ol {
        font-size: 9pt;
        line-height: 1.25;
      }
      th,
      td {
        padding: 0.15rem 0.35rem;
        font-size: inherit;
      }
      tbody th {
        padding-top: 0.5rem;
        font-family: var(--serif);
        font-size: 10pt;
        break-after: avoid;
      }
      .name {
        font-weight: 650;
      }
      .close {
        white-space: nowrap;
      }
      sup {
        font-weight: 700;
      }
      h2 {
        margin-top: var(--space-3);
        font-size: 11pt;
        break-after: avoid;
      }
      ol {
        padding-left: 2rem;
      }
      li {
        break-inside: avoid;
      }
    `,
  ]

  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** What minutes each are for: a piece, or a stick of several. */
  @property() each = 'a piece'

  override render() {
    const cautions = cautionsOf(this.operations)
    return html`<table>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Operation</th>
            <th scope="col">Tool</th>
            <th scope="col">From the foot</th>
            <th scope="col">rpm (ceiling)</th>
            <th scope="col">Caliper at</th>
            <th scope="col">Rest</th>
            <th scope="col">Time once</th>
            <th scope="col">Time ${this.each}</th>
          </tr>
        </thead>
        <tbody>${operationGroups(this.operations).map(
          ({ heading, first, operations }) =>
            html`<tr><th scope="rowgroup" colspan="9">${heading}</th></tr>${operations.map((operation, i) => this.row(operation, first + i, cautions))}`,
        )}</tbody>
      </table>
      ${cautions.length === 0 ? nothing : html`<h2>Cautions</h2><ol>${cautions.map((caution) => html`<li>${caution}</li>`)}</ol>`}`
  }

  private row(operation: Operation, index: number, cautions: readonly string[]): TemplateResult {
    const { name, tool, where, rpm, rpmCeiling, caliper, restPosition, caution, minutesOnce, minutesEach } =
      operation
    const number = caution ? cautions.indexOf(caution) + 1 : 0
    return html`<tr>
      <td>${index + 1}</td>
      <td><span class="name">${name}</span>${number > 0 ? html` <sup>▲${number}</sup>` : nothing}</td>
      <td>${tool}</td>
      <td>${where ? whereText(where, this.lengthStyle) : nothing}</td>
      <td class="close">${speedText(rpm, rpmCeiling)}</td>
      <td class="close">${caliper === undefined ? nothing : lengthText(caliper, this.lengthStyle)}</td>
      <td>${restPosition ?? nothing}</td>
      <td class="close">${minutesOnce > 0 ? minutesText(minutesOnce) : nothing}</td>
      <td class="close">${minutesEach > 0 ? minutesText(minutesEach) : nothing}</td>
    </tr>`
  }
}

function speedText(rpm: number | undefined, ceiling: number | undefined): string {
  if (rpm === undefined) return ceiling === undefined ? '' : `no safe speed (${rpmFigure(ceiling)})`
  return ceiling === undefined ? rpmFigure(rpm) : `${rpmFigure(rpm)} (${rpmFigure(ceiling)})`
}

declare global {
  interface HTMLElementTagNameMap {
    'operation-sheet': OperationSheet
  }
}
