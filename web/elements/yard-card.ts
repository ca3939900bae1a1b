import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { YardList } from '../../shared/cutting/yard-list.ts'
import type { Units } from '../../shared/units/length.ts'
import { lumberPathFor } from '../router.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText } from './amounts.ts'
import './lumber-list.ts'

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
  @property() currency = 'USD'
  /** The job it is asked for. */
  @property() jobId = ''

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
    // A plan frozen before lists said what the wood must be has only the figures.
    const isWhole = 'grades' in this.yard
    return html`
      <div class="page">
        ${
          isWhole
            ? html`<lumber-list .list=${this.yard} .wood=${this.wood} .units=${this.units} .currency=${this.currency}></lumber-list>`
            : this.figures()
        }
        ${this.besides()}
        ${
          this.jobId
            ? html`<p class="no-print"><a href=${lumberPathFor([this.jobId])}>Ask for this and other jobs together</a></p>`
            : nothing
        }
      </div>
    `
  }

  private figures() {
    const { boardFeet, gradeName, nominal, leastThickness, leastWidth, notes } = this.yard
    return html`
      <p class="figure">${boardFeet.ask} <span class="unit">bd ft</span></p>
      <p>
        of ${this.wood}, ${gradeName}${nominal ? html`, ${nominal}` : nothing}, measuring
        ${length(leastThickness, this.units)} thick and ${length(leastWidth, this.units)} wide at least
      </p>
      <ul class="small">${notes.map((note) => html`<li>${note}</li>`)}</ul>
    `
  }
}
