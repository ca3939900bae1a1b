import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { matchSet } from '../../shared/matching/match.ts'
import type { Match, SetFile } from '../../shared/matching/set.ts'
import { Problem } from '../../shared/problem.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { farthestOf, readingAt, standInsOf } from './spread-set.ts'
import { commonStyle, differenceText, readingText, verdictNames, verdictSymbols } from './verdict-words.ts'

/** The pieces of a set: their verdicts, who is worst, which match best, what to bring down. */
@customElement('spread-pieces')
export class SpreadPieces extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .choose {
        display: grid;
        grid-template-columns: 6rem auto 1fr;
        gap: var(--space-1) var(--space-2);
      }
      .choose label {
        grid-column: 1 / -1;
      }
      .scroll {
        max-height: 30rem;
        overflow: auto;
      }
      th.number {
        white-space: normal;
      }
      @media (max-width: 30rem) {
        .scroll :is(th, td) {
          padding-inline: var(--space-1);
        }
      }
      .numbers {
        font-size: var(--size-large);
        font-weight: 650;
      }
      @media print {
        .scroll {
          max-height: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) set?: SetFile
  @property({ attribute: false }) match?: Match
  @property({ attribute: false }) names: Readonly<Record<string, string>> = {}
  @property({ attribute: false }) numbers: Readonly<Record<string, number>> = {}
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** Pieces ordered. */
  @property({ type: Number }) wanted = 1
  /** Ids of the spares that are not spoiled. */
  @property({ attribute: false }) spares: readonly string[] = []
  @state() private choose = ''
  @state() private chosen?: { of: SetFile; pieces: string[]; spread: number; proven: boolean }
  @state() private refusal = ''

  private number = (piece: string): string => String(this.numbers[piece] ?? piece)
  private name = (station: string): string => this.names[station] ?? station

  private readonly chooseBest = () => {
    const n = Number(this.choose || this.wanted)
    this.chosen = undefined
    this.refusal = ''
    if (!Number.isInteger(n) || n < 1) {
      this.refusal = `How many are chosen is a whole number of at least 1; read ${this.choose}.`
      return
    }
    try {
      const { chosen } = matchSet({ ...this.set!, choose: n })
      if (chosen) this.chosen = { of: this.set!, ...chosen }
    } catch (problem) {
      if (!(problem instanceof Problem)) throw problem
      this.refusal = problem.errors[0]?.message ?? problem.message
    }
  }

  override render() {
    const { set, match } = this
    if (!set || !match) return html``
    return html`<div class="page">
      ${this.worst(set)}
      <div class="columns">
        <div class="page">${this.verdicts(match)} ${this.best(set)}</div>
        ${this.bringDown(set, match)}
      </div>
    </div>`
  }

  private worst(set: SetFile): TemplateResult | typeof nothing {
    const farthest = farthestOf(set)
    if (!farthest) return nothing
    const { piece, station, off } = farthest
    const how =
      off === 0
        ? 'right on the target'
        : `${differenceText(off, this.lengthStyle)} ${off > 0 ? 'above' : 'below'} the target`
    return html`<p>Farthest out: <strong>piece ${this.number(piece)}</strong> at ${this.name(station)}, ${how}.</p>`
  }

  private verdicts(match: Match): TemplateResult {
    const read = match.pieces.filter(({ verdict }) => verdict !== undefined)
    const unread = match.pieces.filter(({ verdict }) => verdict === undefined)
    const rounds = read.some(({ outOfRound }) => outOfRound)
    return html`<div class="scroll" tabindex="0" role="region" aria-label="Verdicts on the pieces">
      <table>
        <thead><tr><th scope="col">Piece</th><th scope="col">Verdict</th><th scope="col">Worst at</th>${rounds ? html`<th class="number" scope="col">Out of round</th>` : nothing}</tr></thead>
        <tbody>${read.map(
          ({ key, verdict, worst, outOfRound }) => html`<tr>
            <th scope="row">${this.number(key)}</th>
            <td><span class="mark ${verdict!}">${verdictSymbols[verdict!]} ${verdictNames[verdict!]}</span></td>
            <td>${worst === undefined ? '–' : this.name(worst)}</td>
            ${rounds ? html`<td class="number">${outOfRound ? differenceText(Math.max(...Object.values(outOfRound)), this.lengthStyle) : '–'}</td>` : nothing}</tr>`,
        )}</tbody>
      </table>
      ${unread.length === 0 ? nothing : html`<p class="small soft">Not read yet: ${unread.map(({ key }) => this.number(key)).join(', ')}.</p>`}
    </div>`
  }

  private best(set: SetFile): TemplateResult {
    const stale = this.chosen && this.chosen.of !== set
    const whole = set.pieces.filter((piece) =>
      set.stations.every(({ key }) => readingAt(piece, key) !== undefined),
    ).length
    return html`<section class=${this.chosen ? '' : 'no-print'}>
      <h3>Choose the best match</h3>
      <div class="choose no-print">
        <label for="choose">Pieces wanted, of ${whole} read everywhere</label>
          <input id="choose" inputmode="numeric" .value=${this.choose || String(this.wanted)} @input=${(
            event: Event,
          ) => {
            this.choose = (event.target as HTMLInputElement).value.trim()
          }} @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && this.chooseBest()} />
        <button type="button" @click=${this.chooseBest}>Choose them</button>
      </div>
      <div role="status">
        ${this.refusal ? html`<p class="error">${this.refusal}</p>` : nothing}
        ${
          this.chosen
            ? html`<p class="numbers">Pieces ${this.chosen.pieces.map(this.number).join(', ')}</p>
              <p class="small">Where they differ most they differ by ${Math.round(100 * this.chosen.spread)} % of the tolerance${this.chosen.proven ? '; no other choice is closer' : '; the closest found, a closer one may exist'}.${stale ? ' Readings have come in since: choose again.' : ''}</p>`
            : nothing
        }
      </div>
    </section>`
  }

  private bringDown(set: SetFile, { bringDown }: Match): TemplateResult {
    const { targets, cuts, spoiled } = bringDown
    const changed = set.stations.filter(({ key }) => targets[key] !== undefined)
    return html`<section>
      <h3>Bring down</h3>
      ${changed.length === 0 && cuts.length === 0 && spoiled.length === 0 ? html`<p>Nothing to bring down.</p>` : nothing}
      ${this.standIns(this.match!)}
      ${changed.length === 0 ? nothing : html`<ul>${changed.map(({ key, target }) => html`<li>${this.name(key)}: ${this.newTarget(targets[key]!, target)}</li>`)}</ul>`}
      ${
        cuts.length === 0
          ? nothing
          : html`<table>
              <caption>What each piece still has to lose, on the diameter: half of it each side</caption>
              <thead><tr><th scope="col">Piece</th><th scope="col">Station</th><th class="number" scope="col">Reads</th><th class="number" scope="col">Take off</th></tr></thead>
              <tbody>${cuts.map(({ piece, station, remove }) => this.cut(set, piece, station, remove))}</tbody>
            </table>`
      }
      ${spoiled.map(({ piece, station, why }) => html`<p class="problem">Piece ${this.number(piece)} is spoiled at ${this.name(station)}: ${why}</p>`)}
    </section>`
  }

  /** A spare costs less than cutting the whole set down, so it is said first. */
  private standIns(match: Match): TemplateResult | typeof nothing {
    const { replaced, by } = standInsOf(match, this.spares)
    if (replaced.length === 0) return nothing
    const listed = (pieces: readonly string[]) => pieces.map(this.number).join(', ')
    const each = replaced.length === 1 ? 'A spare' : 'Spares'
    return html`<p class="notice">${each} can stand in for ${replaced.length === 1 ? 'piece' : 'pieces'} <strong>${listed(replaced)}</strong>: ${by.length === 1 ? 'piece' : 'pieces'} ${listed(by)} ${by.length === 1 ? 'is a spare' : 'are spares'} not under anywhere. Bring the set down only if you keep ${replaced.length === 1 ? 'it' : 'them'}.</p>`
  }

  private newTarget(now: number, before: number): TemplateResult {
    const style = commonStyle(this.lengthStyle, now, before)
    return html`new target <strong>${readingText(now, style)}</strong> <span class="soft">(was ${readingText(before, style)})</span>`
  }

  private cut(set: SetFile, piece: string, station: string, remove: number): TemplateResult {
    const own = set.pieces.find(({ key }) => key === piece)
    const value = own && readingAt(own, station)
    return html`<tr>
      <th scope="row">${this.number(piece)}</th><td>${this.name(station)}</td>
      <td class="number">${value === undefined ? '–' : readingText(value, this.lengthStyle)}</td>
      <td class="number"><strong>${differenceText(remove, this.lengthStyle)}</strong></td>
    </tr>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'spread-pieces': SpreadPieces
  }
}
