import { css, html, LitElement, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { ShipRow, Ships } from '../../shared/ships.ts'
import { pageWear } from '../styles/all.ts'
import { closedStretches, endOf, waitStretches, windowOf, workStretches, writtenDays } from './ships-days.ts'
import { dayText, shipsSentence } from './ships-words.ts'

/** One job along the days: work as high as it fills a day, what is waited for hatched, its date as a line. */
@customElement('ships-strip')
export class ShipsStrip extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      svg {
        display: block;
        width: 100%;
        height: max(4rem, 64px);
        overflow: hidden;
      }
      .ground {
        fill: var(--sheet);
        stroke: var(--line);
      }
      .closed {
        fill: var(--line);
        opacity: 0.55;
      }
      .lathe {
        fill: var(--accent);
      }
      .bench {
        fill: var(--ink-soft);
      }
      .wait {
        fill: url(#hatch);
        stroke: var(--ink-soft);
      }
      .hatch {
        stroke: var(--ink-soft);
        stroke-width: 1.5;
      }
      .due {
        stroke: var(--under);
        stroke-width: 3;
      }
      .done {
        stroke: var(--ink);
        stroke-width: 2;
        stroke-dasharray: 3 3;
      }
      text {
        fill: var(--ink-soft);
        font: 0.75rem var(--sans);
      }
    `,
  ]

  @property({ attribute: false }) ships!: Ships
  @property({ attribute: false }) row!: ShipRow

  override render() {
    const { ships, row } = this
    const window = windowOf(ships)
    const [due, done] = [endOf(row.due, window), endOf(row.done, window)]
    const high = 40
    return html`<svg role="img" aria-label=${shipsSentence(row, ships.today)}>
      <defs>
        <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="hatch" x1="0" y1="0" x2="0" y2="6"></line>
        </pattern>
      </defs>
      <rect class="ground" x="0" y="2" width="100%" height=${high}></rect>
      ${closedStretches(ships, window).map(
        ({ x, width }) => svg`<rect class="closed" x="${x}%" y="2" width="${width}%" height=${high}></rect>`,
      )}
      ${waitStretches(row, window).map(
        ({ x, width }) =>
          svg`<rect class="wait" x="${x}%" y="12" width="${width}%" height=${high - 20}></rect>`,
      )}
      ${stacked(workStretches(row, ships.minutesPerDay, window)).map(
        ({ x, width, share = 0, below, atLathe }) =>
          svg`<rect class=${atLathe ? 'lathe' : 'bench'} x="${x}%" y=${2 + high * (1 - below - share)} width="${width}%" height=${high * share}></rect>`,
      )}
      ${done === undefined ? '' : svg`<line class="done" x1="${done}%" x2="${done}%" y1="0" y2=${high + 4}></line>`}
      ${due === undefined ? '' : svg`<line class="due" x1="${due}%" x2="${due}%" y1="0" y2=${high + 4}></line>`}
      ${writtenDays(window).map(({ x, day }) => svg`<text x="${x}%" y=${high + 18}>${dayText(day).slice(4)}</text>`)}
    </svg>`
  }
}

/** What is done away from the lathe stands on what is turned on the same day. */
function stacked<T extends { x: number; share?: number; atLathe?: boolean }>(
  stretches: T[],
): (T & { below: number })[] {
  const lathe = new Map(stretches.filter(({ atLathe }) => atLathe).map(({ x, share = 0 }) => [x, share]))
  return stretches.map((each) => ({ ...each, below: each.atLathe ? 0 : (lathe.get(each.x) ?? 0) }))
}

declare global {
  interface HTMLElementTagNameMap {
    'ships-strip': ShipsStrip
  }
}
