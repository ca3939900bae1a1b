import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Match, SetFile, StationSpread } from '../../shared/matching/set.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { differenceText, readingText, signedText } from './verdict-words.ts'

/** The spread of a set in figures, station by station: mean, scatter, how well it fits the tolerance, signals. */
@customElement('spread-figures')
export class SpreadFigures extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      th p {
        font-weight: 400;
      }
      .signals {
        white-space: normal;
      }
      thead th {
        white-space: normal;
      }
      @media (min-width: 46rem), print {
        .signals {
          min-width: 12rem;
        }
      }
    `,
  ]

  @property({ attribute: false }) set?: SetFile
  @property({ attribute: false }) match?: Match
  @property({ attribute: false }) names: Readonly<Record<string, string>> = {}
  @property({ attribute: false }) numbers: Readonly<Record<string, number>> = {}
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    if (!this.set || !this.match) return html``
    return html`<p class="small soft">Cp: tolerance over six standard deviations; Cpk: the same from the mean to the nearer limit. From 1 on, nearly all pieces come out in. Limits of chance: three standard deviations to either side of the mean, as the step from piece to piece gives them; what lies outside, or runs on one side, has a cause at the lathe.</p><table class="stack">
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th class="number" scope="col">Read</th>
          <th class="number" scope="col">Mean</th>
          <th class="number" scope="col">Mean off target</th>
          <th class="number" scope="col">Standard deviation</th>
          <th class="number" scope="col">Largest less least</th>
          <th class="number" scope="col">Cp</th>
          <th class="number" scope="col">Cpk</th>
          <th scope="col">Not by chance</th>
        </tr>
      </thead>
      <tbody>${this.match.stations.map((spread, i) => this.row(spread, this.set!.stations[i]!.target))}</tbody>
    </table>`
  }

  private row(spread: StationSpread, target: number): TemplateResult {
    const { key, n, mean, sd, cp, cpk, spread: apart, why } = spread
    const off = mean === undefined ? undefined : mean - target
    const cell = (label: string, value: string | TemplateResult) =>
      html`<td class="number" data-label=${label}>${value}</td>`
    const small = (mm: number | undefined) => (mm === undefined ? '–' : differenceText(mm, this.lengthStyle))
    return html`<tr>
      <th scope="row">${this.names[key] ?? key}${why ? html`<p class="small soft">${why}</p>` : ''}</th>
      ${cell('Read', `${n}`)}
      ${cell('Mean', mean === undefined ? '–' : readingText(mean, this.lengthStyle))}
      ${cell('Mean off target', off === undefined ? '–' : signedText(off, this.lengthStyle))}
      ${cell('Standard deviation', small(sd))}
      ${cell('Largest less least', small(apart))}
      ${cell('Cp', ratio(cp))}
      ${cell('Cpk', ratio(cpk))}
      <td class="signals" data-label="Not by chance">${this.signals(spread)}</td>
    </tr>`
  }

  private signals({ chart }: StationSpread): string {
    if (!chart) return '–'
    if (chart.signals.length === 0) return 'none'
    const rules = [...new Set(chart.signals.map(({ rule }) => rule))]
    return rules
      .map((rule) => {
        const pieces = chart.signals.filter((signal) => signal.rule === rule)
        const numbers = pieces.map(({ piece }) => this.numbers[piece] ?? piece)
        return `${numbers.length === 1 ? 'piece' : 'pieces'} ${numbers.join(', ')}: ${rule}`
      })
      .join('; ')
  }
}

const ratio = (value: number | undefined): string => (value === undefined ? '–' : value.toFixed(2))

declare global {
  interface HTMLElementTagNameMap {
    'spread-figures': SpreadFigures
  }
}
