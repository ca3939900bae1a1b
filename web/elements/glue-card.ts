import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { FEATHER_ANGLE } from '../../shared/blank/feather-edges.ts'
import type { GlueChoice } from '../../shared/glue-choices.ts'
import type { Plan } from '../../shared/plan.ts'
import { nm } from '../../shared/units/length.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, hours, priceText } from './amounts.ts'
import './glue-drawing.ts'

/** How the layers of a blank lie, and what solid stock or another thickness would ask instead. */
@customElement('glue-card')
export class GlueCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      tr.chosen {
        background: var(--accent-wash);
      }
      tbody th .mark {
        margin-left: var(--space-2);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  /** What there is to choose from; none where the plan is frozen. */
  @property({ attribute: false }) choices: readonly GlueChoice[] = []

  constructor() {
    super()
    new SessionController(this)
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  override render() {
    return html`<div class="page">${this.layers()} ${this.table()}</div>`
  }

  private layers() {
    const { blank, job } = this.plan
    const { glueUp } = blank
    if (!glueUp)
      return html`<p>Each square is sawn in one piece of ${blank.nominal ?? 'stock'}: there is no glue line.</p>`
    const { layers, middle, outer, lines, feathers } = glueUp
    const apart = nm(middle) !== nm(outer)
    return html`
      <glue-drawing .plan=${this.plan} .glueUp=${glueUp} .lengthStyle=${lengthStyle(job.units)}></glue-drawing>
      <dl class="figures">
        <div>
          <dt>Layers</dt>
          <dd>${layers}</dd>
          <dd class="note">
            ${apart ? `the middle one ${this.mm(middle)}, the others ${this.mm(outer)}` : `each ${this.mm(outer)}`} when planed
          </dd>
        </div>
        <div>
          <dt>Glue lines off the axis</dt>
          <dd>${lines.map((line) => (line === 0 ? 'on it' : this.mm(line))).join(', ')}</dd>
          <dd class="note">${layers % 2 === 1 ? 'none through a centre' : 'one through both centres: drive with a cup'}</dd>
        </div>
        <div>
          <dt>Feather edges</dt>
          <dd>${feathers.length === 0 ? 'none' : feathers.some(({ neck }) => neck) ? 'in a neck' : 'clear of necks'}</dd>
          <dd class="note">
            lines that surface under ${FEATHER_ANGLE}° (common practice, no source)${feathers.length > 0 ? '; red in the drawing' : ''}
          </dd>
        </div>
      </dl>
    `
  }

  private table() {
    if (this.choices.length < 2) return nothing
    const priced = this.choices.some(({ cost }) => cost !== undefined)
    return html`
      <div>
        <h3>Solid or glued up</h3>
        <table class="stack">
          <caption>
            For the batch, bought at the yard, spares among it; wood with the shop’s extra, work with its rest.
          </caption>
          <thead>
            <tr>
              <th scope="col">Stock</th>
              <th scope="col" class="number">Boards</th>
              <th scope="col" class="number">Wood</th>
              <th scope="col" class="number">Gluing</th>
              <th scope="col" class="number">Wood and work</th>
              <th scope="col" class="number">Waiting</th>
              <th scope="col">Glue lines</th>
            </tr>
          </thead>
          <tbody>
            ${this.choices.map((choice) => this.row(choice))}
          </tbody>
        </table>
        ${
          priced
            ? nothing
            : html`<p class="small soft">Prices per board foot on the <a href="/shop">Shop page</a> make a comparison in money of it.</p>`
        }
      </div>
    `
  }

  private row(choice: GlueChoice) {
    const { nominal, surfaced, layers, chosen, listed, boardFeet, unmet, gluing, waitDays } = choice
    const currency = this.plan.cutOrder.currency
    const money = (amount: number | undefined) =>
      amount === undefined ? 'no price' : priceText(amount, currency)
    return html`<tr class=${chosen ? 'chosen' : ''}>
      <th scope="row">
        ${nominal}${surfaced ? ' surfaced' : ''}, ${layers === 1 ? 'solid' : `${layers} layers`}${
          chosen ? html`<span class="mark going">the plan</span>` : nothing
        }${listed ? nothing : html`<span class="mark">ask the yard</span>`}
      </th>
      <td class="number" data-label="Boards">
        ${unmet > 0 ? `${unmet} blanks not to be had` : boardFeetText(boardFeet.bought)}
      </td>
      <td class="number" data-label="Wood">${this.wood(choice, money)}</td>
      <td class="number" data-label="Gluing">
        ${layers === 1 ? 'none' : `${hours(gluing.minutes)} h, ${money(gluing.cost)}`}
      </td>
      <td class="number" data-label="Wood and work">${money(choice.cost)}</td>
      <td class="number" data-label="Waiting">${waitDays} ${waitDays === 1 ? 'day' : 'days'}</td>
      <td data-label="Glue lines">${this.lines(choice)}</td>
    </tr>`
  }

  private wood({ wood, paysTo }: GlueChoice, money: (amount: number) => string) {
    if (wood !== undefined) return money(wood)
    return paysTo === undefined ? 'no price' : `pays up to ${money(paysTo)} a bd ft`
  }

  private lines({ layers, featheredNecks }: GlueChoice) {
    if (layers === 1) return 'none'
    return featheredNecks === 0
      ? 'clear of necks'
      : html`<span class="mark over">feather edge in a neck</span>`
  }
}
