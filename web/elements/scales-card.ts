import { html, LitElement, nothing, type PropertyValues } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { ofOnePiece } from '../../shared/profile/part.ts'
import { READABLE_MASSES, readMass } from '../../shared/units/mass.ts'
import type { Lot } from '../../shared/wood/lot.ts'
import type { Species } from '../../shared/wood/species.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { textField } from './field.ts'
import { massIn } from './mass-words.ts'

/** A finished piece on the scales: g. */
export interface Weighed {
  mass: number
  lot: string
  /** When it was typed, ISO 8601: sent again, it is the same weighing. */
  at: string
}

/** What is typed and not kept by the shop yet. */
interface Typed {
  mass: string
  at?: string
  lot?: string
}

const place = (jobId: string) => `setwright.weighed.${jobId}`

/** A finished piece weighed, to correct the density of its lot. Sends `weigh`; what is typed stays over a reload. */
@customElement('scales-card')
export class ScalesCard extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @property({ attribute: false }) plan!: Plan
  @property({ attribute: false }) lots: readonly Lot[] = []
  @property({ attribute: false }) woods: readonly Species[] = []
  /** A weighing is on its way. */
  @property({ type: Boolean }) busy = false
  @state() private typed: Typed = { mass: '' }

  constructor() {
    super()
    new SessionController(this)
  }

  protected override willUpdate(changed: PropertyValues<this>) {
    if (changed.has('jobId')) this.typed = keptEntry<Typed>(place(this.jobId), { mass: '' })
  }

  private enter(change: Partial<Typed>) {
    this.typed = { ...this.typed, ...change }
    keepEntry(place(this.jobId), this.typed)
  }

  /** Empties the scales, once a weighing is kept. */
  clear() {
    this.enter({ mass: '' })
  }

  /** What one piece should weigh by the plan, g. */
  private predicted() {
    const { part, job } = this.plan
    return ofOnePiece(part.mass ?? 0, job.profile)
  }

  private lotError(name: string): string | undefined {
    const known = this.lots.find((lot) => lot.name === name)
    if (name.length > 80) return `must have 80 characters at most; read ${name.length}`
    if (!known || known.species === this.plan.job.species) return undefined
    const wood = this.woods.find(({ key }) => key === known.species)?.name ?? known.species
    return `must be a lot of this wood; the lot ${name} is ${wood}`
  }

  override render() {
    const { job } = this.plan
    const written = this.typed.mass.trim()
    const mass = readMass(written, job.units)
    const lot = (this.typed.lot ?? job.lot ?? '').trim()
    const lotError = this.lotError(lot)
    const ready = mass !== undefined && lot !== '' && !lotError && !this.busy
    return html`
      <section class="page" aria-labelledby="scales">
        <h3 id="scales">A finished ${job.profile.split ? 'half' : 'piece'} on the scales</h3>
        <p class="small soft">
          Boards of one wood differ by a tenth in weight and more. Weigh soon after turning, at ${job.moisture} % MC, before
          the finish; several pieces of one lot are averaged.
        </p>
        <div class="fields">
          ${textField({
            path: 'weighed',
            label: 'It weighs',
            value: this.typed.mass,
            error:
              written !== '' && mass === undefined
                ? `must be ${READABLE_MASSES}; read “${written}”`
                : undefined,
            hint:
              mass === undefined
                ? `${job.units === 'in' ? 'oz' : 'g'} unless another unit is said`
                : this.beside(mass),
            placeholder: massIn(this.predicted(), job.units).split(' (')[0]!,
            enter: (text) => this.enter({ mass: text, at: new Date().toISOString() }),
          })}
          ${textField({
            path: 'weighed-lot',
            label: 'Lot of wood',
            value: this.typed.lot ?? job.lot ?? '',
            error: lotError,
            list: 'lots',
            hint: 'boards bought together',
            placeholder: 'barn, May',
            enter: (text) => this.enter({ lot: text }),
          })}
        </div>
        <datalist id="lots">
          ${this.lots.filter(({ species }) => species === job.species).map(({ name }) => html`<option value=${name}></option>`)}
        </datalist>
        <div class="buttons">
          <button type="button" ?disabled=${!ready} @click=${() => this.weigh({ mass: mass!, lot, at: this.typed.at ?? '' })}>
            ${this.busy ? 'Keeping it…' : 'Correct the lot’s density'}
          </button>
        </div>
        ${mass !== undefined && lot === '' ? html`<p class="hint">Name the lot its density is kept for.</p>` : nothing}
      </section>
    `
  }

  /** The weighing beside the prediction. */
  private beside(mass: number): string {
    const share = Math.round((mass / this.predicted() - 1) * 100)
    const than =
      share === 0 ? 'as predicted' : `${Math.abs(share)} % ${share < 0 ? 'less' : 'more'} than predicted`
    return `${massIn(mass, this.plan.job.units)}, ${than}`
  }

  private weigh(detail: Weighed) {
    this.dispatchEvent(new CustomEvent('weigh', { detail }))
  }
}
