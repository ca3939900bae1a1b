import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { KindRecord, ShopRecord } from '../../shared/estimate/record.ts'
import { pageWear } from '../styles/all.ts'

const times = (factor: number): string => `× ${factor.toFixed(2)}`
const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

/** What the minutes logged on the rack say of the shop: the factor of every kind of operation that was timed. */
@customElement('shop-record')
export class ShopRecordCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      table {
        width: 100%;
      }
      tbody th {
        font-weight: inherit;
      }
      @media (max-width: 40rem) {
        .wide {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) record?: ShopRecord

  override render() {
    const { record } = this
    if (!record) return nothing
    return html`<section class="card" aria-label="What your own times say">
      <h2>What your own times say</h2>
      ${record.times === 0 ? html`<p>No minutes are logged yet. Log them with the steps on a rack, and plans to come go by them: one time moves a figure by 5 % at most, five batches make it yours.</p>` : told(record)}
    </section>`
  }
}

function told(record: ShopRecord): TemplateResult {
  const { batches, times: all, setAside, overall, spread } = record
  const percent = (sd: number): string => `${Math.round(sd * 100)} %`
  return html`
    <p>From ${counted(batches, 'batch', 'batches')} with ${counted(all, 'time')}${setAside > 0 ? html`; ${setAside === 1 ? 'one of them lies so far from the others that it does' : `${setAside} of them lie so far from the others that they do`} not count` : nothing}. Kinds that were never timed go by ${times(overall)} of what is set, as the shop goes as a whole.</p>
    <table>
      <caption class="hidden-label">Factors on usual minutes</caption>
      <thead><tr><th scope="col">Operation</th><th scope="col" class="number wide">Set</th><th scope="col" class="number wide">Times alone</th><th scope="col" class="number">Planned by</th><th scope="col" class="number">From</th></tr></thead>
      <tbody>${(Object.entries(record.kinds) as [string, KindRecord][]).map(row)}</tbody>
    </table>
    <p class="hint">Each factor multiplies usual minutes. It starts at what is set above, or 1, and moves towards what the times alone say as batches come in. A whole batch strays ${percent(spread.common)} from its plan, a single piece ${percent(spread.each)}: that makes the range of an estimate. To leave a time out, take its step back on the rack.</p>
  `
}

const row = ([kind, own]: [string, KindRecord]): TemplateResult => html`<tr>
  <th scope="row">${kind.replaceAll('-', ' ')}</th>
  <td class="number wide">${times(own.default)}</td>
  <td class="number wide">${times(own.own)}</td>
  <td class="number"><strong>${times(own.factor)}</strong></td>
  <td class="number">${counted(own.batches, 'batch', 'batches')}<br /><span class="small soft">${counted(own.times, 'time')}</span></td>
</tr>`

declare global {
  interface HTMLElementTagNameMap {
    'shop-record': ShopRecordCard
  }
}
