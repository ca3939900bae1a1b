import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { YardList } from '../../shared/cutting/yard-list.ts'
import type { Units } from '../../shared/units/length.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, percentText } from './amounts.ts'

/** What to ask the yard for, and how the figure comes about. */
@customElement('yard-card')
export class YardCard extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) yard!: YardList
  @property() wood = ''
  @property() units: Units = 'in'

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { yard } = this
    const { boardFeet } = yard
    return html`
      <div class="page">
        <p class="figure">${boardFeet.ask} <span class="unit">bd ft</span></p>
        <p>
          of ${this.wood}, ${yard.gradeName}${yard.nominal ? html`, ${yard.nominal}` : nothing}, measuring
          ${length(yard.leastThickness, this.units)} thick and ${length(yard.leastWidth, this.units)} wide at least
        </p>
        <p class="small soft">
          ${boardFeetText(boardFeet.net)} in the blanks; ${boardFeetText(boardFeet.geometric)} at
          ${percentText(yard.geometricYield)} for how they lie on boards; ${boardFeetText(boardFeet.grade)} at
          ${percentText(yard.gradeYield)} for the grade; and ${percentText(yard.extra)} extra for choice.
        </p>
        ${
          yard.bestLengths.length > 0
            ? html`<p>
              Lengths that waste least:
              ${yard.bestLengths
                .slice(0, 4)
                .map(({ lengthFt, waste }) => `${lengthFt} ft (${percentText(waste)} wasted)`)
                .join(', ')}.
            </p>`
            : nothing
        }
        <ul class="small">${yard.notes.map((note) => html`<li>${note}</li>`)}</ul>
      </div>
    `
  }
}
