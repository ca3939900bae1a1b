import { css, html, LitElement, nothing, type SVGTemplateResult, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import {
  LEGS_MAX,
  type Letter,
  legsFor,
  ringRadii,
  type SetPiece,
  type Stand,
  type StandingLeg,
  setLayout,
} from '../../shared/cutting/set-layout.ts'
import { frontRings, setWords, standText } from '../../shared/cutting/set-words.ts'
import type { PlacedJoint } from '../../shared/profile/joint-reach.ts'
import { pageWear } from '../styles/all.ts'

/** A leg as drawn, px: its side, from middle to middle beside and behind, room for the words around. */
const LEG = 76
const BESIDE = 148
const BEHIND = 132
const ROUND = 40
const WIDTH = BESIDE + LEG + 2 * 12

/** Where each leg of a set stands, which face is which, and how its rings run. Sends `legs` with legs to a stand. */
@customElement('set-layout')
export class SetLayout extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .stands {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-6);
      }
      figure {
        margin: 0;
        max-width: 100%;
      }
      figcaption {
        font-weight: 650;
      }
      svg {
        max-width: 100%;
        height: auto;
      }
      .leg {
        fill: #d9ac74;
      }
      .edge {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .ring {
        fill: none;
        stroke: #7a4f22;
        stroke-width: 1.25;
      }
      .ring.assumed {
        stroke-dasharray: 5 4;
      }
      .plate {
        fill: var(--sheet);
        stroke: var(--ink);
      }
      text {
        font: 600 13px var(--sans);
        fill: var(--ink);
        text-anchor: middle;
        dominant-baseline: central;
      }
      .number {
        font-size: 16px;
        font-weight: 750;
      }
      .far {
        fill: var(--ink-soft);
        font-weight: 500;
      }
      .legs {
        max-width: 10rem;
      }
    `,
  ]

  @property({ attribute: false }) pieces: readonly SetPiece[] = []
  @property({ attribute: false }) joints: PlacedJoint[] = []
  /** Side of the blank as sawn, mm. */
  @property({ type: Number }) side = 50
  /** Legs to a stand; as many as suit the number of pieces when 0. */
  @property({ type: Number }) legs = 0

  private get each(): number {
    return this.legs || legsFor(this.pieces.length)
  }

  override render() {
    const stands = setLayout(this.pieces, { legs: this.each, joints: this.joints })
    const all = stands.flatMap(({ legs }) => legs)
    return html`
      <div class="page">
        <label class="legs">
          Legs to a stand
          <select @change=${this.choose}>
            ${Array.from({ length: LEGS_MAX }, (_, i) => i + 1).map(
              (legs) => html`<option value=${legs} ?selected=${legs === this.each}>${legs}</option>`,
            )}
          </select>
        </label>
        <p class="small">${setWords(stands)}</p>
        <div class="stands">${stands.map((stand, i) => this.stand(stand, stands.length > 1 ? `Stand ${i + 1}` : ''))}</div>
        ${all.some(({ heart }) => heart) ? this.table(all) : nothing}
      </div>
    `
  }

  private readonly choose = (event: Event) => {
    const detail = Number((event.target as HTMLSelectElement).value)
    this.legs = detail
    this.dispatchEvent(new CustomEvent('legs', { detail }))
  }

  private stand({ legs }: Stand, name: string) {
    const rows = Math.ceil(legs.length / 2)
    const [width, height] = [WIDTH + 2 * ROUND, (rows - 1) * BEHIND + LEG + 2 * ROUND]
    const middles = legs.map((leg, i) => ({ leg, ...middleOf(leg, i, rows) }))
    const told = legs
      .map((leg) => `piece ${leg.piece} ${standText(leg)}, face ${leg.faces.front} in front`)
      .join('; ')
    return html`<figure>
      ${name ? html`<figcaption>${name}</figcaption>` : nothing}
      <svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="img" aria-label="Seen from above: ${told}">
        ${middles.map(({ leg, x, y }) => this.leg(leg, x, y))}
        <text class="far" x=${width / 2} y="10">back</text>
        <text class="far" x=${width / 2} y=${height - 10}>front</text>
      </svg>
    </figure>`
  }

  private leg({ piece, faces, heart, assumed }: StandingLeg, x: number, y: number): SVGTemplateResult {
    const half = LEG / 2
    const scale = LEG / this.side
    const clip = `leg-${piece}`
    const letter = (name: Letter, dx: number, dy: number) => svg`<text x=${x + dx} y=${y + dy}>${name}</text>`
    return svg`
      <clipPath id=${clip}><rect x=${x - half} y=${y - half} width=${LEG} height=${LEG}></rect></clipPath>
      <rect class="leg" x=${x - half} y=${y - half} width=${LEG} height=${LEG}></rect>
      <g clip-path="url(#${clip})">
        ${
          heart
            ? ringRadii(heart, this.side / 2).map(
                (radius) =>
                  svg`<circle class="ring ${assumed ? 'assumed' : ''}" cx=${x + heart.right * scale} cy=${y - heart.back * scale} r=${radius * scale}></circle>`,
              )
            : nothing
        }
      </g>
      <rect class="edge" x=${x - half} y=${y - half} width=${LEG} height=${LEG}></rect>
      <circle class="plate" cx=${x} cy=${y} r="16"></circle>
      <text class="number" x=${x} y=${y}>${piece}</text>
      ${letter(faces.front, 0, half + 11)} ${letter(faces.back, 0, -half - 11)}
      ${letter(faces.left, -half - 10, 0)} ${letter(faces.right, half + 10, 0)}`
  }

  private table(legs: StandingLeg[]) {
    return html`
      <table class="stack">
        <caption class="small soft">
          Letters to strike on each blank while it lies in its board, face up; near is the edge drawn above
        </caption>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Stands</th>
            <th scope="col">Board’s face</th>
            <th scope="col">Near edge</th>
            <th scope="col">Foot at</th>
            <th scope="col">Rings to the front</th>
          </tr>
        </thead>
        <tbody>
          ${legs.map(
            (leg) => html`<tr>
              <th scope="row">Piece ${leg.piece}</th>
              <td data-label="Stands">${standText(leg)}</td>
              <td data-label="Board’s face">${leg.lettered.face}</td>
              <td data-label="Near edge">${leg.lettered['near edge']}</td>
              <td data-label="Foot at">${leg.reversed ? 'far end' : 'butt end'}</td>
              <td data-label="Rings to the front">
                ${frontRings(leg)}
              </td>
            </tr>`,
          )}
        </tbody>
      </table>
    `
  }
}

/** Where a leg is drawn: rows from the front up, an odd leg behind them in the middle. */
function middleOf({ side }: StandingLeg, place: number, rows: number): { x: number; y: number } {
  const row = Math.floor(place / 2)
  const x = ROUND + 12 + LEG / 2 + { left: 0, middle: BESIDE / 2, right: BESIDE }[side]
  return { x, y: ROUND + LEG / 2 + (rows - 1 - row) * BEHIND }
}
