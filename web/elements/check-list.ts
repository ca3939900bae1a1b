import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import type { CheckStation } from '../../shared/profile/check-stations.ts'
import { figure, length, lengthUnit, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { checkName } from './operation-words.ts'

/** Where the calipers go, with target and tolerance, and why a place is a poor one. */
@customElement('check-list')
export class CheckList extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { checkStations, job } = this.plan
    if (checkStations.length === 0)
      return html`<p class="caution"><span>No place on this part can be reached by caliper jaws ${length(job.instrument.jawWidth, job.units)} wide.</span></p>`
    const unit = lengthUnit(job.units)
    return html`
      <table class="stack">
        <caption>
          ${checkStations[0]!.chosen === 'auto' ? 'Chosen from the profile; mark stations to choose your own' : 'As marked'}
        </caption>
        <thead>
          <tr>
            <th scope="col">Station</th>
            <th scope="col" class="number">At, ${unit}</th>
            <th scope="col" class="number">Target, ${unit}</th>
            <th scope="col" class="number">Tolerance, ${unit}</th>
          </tr>
        </thead>
        <tbody>
          ${checkStations.map((station) => this.row(station))}
        </tbody>
      </table>
    `
  }

  private row(station: CheckStation) {
    const { units } = this.plan.job
    const mm = (value: number) => figure(value, units)
    const tolerance =
      mm(station.plus) === mm(station.minus)
        ? `±${mm(station.plus)}`
        : `+${mm(station.plus)} −${mm(station.minus)}`
    const unit = lengthUnit(units)
    return html`
      <tr>
        <th scope="row">
          ${checkName(station, this.plan.job.profile)}
          ${station.fixed ? html` <span class="mark">fixed</span>` : nothing}
        </th>
        <td class="number" data-label="At, ${unit}">${mm(station.at)}</td>
        <td class="number" data-label="Target, ${unit}">${station.kind === 'side' ? '□' : 'Ø'} ${mm(station.target)}</td>
        <td class="number" data-label="Tolerance, ${unit}">${tolerance}</td>
      </tr>
      ${
        station.caution
          ? html`<tr>
            <td colspan="4">
              <p class="caution small">
                <span>${station.caution}${station.better === undefined ? nothing : html` Better at ${length(station.better, units)}.`}</span>
              </p>
            </td>
          </tr>`
          : nothing
      }
    `
  }
}
