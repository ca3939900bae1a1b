import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Defect } from '../../shared/cutting/board.ts'
import { type StockBoard, sawableBoard } from '../../shared/cutting/stock-board.ts'
import { Room } from '../room.ts'
import { base } from '../styles/base.ts'
import { woodTone } from './wood-tones.ts'

/** A board is drawn at most so high, px. */
const HIGHEST = 110
/** Room a word needs to be written into a defect, px. */
const WORD = 44

/** A board as it lies, to scale: butt end left, the edge that is measured from above; what is not clear is marked. */
@customElement('board-sketch')
export class BoardSketch extends LitElement {
  static override styles = [
    base,
    css`
      .defect {
        fill: #6b160e;
        opacity: 0.75;
      }
      .sap {
        fill: #fff4d8;
        opacity: 0.75;
      }
      .crook {
        fill: url(#lost);
      }
      .lost {
        stroke: #1c120a;
        stroke-width: 2;
      }
      .frame {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      text {
        font: 600 11px var(--sans);
        fill: #fff;
        text-anchor: middle;
        dominant-baseline: central;
      }
      text.dark {
        fill: #1c120a;
      }
    `,
  ]

  @property({ attribute: false }) board!: StockBoard
  /** The board told in a sentence. */
  @property() told = ''
  private readonly room = new Room(this)

  override render() {
    if (this.room.px === 0) return nothing
    const { board } = this
    const scale = Math.min((this.room.px - 2) / board.length, HIGHEST / board.width)
    const [width, height] = [board.length * scale, board.width * scale]
    const defects = sawableBoard(board, { sap: 'none' }).defects ?? []
    return html`<svg width=${width + 2} height=${height + 2} viewBox="-1 -1 ${width + 2} ${height + 2}" role="img" aria-label=${this.told}>
      <defs>
        <pattern id="lost" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="lost" x1="0" x2="0" y1="0" y2="6"></line>
        </pattern>
      </defs>
      <rect width=${width} height=${height} fill=${woodTone(board.species ?? '')}></rect>
      ${defects.map((defect) => mark(defect, scale, width, height))}
      <rect class="frame" width=${width} height=${height}></rect>
    </svg>`
  }
}

function mark({ from, to, across, kind = '' }: Defect, scale: number, width: number, height: number) {
  const within = (mm: number, most: number) => Math.min(most, Math.max(0, mm * scale))
  const [x0, x1] = [within(from, width), within(to, width)]
  const [y0, y1] = across ? [within(across[0], height), within(across[1], height)] : [0, height]
  const look = kind === 'crook' ? 'crook' : kind.startsWith('sap') ? 'sap' : 'defect'
  const hasRoom = look !== 'crook' && x1 - x0 >= WORD && y1 - y0 >= 12
  return svg`<rect class=${look} x=${x0} y=${y0} width=${Math.max(1.5, x1 - x0)} height=${Math.max(1.5, y1 - y0)}></rect>
    ${hasRoom ? svg`<text class=${look === 'sap' ? 'dark' : ''} x=${(x0 + x1) / 2} y=${(y0 + y1) / 2}>${kind}</text>` : nothing}`
}

declare global {
  interface HTMLElementTagNameMap {
    'board-sketch': BoardSketch
  }
}
