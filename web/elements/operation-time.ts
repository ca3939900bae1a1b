import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { elapsedDays } from '../../shared/estimate/elapsed-text.ts'
import type { BatchTime } from '../../shared/estimate/time.ts'
import type { TimeTrust } from '../../shared/estimate/trust.ts'
import type { Stage } from '../../shared/route/operation.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { stageNames } from './operation-words.ts'

const days = (n: number): string => `${Math.round(n * 10) / 10} ${Math.round(n * 10) === 10 ? 'day' : 'days'}`

/** The time of a batch: the whole with its range, the first and the last piece, and where it goes. */
@customElement('operation-time')
export class OperationTime extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .range {
        width: 100%;
        height: 3.25rem;
        overflow: visible;
      }
      .range .band {
        fill: var(--accent-wash);
        stroke: var(--accent);
      }
      .range .middle {
        stroke: var(--accent);
        stroke-width: 3;
      }
      .bar {
        width: 100%;
        height: 1rem;
      }
      .bar rect {
        fill: var(--wood);
      }
      .share {
        width: 45%;
      }
      td,
      tbody th {
        vertical-align: middle;
      }
    `,
  ]

  @property({ attribute: false }) time?: BatchTime & { trust?: TimeTrust }
  @property({ type: Number }) pieces = 0

  override render() {
    const time = this.time
    if (!time) return html`<p class="soft">No time worked out yet.</p>`
    const stages = (Object.entries(time.byStage) as [Stage, number][]).filter(([, minutes]) => minutes > 0)
    const most = Math.max(...stages.map(([, minutes]) => minutes))
    return html`<div class="page">
      <dl class="figures">
        ${this.figure('Whole batch', minutesText(time.minutes), `${this.pieces} pieces, spares among them`)}
        ${this.figure('A piece', minutesText(time.perPiece), 'with its share of the set-up')}
        ${this.figure('First piece', minutesText(time.first), 'worked by itself')}
        ${this.figure('Last piece', minutesText(time.last), 'the hand has learnt by then')}
        ${this.figure('Elapsed', elapsedDays(time.elapsed), `${time.elapsed.why}${this.daysRange(time)}`)}
      </dl>
      ${this.range(time)}
      ${time.trust ? html`<p class="small"><strong>How far to trust it.</strong> ${time.trust.why}</p>` : nothing}
      <table>
        <caption>Where the time goes</caption>
        <thead class="hidden-label"><tr><th scope="col">Stage</th><th scope="col">Time</th><th scope="col">Share</th></tr></thead>
        <tbody>
          ${stages.map(
            ([stage, minutes]) => html`<tr>
              <th scope="row">${stageNames[stage]}</th>
              <td class="number">${minutesText(minutes)}</td>
              <td class="share">
                <svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><rect width=${(100 * minutes) / most} height="10"></rect></svg>
              </td>
            </tr>`,
          )}
        </tbody>
      </table>
    </div>`
  }

  private figure(name: string, value: string, note: string) {
    return html`<div><dt>${name}</dt><dd>${value}</dd><dd class="note">${note}</dd></div>`
  }

  /** Days of ten batches; plans frozen before they were kept have none. */
  private daysRange({ elapsed: { p10, p50, p90 } }: BatchTime): string {
    if (p10 === undefined || p90 === undefined) return ''
    return p10 === p90
      ? ''
      : `. One batch in ten takes ${days(p10)}, half of them ${days(p50!)}, nine in ten ${days(p90)} at most`
  }

  private range({ p10, p50, p90 }: BatchTime) {
    const reach = p90 * 1.08
    const x = (minutes: number) => `${(100 * minutes) / reach}%`
    return html`<figure>
      <svg class="range" role="img" aria-label="One batch in ten is done in ${minutesText(p10)}, half of them in ${minutesText(p50)}, nine in ten in ${minutesText(p90)}">
        <line x1="0" x2="100%" y1="12" y2="12" stroke="currentColor" stroke-opacity="0.3"></line>
        <rect class="band" x=${x(p10)} y="4" width=${x(p90 - p10)} height="16"></rect>
        ${svg`<line class="middle" x1=${x(p50)} x2=${x(p50)} y1="2" y2="22"></line>`}
      </svg>
      <figcaption class="small">One batch in ten is done in <strong>${minutesText(p10)}</strong>, half of them in <strong>${minutesText(p50)}</strong>, nine in ten in <strong>${minutesText(p90)}</strong>.</figcaption>
    </figure>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'operation-time': OperationTime
  }
}
