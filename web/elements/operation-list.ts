import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Profile } from '../../shared/profile/profile.ts'
import type { Operation } from '../../shared/route/operation.ts'
import { restText } from '../../shared/route/order-rows.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { operationGroups, rpmFigure, whereText } from './operation-words.ts'
import { SILHOUETTE_LENGTH, silhouetteOf } from './part-outlines.ts'
import './turned-part.ts'

/** The whole order of work as a list. Sends `operation-chosen` with the operation's place in the order. */
@customElement('operation-list')
export class OperationList extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      h2 {
        margin: var(--space-6) 0 var(--space-2);
      }
      h2:first-of-type {
        margin-top: 0;
      }
      table {
        table-layout: fixed;
      }
      .order {
        width: 3rem;
      }
      .where {
        width: 12rem;
      }
      .speed {
        width: 10.5rem;
      }
      .caliper,
      .rest {
        width: 7rem;
      }
      .time {
        width: 9.5rem;
      }
      turned-part {
        height: 2.5rem;
        margin-bottom: var(--space-1);
      }
      turned-part.slender {
        height: 1.25rem;
      }
      .name {
        font-weight: 650;
      }
      button.name {
        justify-content: start;
        width: 100%;
        margin-block: -0.625rem -0.5rem;
        padding: 0;
        border: 0;
        background: none;
        text-align: left;
        text-decoration: underline;
        text-decoration-color: var(--edge);
        text-underline-offset: 0.2em;
      }
      td > .small {
        margin-top: var(--space-1);
      }
      strong {
        font-size: 1.125rem;
        white-space: nowrap;
      }
      .caution {
        margin-top: var(--space-2);
        font-size: var(--size-small);
      }
      @media (max-width: 46rem) {
        table.stack .operation {
          display: block;
          text-align: left;
        }
        table.stack td:empty {
          display: none;
        }
        table.stack td.where {
          display: block;
          width: auto;
          text-align: left;
        }
        table.stack .speed,
        table.stack .caliper,
        table.stack .rest,
        table.stack .time {
          width: auto;
        }
        .order {
          display: none !important;
        }
      }
    `,
  ]

  @property({ attribute: false }) operations: readonly Operation[] = []
  @property({ attribute: false }) profile?: Profile
  @property() species = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** What minutes each are for: a piece, or a stick of several. */
  @property() each = 'a piece'

  private choose(index: number): void {
    this.dispatchEvent(new CustomEvent('operation-chosen', { detail: { index } }))
  }

  override render() {
    return operationGroups(this.operations).map(
      ({ heading, first, operations }) => html`
        <h2>${heading}</h2>
        <table class="stack">
          <thead>
            <tr>
              <th class="order" scope="col">No.</th>
              <th scope="col">Operation and tool</th>
              <th class="where" scope="col">Where on the part</th>
              <th class="speed" scope="col">Speed</th>
              <th class="caliper" scope="col">Caliper at</th>
              <th class="rest" scope="col">Tool rest</th>
              <th class="time number" scope="col">Time</th>
            </tr>
          </thead>
          <tbody>
            ${operations.map((operation, i) => this.row(operation, first + i))}
          </tbody>
        </table>
      `,
    )
  }

  private row(operation: Operation, index: number): TemplateResult {
    const length = (mm: number) => lengthText(mm, this.lengthStyle)
    return html`<tr id=${operation.key}>
      <td class="order">${index + 1}</td>
      <td class="operation">
        <button type="button" class="name" @click=${() => this.choose(index)}>${operation.name}</button>
        <p class="small">${operation.tool}</p>
        <p class="small soft">${operation.why}</p>
        ${operation.caution ? html`<p class="caution">${operation.caution}</p>` : nothing}
      </td>
      <td class="where">${this.where(operation)}</td>
      <td class="speed" data-label=${operation.rpmCeiling === undefined ? nothing : 'Speed'}>${speedCell(operation)}</td>
      <td class="caliper" data-label=${operation.caliper === undefined ? nothing : 'Caliper at'}>${operation.caliper === undefined ? nothing : html`<strong>${length(operation.caliper)}</strong>`}</td>
      <td class="rest" data-label=${restText(operation) === '' ? nothing : 'Tool rest'}>${restText(operation) === '' ? nothing : `position ${restText(operation)}`}</td>
      <td class="time number" data-label="Time">${timeCell(operation, this.each)}</td>
    </tr>`
  }

  /** So thin that a low strip shows all of it. */
  private slender(): boolean {
    return this.profile !== undefined && 2 * silhouetteOf(this.profile).half < 0.1 * SILHOUETTE_LENGTH
  }

  private where({ where }: Operation): TemplateResult | typeof nothing {
    if (!where || !this.profile) return nothing
    return html`<turned-part compact class=${this.slender() ? 'slender' : ''} orientation="horizontal" .profile=${this.profile} .species=${this.species} .highlight=${where}></turned-part>
      <p class="small">${whereText(where, this.lengthStyle)}</p>`
  }
}

function speedCell({ rpm, rpmCeiling, ceilingBy }: Operation): TemplateResult | typeof nothing {
  if (rpm === undefined && rpmCeiling === undefined) return nothing
  return html`<div>
    ${rpm === undefined ? html`<span class="mark under">no safe speed</span>` : html`<strong>${rpmFigure(rpm)} rpm</strong>`}
    ${rpmCeiling === undefined ? nothing : html`<p class="small soft">never above ${rpmFigure(rpmCeiling)} rpm${ceilingBy ? `: ${ceilingBy}` : ''}</p>`}
  </div>`
}

function timeCell({ minutesOnce, minutesEach }: Operation, each: string): TemplateResult {
  return html`<div>
    ${minutesOnce > 0 ? html`<div>${minutesText(minutesOnce)} <span class="small soft">once</span></div>` : nothing}
    ${minutesEach > 0 ? html`<div>${minutesText(minutesEach)} <span class="small soft">${each}</span></div>` : nothing}
  </div>`
}

declare global {
  interface HTMLElementTagNameMap {
    'operation-list': OperationList
  }
}
