import { css, html, LitElement, nothing, type PropertyValues } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { freeGroups } from '../../shared/profile/free-diameters.ts'
import { ofOnePiece } from '../../shared/profile/part.ts'
import type { Station } from '../../shared/profile/profile.ts'
import { solidOf } from '../../shared/profile/solid.ts'
import { type WeightAnswer, weightFor } from '../../shared/profile/weight-target.ts'
import { inches, nm, READABLE_LENGTHS, readLength } from '../../shared/units/length.ts'
import { READABLE_MASSES, readMass } from '../../shared/units/mass.ts'
import { massOf } from '../../shared/wood/density.ts'
import { inUnitsFirst } from '../field-words.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { changeText } from './amounts.ts'
import { textField, tickField } from './field.ts'
import { massIn } from './mass-words.ts'

/** New stations that bring a part to a weight, and what for. */
export interface Reshape {
  stations: Station[]
  label: string
}

/** What is asked of the part, as typed, and the stations held as they are. */
interface Target {
  mass: string
  balance: string
  keep: readonly number[]
}

const nothingAsked: Target = { mass: '', balance: '', keep: [] }
const place = (jobId: string) => `setwright.weight-wanted.${jobId}`

/** Diameters are set to what a caliper is set to: 1/64 in, or a tenth of a millimetre. */
const step = (units: Plan['job']['units']): number => (units === 'mm' ? 0.1 : inches(1 / 64))

/** Weight and balance point, and how to come to others; what is asked stays over a reload. Sends `reshape`. */
@customElement('weight-card')
export class WeightCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      table {
        max-width: 40rem;
      }
      .held {
        display: grid;
        gap: 0 var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  /** The batch is started: the part stays as it is. */
  @property({ type: Boolean }) frozen = false
  @property() jobId = ''
  @state() private target: Target = nothingAsked

  constructor() {
    super()
    new SessionController(this)
  }

  protected override willUpdate(changed: PropertyValues<this>) {
    if (changed.has('jobId')) this.target = keptEntry(place(this.jobId), nothingAsked)
  }

  private ask(change: Partial<Target>) {
    this.target = { ...this.target, ...change }
    keepEntry(place(this.jobId), this.target)
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  override render() {
    const { part, job } = this.plan
    if (part.mass === undefined || part.density === undefined)
      return html`<div class="page">
        <p class="caution">
          <span>No specific gravity is on record for this wood: its weight cannot be told. A wood of the shop’s own gets it
          on the <a href="/shop">Shop page</a>.</span>
        </p>
        <dl class="figures">${this.balancePoint()}</dl>
      </div>`
    const half = job.profile.split
    return html`
      <div class="page">
        <dl class="figures">
          <div>
            <dt>${half ? 'The glued pair weighs' : 'A finished part weighs'}</dt>
            <dd>${massIn(part.mass, job.units)}</dd>
            <dd class="note">
              ${half ? `a half ${massIn(ofOnePiece(part.mass, job.profile), job.units)}; ` : ''}at ${job.moisture} % MC, ${Math.round(part.density)} kg/m³
            </dd>
          </div>
          ${this.balancePoint()} ${part.lot ? this.lot(part.lot) : nothing}
        </dl>
        ${part.lot?.cautions.map((text) => html`<p class="caution"><span>${text}</span></p>`)}
        ${
          this.frozen
            ? html`<p class="small soft">The batch is started: its profile, and with it its weight, stays as planned.</p>`
            : this.wanted(part.density)
        }
      </div>
    `
  }

  private balancePoint() {
    const { part } = this.plan
    return html`<div>
      <dt>Balances at</dt>
      <dd>${this.mm(part.centroid)} from the foot</dd>
      <dd class="note">of ${this.mm(part.length)}</dd>
    </div>`
  }

  private lot({ name, factor, weighings }: NonNullable<Plan['part']['lot']>) {
    return html`<div>
      <dt>Lot ${name}</dt>
      <dd>${(factor * 100).toFixed(1)} % of the table’s density</dd>
      <dd class="note">from ${weighings} ${weighings === 1 ? 'weighing' : 'weighings'}; listed on the <a href="/shop">Shop page</a></dd>
    </div>`
  }

  private wanted(density: number) {
    const { units } = this.plan.job
    const mass = this.target.mass.trim() === '' ? undefined : readMass(this.target.mass, units)
    const balance = this.target.balance.trim() === '' ? undefined : readLength(this.target.balance, units)
    const massError =
      this.target.mass.trim() !== '' && mass === undefined
        ? `must be ${READABLE_MASSES}; read “${this.target.mass.trim()}”`
        : undefined
    const balanceError =
      this.target.balance.trim() !== '' && (balance === undefined || balance <= 0)
        ? `${inUnitsFirst(`must be ${READABLE_LENGTHS}`, units)}; read “${this.target.balance.trim()}”`
        : undefined
    const asked = (mass !== undefined || balance !== undefined) && !massError && !balanceError
    const answer = asked
      ? weightFor(this.plan.job.profile, density, {
          ...(mass !== undefined && { mass }),
          ...(balance !== undefined && { balance }),
          keep: this.keep(),
          style: lengthStyle(units),
          units,
        })
      : undefined
    return html`
      <section class="page" aria-labelledby="target">
        <h3 id="target">Make it heavier, lighter, or balance elsewhere</h3>
        <div class="fields">
          ${textField({ path: 'target-mass', label: this.plan.job.profile.split ? 'The glued pair should weigh' : 'Should weigh', value: this.target.mass, error: massError, hint: `${units === 'in' ? 'oz' : 'g'} unless another unit is said`, placeholder: massIn(this.plan.part.mass!, units).split(' (')[0]!, enter: (mass) => this.ask({ mass }) })}
          ${textField({ path: 'target-balance', label: 'Should balance, from the foot', value: this.target.balance, error: balanceError, placeholder: this.mm(this.plan.part.centroid), enter: (balance) => this.ask({ balance }) })}
        </div>
        ${this.held()} ${answer ? this.answer(answer, density) : nothing}
      </section>
    `
  }

  /** Stations held that the profile still has. */
  private keep(): number[] {
    const free = freeGroups(this.plan.job.profile, []).map(({ stations }) => stations[0]!)
    return this.target.keep.filter((index) => free.includes(index))
  }

  /** What may change, to be held as it is; squares, tenons and fixed stations are held anyway. */
  private held() {
    const { profile } = this.plan.job
    const groups = freeGroups(profile, [])
    if (groups.length === 0) return html`<p class="soft">Every diameter is held: nothing can change.</p>`
    return html`
      <details>
        <summary>Hold some diameters as they are${this.keep().length > 0 ? ` (${this.keep().length} held)` : ''}</summary>
        <div class="held">
          ${groups.map(({ stations, diameter }) => {
            const first = stations[0]!
            return tickField({
              path: `keep-${first}`,
              label: `${stations.length > 1 ? `${this.place(first)} to ${this.place(stations.at(-1)!)}` : this.place(first)}, Ø ${this.mm(diameter)}`,
              on: this.target.keep.includes(first),
              enter: (on) => {
                this.ask({
                  keep: on ? [...this.target.keep, first] : this.target.keep.filter((i) => i !== first),
                })
              },
            })
          })}
        </div>
        <p class="small soft">Squares, tenons and fixed stations are held anyway.</p>
      </details>
    `
  }

  /** What a station is called, and where it is. */
  private place(index: number): string {
    const { name, at } = this.plan.job.profile.stations[index]!
    return `${name ?? `station ${index}`} at ${this.mm(at)}`
  }

  private answer(answer: WeightAnswer, density: number) {
    if (answer.why)
      return html`<p class="caution" role="status"><span>${answer.why}</span></p> ${this.alone(answer)}`
    const stations = this.rounded(answer)
    const changes = answer.changes.filter(({ index, from }) => nm(stations[index]!.diameter!) !== nm(from))
    if (changes.length === 0)
      return html`<p class="soft" role="status">It is so already, to the nearest ${this.mm(step(this.plan.job.units))} on a diameter.</p>`
    const solid = solidOf({ ...this.plan.job.profile, stations })
    return html`
      <div role="status">
        <p>
          With these diameters, set to the nearest ${this.mm(step(this.plan.job.units))}, it weighs
          ${massIn(massOf(solid.volume, density), this.plan.job.units)} and balances ${this.mm(solid.centroid)} from the foot.
        </p>
      </div>
      <table class="stack">
        <thead>
          <tr><th>Station</th><th class="number">Now</th><th class="number">Then</th><th class="number">Change</th></tr>
        </thead>
        <tbody>
          ${changes.map(({ index, from }) => {
            const to = stations[index]!.diameter!
            return html`<tr>
              <th scope="row">${this.place(index)}</th>
              <td class="number" data-label="Now">Ø ${this.mm(from)}</td>
              <td class="number" data-label="Then">Ø ${this.mm(to)}</td>
              <td class="number" data-label="Change">${changeText(to - from, (mm) => this.mm(mm))}</td>
            </tr>`
          })}
        </tbody>
      </table>
      <div class="buttons">
        <button type="button" class="main" @click=${() => this.reshape(stations)}>Put these into the profile</button>
      </div>
      ${this.alone(answer)}
    `
  }

  private rounded({ stations, changes }: WeightAnswer): Station[] {
    const by = step(this.plan.job.units)
    const changed = new Set(changes.map(({ index }) => index))
    return stations.map((station, i) =>
      changed.has(i) ? { ...station, diameter: Math.round(station.diameter! / by) * by } : station,
    )
  }

  private alone({ alone }: WeightAnswer) {
    if (alone.length < 2) return nothing
    return html`
      <details>
        <summary>Or change one place alone${this.target.mass.trim() === '' ? ', for the balance' : ', for the weight'}</summary>
        <ul class="plain">
          ${alone.map(
            ({ index, diameterChange, why }) => html`<li>
              ${this.place(index)}: ${diameterChange === undefined ? html`<span class="soft">${why}</span>` : `${changeText(diameterChange, (mm) => this.mm(mm))} on the diameter`}
            </li>`,
          )}
        </ul>
      </details>
    `
  }

  private reshape(stations: Station[]) {
    const detail: Reshape = { stations, label: 'Change the weight' }
    this.dispatchEvent(new CustomEvent('reshape', { detail }))
  }
}
