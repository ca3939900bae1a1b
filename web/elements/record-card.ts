import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type BatchTimes, type OperationTimes, percentOver } from '../../shared/estimate/planned-actual.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'

/** How far the actual is from the planned: `12 % over`. */
export function overText(planned: number, actual: number): string {
  const percent = percentOver(planned, actual)
  if (percent === undefined) return ''
  return percent === 0 ? 'as planned' : `${Math.abs(percent)} % ${percent > 0 ? 'over' : 'under'}`
}

/** What was planned for the pieces that were timed, and what they took, operation by operation. */
@customElement('record-card')
export class RecordCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        width: 100%;
      }
      tbody th {
        font-weight: inherit;
        white-space: normal;
      }
      .number {
        white-space: nowrap;
        vertical-align: top;
      }
      .note td {
        padding-top: 0;
        border-top: 0;
      }
      @media (max-width: 40rem) {
        .wide {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) times?: BatchTimes

  override render() {
    const { times } = this
    if (!times) return nothing
    return html`<section class="card" aria-label="Planned against actual">
      <h2>Planned against actual</h2>
      ${times.timed === 0 ? html`<p class="soft">Log minutes with a step, and they stand here beside the plan. They also teach the plans to come how long things take in this shop.</p>` : this.told(times)}
    </section>`
  }

  private told({ operations, planned, actual, timed, done }: BatchTimes): TemplateResult {
    return html`
      <dl class="figures">
        <div><dt>Planned</dt><dd>${minutesText(planned)}</dd></div>
        <div><dt>Actual</dt><dd>${minutesText(actual)}</dd><dd class="note">${overText(planned, actual)}</dd></div>
        <div><dt>Timed</dt><dd>${timed}</dd><dd class="note">of ${done} ${done === 1 ? 'step' : 'steps'} logged</dd></div>
      </dl>
      <div class="scroll" tabindex="0" role="group" aria-label="By operation">
        <table>
          <thead><tr><th scope="col">Operation</th><th scope="col" class="number wide">Timed</th><th scope="col" class="number">Planned</th><th scope="col" class="number">Actual</th></tr></thead>
          <tbody>${operations.filter((operation) => operation.timed > 0).map(row)}</tbody>
        </table>
      </div>
      <p class="hint">Minutes of the pieces whose time is known, each at its place on the learning curve. Plans made from now on go by them: a little after one batch, nearly whole after five.</p>
    `
  }
}

function row({ name, done, timed, planned, actual, setAside }: OperationTimes): TemplateResult {
  return html`<tr>
      <th scope="row">${name}</th>
      <td class="number wide">${timed} of ${done}</td>
      <td class="number">${minutesText(planned)}</td>
      <td class="number">${minutesText(actual)}<br /><span class="small soft">${overText(planned, actual)}</span></td>
    </tr>
    ${setAside > 0 ? html`<tr class="note"><td colspan="4" class="small soft">${setAside === 1 ? 'One time is' : `${setAside} times are`} so far from the others that the plans to come leave ${setAside === 1 ? 'it' : 'them'} aside: look whether a watch was forgotten.</td></tr>` : nothing}`
}

declare global {
  interface HTMLElementTagNameMap {
    'record-card': RecordCard
  }
}
