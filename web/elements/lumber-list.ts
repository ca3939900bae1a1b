import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { lengthWhy } from '../../shared/cutting/best-lengths.ts'
import { demands, gradeWords, sortWords } from '../../shared/cutting/list-words.ts'
import type { YardList } from '../../shared/cutting/yard-list.ts'
import type { Units } from '../../shared/units/length.ts'
import { loadText } from '../../shared/units/mass.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, percentText, priceText } from './amounts.ts'

/** One kind of lumber as it is asked of a yard: how much, what every board must be, and what would do instead. */
@customElement('lumber-list')
export class LumberList extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      dl.demands {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: var(--space-1) var(--space-3);
      }
      dt {
        color: var(--ink-soft);
      }
      .lengths li {
        display: grid;
        grid-template-columns: 3.5rem minmax(0, 1fr);
        padding-block: var(--space-1);
      }
      th[scope='row'] {
        text-align: left;
      }
      tr.chosen {
        font-weight: 650;
      }
    `,
  ]

  @property({ attribute: false }) list!: YardList
  @property() wood = ''
  @property() units: Units = 'in'
  @property() currency = 'USD'

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { list, wood } = this
    const cost = list.grades.find(({ grade }) => grade === list.grade)?.cost
    return html`
      <div class="page">
        <p class="figure">${list.boardFeet.ask} <span class="unit">bd ft</span></p>
        <p>
          of ${wood}: ${sortWords(list)}${cost === undefined ? nothing : html`, about ${priceText(cost, this.currency)}`}${
            list.mass === undefined ? nothing : html`; ${loadText(list.mass, this.units)} to carry`
          }
        </p>
        ${list.softwood ? this.instead() : nothing}
        <dl class="demands">
          ${demands(list, lengthStyle(this.units)).map(([name, words]) => html`<dt>${name}</dt><dd>${words}</dd>`)}
        </dl>
        ${this.reckoning()} ${this.lengths()} ${this.grades()} ${list.softwood ? nothing : this.instead()}
        <ul class="small">${list.notes.map((note) => html`<li>${note}</li>`)}</ul>
      </div>
    `
  }

  private reckoning() {
    const { boardFeet, geometricYield, gradeYield, extra } = this.list
    return html`<p class="small soft">
      ${boardFeetText(boardFeet.net)} in the blanks; ${boardFeetText(boardFeet.geometric)} at
      ${percentText(geometricYield)} for how they lie on boards; ${boardFeetText(boardFeet.grade)} at
      ${percentText(gradeYield)} for the grade; and ${percentText(extra)} extra for choice.
    </p>`
  }

  private lengths() {
    const best = this.list.bestLengths
    if (best.length === 0) return nothing
    return html`<div>
      <h3>Lengths that waste least</h3>
      <ol class="plain lengths">
        ${best.map(
          (row) => html`<li>
            <strong>${row.lengthFt} ft</strong>
            <span>${percentText(row.waste)} wasted: ${lengthWhy(row, lengthStyle(this.units))}</span>
          </li>`,
        )}
      </ol>
    </div>`
  }

  private grades() {
    const { grades, grade: chosen, softwood } = this.list
    if (softwood) return nothing
    const priced = grades.some(({ cost }) => cost !== undefined)
    return html`<details>
      <summary>Other grades</summary>
      <table class="stack">
        <caption>Grades of ${this.wood}</caption>
          <thead>
            <tr>
              <th scope="col">Grade</th>
              <th scope="col" class="number">bd ft</th>
              ${priced ? html`<th scope="col" class="number">About</th>` : nothing}
              <th scope="col">What it promises</th>
            </tr>
          </thead>
          <tbody>
            ${grades.map(
              ({
                grade,
                name,
                ask,
                cost,
                fit,
                promise,
              }) => html`<tr class=${grade === chosen ? 'chosen' : ''}>
                <th scope="row">${name}</th>
                <td class="number" data-label="bd ft">${ask}</td>
                ${priced ? html`<td class="number" data-label="About">${cost === undefined ? 'no price' : priceText(cost, this.currency)}</td>` : nothing}
                <td data-label="Promises">${gradeWords({ fit, promise })}</td>
              </tr>`,
            )}
          </tbody>
        </table>
    </details>`
  }

  /** Squares ready-made, and softwood by its dressed sizes. */
  private instead() {
    const { squares, dressed } = this.list
    const size = (mm: number[]) => mm.map((each) => length(each, this.units)).join(' × ')
    return html`
      ${squares.map(
        ({ side, length: long, count, boardFeet, grades }) => html`<p>
          Instead: ${count} ${count === 1 ? 'square' : 'squares'} ${size([side, side, long])}
          (${boardFeetText(boardFeet)}), kiln dried, graded ${grades.join(', ')}.
        </p>`,
      )}
      ${dressed.map(
        ({ nominal, thickness, width, lengthFt, sticks, boardFeet }) => html`<p>
          By dressed sizes: ${sticks} ${sticks === 1 ? 'piece' : 'pieces'} of ${nominal.join(' × ')} in, ${lengthFt} ft,
          measuring ${length(thickness, this.units)} × ${length(width, this.units)}
          (${boardFeetText(boardFeet)} by its name).
        </p>`,
      )}
    `
  }
}
