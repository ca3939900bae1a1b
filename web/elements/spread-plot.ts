import { css, html, LitElement, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { verdictOf } from '../../shared/matching/reading.ts'
import type { Match, SetFile, SetStation, StationSpread } from '../../shared/matching/set.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { dodged, ticksBetween, tickText } from './spread-scale.ts'
import { readingAt } from './spread-set.ts'
import { differenceText, readingText, verdictNames } from './verdict-words.ts'

const ROW = 56

/**
 * Every reading of a set as its distance from the target, station by station, in the band it may lie in; with the
 * mean and the limits of chance.
 */
@customElement('spread-plot')
export class SpreadPlot extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .row {
        display: grid;
        grid-template-columns: 11rem minmax(0, 1fr);
        gap: 0 var(--space-4);
        align-items: center;
      }
      svg {
        width: 100%;
        overflow: visible;
      }
      .name {
        font-weight: 650;
        line-height: 1.2;
      }
      .band {
        fill: var(--in-wash);
        stroke: var(--in);
        stroke-width: 1;
      }
      .middle {
        stroke: var(--ink-soft);
        stroke-dasharray: 2 3;
      }
      .in {
        fill: var(--in);
      }
      .over {
        fill: var(--over);
      }
      .under {
        fill: var(--under);
      }
      .mean {
        stroke: var(--ink);
        stroke-width: 2.5;
      }
      .chance {
        stroke: var(--accent);
        stroke-width: 1.5;
        stroke-dasharray: 5 3;
      }
      .signal {
        fill: none;
        stroke: var(--accent);
        stroke-width: 2;
      }
      text {
        font-size: 0.8125rem;
        fill: var(--ink-soft);
      }
      .line {
        stroke: var(--line);
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        margin-top: var(--space-2);
      }
      .key svg {
        display: inline-block;
        width: 1.5rem;
        height: 0.9rem;
        vertical-align: -0.1rem;
      }
      @media (max-width: 46rem) {
        .row {
          grid-template-columns: minmax(0, 1fr);
          margin-top: var(--space-2);
        }
      }
    `,
  ]

  @property({ attribute: false }) set?: SetFile
  @property({ attribute: false }) match?: Match
  /** Names of the stations and numbers of the pieces, by key. */
  @property({ attribute: false }) names: Readonly<Record<string, string>> = {}
  @property({ attribute: false }) numbers: Readonly<Record<string, number>> = {}
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    const { set, match } = this
    if (!set || !match || match.stations.every(({ n }) => n === 0))
      return html`<p class="soft">No reading at this stage yet.</p>`
    const [low, high] = this.reach(set)
    const x = (mm: number) => `${((100 * (mm - low)) / (high - low)).toFixed(3)}%`
    return html`<figure>
      ${set.stations.map((station, i) => this.row(station, match.stations[i]!, x))}
      <div class="row"><span class="small soft">off the target, ${this.lengthStyle === 'mm' ? 'mm' : 'in'}</span>
        <svg height="24" aria-hidden="true">
          ${ticksBetween(low, high, this.lengthStyle, 7).map((tick) => svg`<line class="middle" x1=${x(tick)} x2=${x(tick)} y1="0" y2="5"></line><text x=${x(tick)} y="18" text-anchor="middle">${tickText(tick, this.lengthStyle)}</text>`)}
        </svg>
      </div>
      ${this.key()}
    </figure>`
  }

  /** What all rows show: every tolerance and every reading, with a little air. */
  private reach({ stations, pieces }: SetFile): [number, number] {
    const offs = stations.flatMap((station) => [
      -station.minus,
      station.plus,
      ...pieces.flatMap((piece) => {
        const value = readingAt(piece, station.key)
        return value === undefined ? [] : [value - station.target]
      }),
    ])
    const [low, high] = [Math.min(...offs), Math.max(...offs)]
    const air = 0.06 * (high - low)
    return [low - air, high + air]
  }

  private row(station: SetStation, spread: StationSpread, x: (mm: number) => string): TemplateResult {
    const name = this.names[station.key] ?? station.key
    const told =
      spread.n === 0
        ? 'no reading'
        : `${spread.n} read${spread.spread === undefined ? '' : `, ${differenceText(spread.spread, this.lengthStyle)} apart`}`
    return html`<div class="row">
      <div><p class="name">${name}</p><p class="small soft">${lengthText(station.target, this.lengthStyle)}; ${told}</p></div>
      <svg height=${ROW} role="img" aria-label="${name}: ${told}">
        <line class="line" x1="0" x2="100%" y1=${ROW / 2} y2=${ROW / 2}></line>
        <rect class="band" x=${x(-station.minus)} y="8" width="${Number.parseFloat(x(station.plus)) - Number.parseFloat(x(-station.minus))}%" height=${ROW - 16}></rect>
        <line class="middle" x1=${x(0)} x2=${x(0)} y1="4" y2=${ROW - 4}></line>
        ${this.chance(station, spread, x)} ${this.dots(station, spread, x)}
      </svg>
    </div>`
  }

  private chance(
    station: SetStation,
    { mean, chart }: StationSpread,
    x: (mm: number) => string,
  ): SVGTemplateResult {
    const upright = (kind: string, mm: number) => {
      const at = x(mm - station.target)
      const shown = Number.parseFloat(at) >= 0 && Number.parseFloat(at) <= 100
      return shown ? svg`<line class=${kind} x1=${at} x2=${at} y1="4" y2=${ROW - 4}></line>` : nothing
    }
    return svg`${mean === undefined ? nothing : upright('mean', mean)} ${chart ? [upright('chance', chart.lower), upright('chance', chart.upper)] : nothing}`
  }

  private dots(
    station: SetStation,
    { chart }: StationSpread,
    x: (mm: number) => string,
  ): SVGTemplateResult[] {
    const read = (this.set?.pieces ?? []).flatMap((piece) => {
      const value = readingAt(piece, station.key)
      return value === undefined
        ? []
        : [{ piece: piece.key, value, at: Number.parseFloat(x(value - station.target)) }]
    })
    const rows = dodged(
      read.map(({ at }) => at),
      1.6,
    ) // prettier-ignore
    const signals = new Set((chart?.signals ?? []).map(({ piece }) => piece))
    return read.map(({ piece, value, at }, i) => {
      const verdict = verdictOf(value, station)
      const y = ROW / 2 + Math.max(-3, Math.min(3, rows[i]!)) * 7
      return svg`<svg x="${at}%" y=${y} overflow="visible">
        <title>Piece ${this.numbers[piece] ?? piece}: ${readingText(value, this.lengthStyle)}, ${verdictNames[verdict]}</title>
        ${signals.has(piece) ? svg`<circle class="signal" r="8.5"></circle>` : nothing}
        ${verdictShape(verdict)}
      </svg>`
    })
  }

  private key(): TemplateResult {
    return html`<figcaption class="key small soft">
      <span><svg viewBox="-12 -7 24 14" aria-hidden="true">${verdictShape('in')}</svg>in</span>
      <span><svg viewBox="-12 -7 24 14" aria-hidden="true">${verdictShape('over')}</svg>over</span>
      <span><svg viewBox="-12 -7 24 14" aria-hidden="true">${verdictShape('under')}</svg>under</span>
      <span><svg viewBox="0 0 24 14" aria-hidden="true"><rect class="band" x="1" y="1" width="22" height="12"></rect></svg>tolerance</span>
      <span><svg viewBox="0 0 24 14" aria-hidden="true"><line class="mean" x1="12" x2="12" y1="0" y2="14"></line></svg>mean</span>
      <span><svg viewBox="0 0 24 14" aria-hidden="true"><line class="chance" x1="12" x2="12" y1="0" y2="14"></line></svg>limits of chance</span>
      <span><svg viewBox="-12 -9 24 18" aria-hidden="true"><circle class="signal" r="7"></circle></svg>not by chance</span>
    </figcaption>`
  }
}

/** A shape for each verdict, so that colour does not stand alone. */
const verdictShape = (verdict: 'in' | 'over' | 'under'): SVGTemplateResult =>
  verdict === 'in'
    ? svg`<circle class="in" r="5"></circle>`
    : svg`<path class=${verdict} d=${verdict === 'over' ? 'M0 -6.5L6.5 5H-6.5Z' : 'M0 6.5L6.5 -5H-6.5Z'}></path>`

declare global {
  interface HTMLElementTagNameMap {
    'spread-plot': SpreadPlot
  }
}
