import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import {
  type CaliperRow,
  type CaliperSheet,
  caliperSheets,
  resetWords,
  type SizingTurn,
} from '../../shared/turning/caliper-sheet.ts'
import type { Gauges } from '../../shared/turning/gauges.ts'
import { sumText } from '../../shared/turning/setting-words.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { stationName } from './operation-words.ts'
import type { PrintLink } from './prints-card.ts'

type Planned = Pick<Plan, 'calipers' | 'job' | 'blank'>

/**
 * What the calipers are set to in the order of work, with which caliper on which piece, and whether preset gauges pay.
 * Properties in; it sends nothing.
 */
@customElement('caliper-plan')
export class CaliperPlan extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .card {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
      .setting {
        font-size: var(--size-large);
        font-weight: 650;
        white-space: nowrap;
      }
      td .small {
        font-weight: 400;
      }
      td,
      tbody th {
        vertical-align: top;
      }
      .turn {
        white-space: nowrap;
      }
      .set {
        padding: 0 var(--space-2);
        border-radius: var(--round);
        background: var(--ink);
        color: var(--sheet);
        font-weight: 650;
      }
      @media (max-width: 46rem) {
        table.stack td.places {
          display: block;
          text-align: left;
        }
      }
      @media print {
        .set {
          outline: 1px solid;
          print-color-adjust: exact;
        }
      }
    `,
  ]

  @property({ attribute: false }) plan?: Planned
  /** Prints of the card and of the gauges. */
  @property({ attribute: false }) prints: readonly PrintLink[] = []

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    if (!this.plan) return nothing
    const planned = this.plan
    const { calipers, blank } = planned
    const sheets = caliperSheets(calipers, blank.count)
    if (sheets.length === 0)
      return html`<section class="card"><h2>Calipers</h2><p>No diameter of this part needs a caliper set for it.</p></section>`
    const { count } = calipers
    return html`<section class="card">
      <h2>Calipers</h2>
      <p>With ${count} ${count === 1 ? 'caliper' : 'calipers'}: ${resetWords(calipers, blank.count)}.</p>
      ${sheets.map((sheet, i) => html`${sheets.length > 1 ? html`<h3>Mounting ${i + 1} with sizing cuts</h3>` : nothing}${this.settings(sheet, planned)}`)}
      ${sheets[0]!.rows[0]!.turns[0]!.caliper ? LEGEND : nothing}
      ${calipers.gauges ? this.gauges(calipers.gauges, planned) : nothing}
      <p class="caution">Stop the lathe to gauge; only spring calipers with rounded tips ever ride on turning work.</p>
      ${
        this.prints.length === 0
          ? nothing
          : html`<p class="buttons no-print">${this.prints.map(
              ({ href, name }) =>
                html`<a class="button" href=${href} target="_blank" rel="noopener">${name}</a>`,
            )}</p>`
      }
    </section>`
  }

  private settings({ rounds, rows }: CaliperSheet, plan: Planned): TemplateResult {
    return html`<table class="stack">
      <thead><tr><th scope="col">Set to</th><th scope="col">For</th>${rounds.map((pieces) => html`<th scope="col">${pieces}</th>`)}</tr></thead>
      <tbody>${rows.map((row) => this.row(row, rounds, plan))}</tbody>
    </table>`
  }

  private row(
    { diameter, stations, sums, turns }: CaliperRow,
    rounds: string[],
    { job }: Planned,
  ): TemplateResult {
    const names = [...new Set(stations.map((key) => stationName(job.profile, key)))].join(', ')
    return html`<tr>
      <th scope="row" class="setting">${length(diameter, job.units)}</th>
      <td class="places">${names}${sums.map((sum) => html`<br /><span class="small soft">${sumText(sum, lengthStyle(job.units))}</span>`)}</td>
      ${turns.map((turn, i) => html`<td class="turn" data-label=${rounds[i]!}>${turnText(turn)}</td>`)}
    </tr>`
  }

  private gauges({ minutes, resetMinutes, paysFrom, few, why }: Gauges, { job }: Planned): TemplateResult {
    return html`<h3>Preset gauges</h3>
      <dl class="figures">
        <div><dt>A gauge for each size</dt><dd>${minutesText(minutes)}</dd><dd class="note">to make</dd></div>
        <div><dt>Setting calipers instead</dt><dd>${minutesText(resetMinutes)}</dd><dd class="note">the batch</dd></div>
        ${paysFrom === undefined ? nothing : html`<div><dt>Gauges pay from</dt><dd>${paysFrom} ${paysFrom === 1 ? 'blank' : 'blanks'}</dd></div>`}
      </dl>
      <p class="small soft">${why}</p>
      ${
        few?.pays
          ? html`<p>Quickest here: ${few.diameters.length === 1 ? 'a gauge' : 'gauges'} for ${few.diameters.map((mm) => length(mm, job.units)).join(', ')}, and a caliper left set for each other size: ${minutesText(few.minutes)}.</p>`
          : nothing
      }`
  }
}

const LEGEND = html`<p class="small soft">The number is the place among the sizing cuts of a piece, the letter the caliper: “set A” is set anew before the cut, “A” stands there already.</p>`

function turnText({ place, caliper, reset }: SizingTurn): TemplateResult {
  if (!caliper) return html`${place}`
  return html`<span>${place} · ${reset ? html`<span class="set">set ${caliper}</span>` : caliper}</span>`
}

declare global {
  interface HTMLElementTagNameMap {
    'caliper-plan': CaliperPlan
  }
}
