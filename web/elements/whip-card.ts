import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { outlineRadius } from '../../shared/profile/outline.ts'
import { sagCurve } from '../../shared/profile/sag.ts'
import type { BarWood } from '../../shared/profile/whip.ts'
import { limitText, nm } from '../../shared/units/length.ts'
import { inUnitsFirst } from '../field-words.ts'
import { jobPath } from '../router.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { keptOutline } from './part-outlines.ts'
import { scaledOutline, silhouettePath, tenth } from './part-silhouette.ts'
import { woodTone } from './wood-tones.ts'

const LONG = 1000
/** Height of the drawn sag, whatever it is in wood: told beside the drawing. */
const SHOWN = 60

/** Faster than any lathe of a shop may be entered, rpm: beyond it the figure says nothing. */
const FASTEST = 20_000

const restWords = {
  none: 'None called for',
  advised: 'Advised',
  needed: 'Needed',
}

const slender =
  'Slender work can whip out of the lathe: slow down, take light cuts with a sharp edge, support it with the rest, keep clear of its swing.'
const stout =
  'Stout work does not whip, but it leaves the lathe when hold or speed are wrong: start slowly and stand out of its line.'

/** Where a part flexes between centres, whether a steady rest is called for and where, and its first bending speed. */
@customElement('whip-card')
export class WhipCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      svg {
        display: block;
        width: 100%;
        max-height: 12rem;
      }
      .ghost {
        opacity: 0.85;
        stroke: #1c120a;
        vector-effect: non-scaling-stroke;
      }
      .bent {
        fill: none;
        stroke: var(--accent);
        stroke-width: 2.5;
        vector-effect: non-scaling-stroke;
      }
      .level {
        stroke: var(--ink);
        stroke-dasharray: 8 5;
        vector-effect: non-scaling-stroke;
        opacity: 0.6;
      }
      .journal {
        fill: var(--accent);
        opacity: 0.35;
      }
      .limber {
        fill: var(--accent);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  @property() jobId = ''
  /** What is known of the wood; absent where it is not. */
  @property({ attribute: false }) wood: BarWood | undefined

  constructor() {
    super()
    new SessionController(this)
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  /** A sag is smaller than fractions of an inch tell. */
  private sag(value: number) {
    const style = lengthStyle(this.plan.job.units)
    if (nm(value) < nm(0.01)) return style === 'mm' ? 'less than 0.01 mm' : 'less than 0.001 in'
    return limitText(value, style)
  }

  override render() {
    const { part, cautions, blank, job } = this.plan
    const { whip } = part
    if (!whip || !this.wood) {
      const why = cautions.find(({ about, text }) => about === 'part' && text.includes('whip'))
      return html`<p class="caution"><span>${why?.text ?? 'Whip and critical speed cannot be had for this wood.'}</span></p>`
    }
    return html`
      <div class="page">
        <figure>
          ${this.drawing(this.wood)}
          <figcaption class="small soft">
            Below, how it bows under a load where it gives most, much enlarged; foot at the
            left${whip.restJournal ? '. The blue band is where the rest bears' : ''}.
          </figcaption>
        </figure>
        <dl class="figures">
          <div>
            <dt>Gives most at</dt>
            <dd>${this.mm(whip.at)} from the foot</dd>
            <dd class="note">${this.sag(whip.sag)} under 10 N there</dd>
          </div>
          <div>
            <dt>Steady rest</dt>
            <dd>${restWords[whip.rest]}${whip.restAt === undefined ? nothing : html`, at ${this.mm(whip.restAt)}`}</dd>
            <dd class="note">
              ${whip.rest === 'none' ? 'it is stout enough by itself' : inUnitsFirst(whip.why, this.plan.job.units)}${whip.restJournal ? `; journal from ${this.mm(whip.restJournal[0])} to ${this.mm(whip.restJournal[1])}` : ''}
            </dd>
          </div>
          <div>
            <dt>First bending speed</dt>
            <dd>${whip.criticalRpm > FASTEST ? `above ${FASTEST}` : Math.round(whip.criticalRpm)} rpm</dd>
            <dd class="note">
              not a speed to run at: between centres never above half of it, nor above the ceilings on the
              <a href=${jobPath(this.jobId, 'work')}>Work page</a>
            </dd>
          </div>
        </dl>
        ${blank.stock.perBlank > 1 ? html`<p class="small soft">Of one part by itself; speeds go by the whole stick of ${blank.stock.perBlank} parts.</p>` : nothing}
        ${job.mount === 'chuck' ? html`<p class="small soft">Reckoned between two centres, though a chuck holds it here.</p>` : nothing}
        <p class="caution"><span>${whip.rest === 'none' ? stout : slender} The lathe maker’s instructions come first.</span></p>
      </div>
    `
  }

  private drawing(wood: BarWood) {
    const { job, part } = this.plan
    const { whip } = part
    const outline = keptOutline(job.profile)
    const scale = LONG / part.length
    const points = scaledOutline(outline, scale)
    const half = outlineRadius(points)
    const curve = sagCurve(job.profile, wood, 61)
    const most = Math.max(...curve.map(({ sag }) => sag), 1e-9)
    const bent = curve.map(({ at, sag }) => `${tenth(at * scale)} ${tenth((sag / most) * SHOWN)}`).join('L')
    const level = half + 20
    const [from, to] = whip?.restJournal ?? [0, 0]
    return html`<svg viewBox="-20 ${-half - 12} 1040 ${2 * half + SHOWN + 80}" role="img"
        aria-label="The part between centres and how it bends under a load at its limberest point, much enlarged; foot at the left">
      <path class="ghost" fill=${woodTone(job.species)} d=${silhouettePath(points)}></path>
      ${whip?.restJournal ? svg`<rect class="journal" x=${from * scale} y=${-half - 6} width=${(to - from) * scale} height=${2 * half + 12}></rect>` : nothing}
      <g transform="translate(0 ${level})">
        <path class="level" d="M0 0H${LONG}"></path>
        <path class="bent" d="M${bent}"></path>
        <path class="limber" d="M${(whip?.at ?? 0) * scale} ${SHOWN + 6}l-9 16h18Z"></path>
      </g>
    </svg>`
  }
}
