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
  /** Board feet of the boards in the cut list, and what of them is kept. */
  @property({ type: Number }) bought = 0
  @property({ type: Number }) offcuts = 0
  @property() wood = ''
  @property() units: Units = 'in'

  constructor() {
    super()
    new SessionController(this)
  }

  /** Why the cut list comes to another figure, and which of them counts. */
  private besides() {
    if (this.bought <= 0) return nothing
    const kept =
      this.offcuts > 0
        ? ` ${this.offcuts === 1 ? 'One offcut' : `${this.offcuts} offcuts`} worth keeping ${this.offcuts === 1 ? 'is' : 'are'} part of that.`
        : ''
    return html`<p class="small">
      The cut list below comes to ${boardFeetText(this.bought)}: it takes whole boards of the usual sizes, clear all
      over, while this figure counts the grade’s yield and the extra. Bring home the larger of the two.${kept}
    </p>`
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
        ${this.besides()}
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
