import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { type ShapeName, type Shoulder, shapeNames } from '../../shared/profile/profile.ts'
import { lengthEntryText, tellEntry } from '../entry.ts'
import type { EnteredStation } from '../job-file.ts'
import { movedStation, withoutStation, withStation } from '../station-order.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField, tickField } from './field.ts'
import { stationsLook } from './stations-look.ts'

const shapes: readonly Choice[] = shapeNames.map((name) => [name, name])

/** Beyond so many stations rows out of sight are not laid out. */
const MANY = 100

const shoulders: readonly Choice[] = [
  ['square', 'cut square in'],
  ['rounded', 'rounded over'],
]

/** What sizes a span beyond the diameters at its ends. */
const sizeOf: Partial<
  Record<ShapeName, { field: 'rise' | 'depth' | 'side'; label: string; placeholder?: string }>
> = {
  bead: { field: 'rise', label: 'Rise', placeholder: 'half round' },
  cove: { field: 'depth', label: 'Depth', placeholder: 'half round' },
  square: { field: 'side', label: 'Side' },
}

const pairOf = (shoulder: EnteredStation['shoulder']): [Shoulder, Shoulder] =>
  Array.isArray(shoulder) ? shoulder : [shoulder ?? 'square', shoulder ?? 'square']

/**
 * The stations of a profile from the foot to the top, to write and rearrange. Sends `entry` with the path and value of
 * each change, and `station` with the index the person is at.
 */
@customElement('stations-table')
export class StationsTable extends LitElement {
  static override styles = [...pageWear, stationsLook]

  @property({ attribute: false }) stations: readonly EnteredStation[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false
  @state() private open = new Set<number>()
  private keys: number[] = []
  private nextKey = 0

  /** Rows keep their own key while they move, so that focus and open rows move with them. */
  private keyOf(index: number): number {
    while (this.keys.length <= index) this.keys.push(this.nextKey++)
    return this.keys[index]!
  }

  private change(stations: EnteredStation[]) {
    tellEntry(this, 'profile.stations', stations)
  }

  private enter(index: number, field: keyof EnteredStation, value: unknown) {
    tellEntry(this, `profile.stations[${index}].${field}`, value)
  }

  private async insert(index: number) {
    this.keys.splice(index, 0, this.nextKey++)
    this.change(withStation(this.stations, index))
    await this.focusField(index, 'at')
  }

  private async drop(index: number) {
    this.open.delete(this.keyOf(index))
    this.keys.splice(index, 1)
    this.change(withoutStation(this.stations, index))
    await this.focusField(Math.min(index, this.stations.length - 2), 'at')
  }

  private async move(index: number, by: -1 | 1) {
    const to = index + by
    this.keyOf(Math.max(index, to))
    this.keys.splice(to, 0, ...this.keys.splice(index, 1))
    this.change(movedStation(this.stations, index, by))
    await this.updateComplete
    const buttons = this.renderRoot.querySelectorAll<HTMLButtonElement>(`#row-${to} .moves button`)
    const same = buttons[by === -1 ? 0 : 1]
    ;(same?.disabled ? buttons[by === -1 ? 1 : 0] : same)?.focus()
  }

  private async focusField(index: number, field: string) {
    await this.updateComplete
    await new Promise(requestAnimationFrame)
    this.renderRoot.querySelector<HTMLElement>(`[data-path="profile.stations[${index}].${field}"]`)?.focus()
  }

  private toggle(index: number) {
    const [key, open] = [this.keyOf(index), new Set(this.open)]
    if (!open.delete(key)) open.add(key)
    this.open = open
  }

  override render() {
    this.keyOf(this.stations.length - 1)
    return html`
      <div class="heads" aria-hidden="true">
        <span></span><span>At, from the foot</span><span>Diameter</span><span>Then</span><span>Rise, depth or side</span>
        <span>Name</span><span>Check</span><span></span>
      </div>
      <ol class="plain ${this.stations.length > MANY ? 'many' : ''}">
        ${repeat(
          this.stations,
          (_, i) => this.keyOf(i),
          (station, i) => this.row(station, i),
        )}
      </ol>
      ${this.errors.has('profile.stations') ? html`<p class="error">${this.errors.get('profile.stations')}</p>` : nothing}
      ${
        this.disabled
          ? nothing
          : html`<div class="buttons">
            <button type="button" @click=${() => this.insert(this.stations.length)}>Add a station at the top</button>
          </div>`
      }
    `
  }

  private field(station: EnteredStation, i: number, field: keyof EnteredStation, label: string, more = {}) {
    const path = `profile.stations[${i}].${field}`
    return textField({
      path,
      label,
      value:
        field === 'name' || field === 'key' ? String(station[field] ?? '') : lengthEntryText(station[field]),
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text) => this.enter(i, field, text),
      ...more,
    })
  }

  private row(station: EnteredStation, i: number) {
    const last = i === this.stations.length - 1
    // A file from elsewhere may give the last station a shape: it is shown, to be taken away.
    const misplaced = station.then !== undefined && station.then !== 'straight'
    const size = last ? undefined : sizeOf[station.then ?? 'straight']
    const open = this.open.has(this.keyOf(i))
    const whole = this.errors.get(`profile.stations[${i}]`)
    return html`
      <li><div
        class="row"
        id="row-${i}"
        role="group"
        aria-label="Station ${i}${station.name ? `, ${station.name}` : ''}"
        @focusin=${() => this.dispatchEvent(new CustomEvent('station', { detail: i, bubbles: true, composed: true }))}
      >
        <span class="index">${i}</span>
        <div class="cell at">${this.field(station, i, 'at', 'At', { quiet: true })}</div>
        <div class="cell diameter">${this.field(station, i, 'diameter', 'Diameter', { quiet: true })}</div>
        <div class="cell then">
          ${last && !misplaced ? html`<span class="soft top">top</span>` : this.shape(station, i)}
        </div>
        <div class="cell size ${size ? '' : 'none'}">
          ${size ? this.field(station, i, size.field, size.label, { placeholder: size.placeholder ?? '' }) : nothing}
        </div>
        <div class="cell name">${this.field(station, i, 'name', 'Name', { quiet: true })}</div>
        <div class="cell check">
          ${tickField({
            path: `profile.stations[${i}].check`,
            label: 'Check',
            quiet: true,
            on: station.check ?? false,
            disabled: this.disabled,
            enter: (on) => this.enter(i, 'check', on || undefined),
          })}
        </div>
        <div class="cell more">
          <button
            type="button"
            class="icon"
            aria-expanded=${open ? 'true' : 'false'}
            aria-label="More of station ${i}"
            @click=${() => this.toggle(i)}
          >⋯</button>
        </div>
        ${whole ? html`<p class="error whole">${whole}</p>` : nothing}
        ${open ? this.more(station, i, last) : nothing}
      </div></li>
    `
  }

  private shape(station: EnteredStation, i: number) {
    return choiceField({
      path: `profile.stations[${i}].then`,
      label: 'Then',
      quiet: true,
      value: station.then ?? 'straight',
      choices: shapes,
      error: this.errors.get(`profile.stations[${i}].then`),
      disabled: this.disabled,
      enter: (shape) => this.enter(i, 'then', shape),
    })
  }

  private more(station: EnteredStation, i: number, last: boolean) {
    const end = i === 0 || last
    const tick = (field: 'fixed' | 'tenon' | 'trimLater', label: string) =>
      tickField({
        path: `profile.stations[${i}].${field}`,
        label,
        on: station[field] ?? false,
        disabled: this.disabled,
        enter: (on) => this.enter(i, field, on || undefined),
      })
    return html`
      <div class="open">
        ${station.then === 'square' && !last ? this.shoulders(station, i) : nothing}
        <div class="fields">
          ${this.field(station, i, 'plus', 'Tolerance over', { placeholder: 'as the job' })}
          ${this.field(station, i, 'minus', 'Tolerance under', { placeholder: 'as the job' })}
          ${this.field(station, i, 'key', 'Own key for readings', { placeholder: `s${i}` })}
          ${tick('fixed', 'Fixed: never brought down')}
          ${last ? nothing : tick('tenon', 'This span is a tenon')}
          ${end ? tick('trimLater', 'Left long, trimmed after glue-up') : nothing}
        </div>
        ${
          this.disabled
            ? nothing
            : html`<div class="buttons moves">
              <button type="button" ?disabled=${i === 0} @click=${() => this.move(i, -1)}>Towards the foot</button>
              <button type="button" ?disabled=${last} @click=${() => this.move(i, 1)}>Towards the top</button>
              <button type="button" @click=${() => this.insert(i + 1)}>Insert after</button>
              <button type="button" class="danger" ?disabled=${this.stations.length <= 2} @click=${() => this.drop(i)}>
                Delete station ${i}
              </button>
            </div>`
        }
      </div>
    `
  }

  private shoulders(station: EnteredStation, i: number) {
    const pair = pairOf(station.shoulder)
    const shoulder = (side: 0 | 1, label: string) =>
      choiceField({
        path: `profile.stations[${i}].shoulder${side}`,
        label,
        value: pair[side],
        choices: shoulders,
        error: side === 0 ? this.errors.get(`profile.stations[${i}].shoulder`) : undefined,
        disabled: this.disabled,
        enter: (chosen) => {
          const next: [Shoulder, Shoulder] = [...pair]
          next[side] = chosen as Shoulder
          this.enter(i, 'shoulder', next[0] === next[1] ? next[0] : next)
        },
      })
    return html`<div class="fields">
      ${shoulder(0, 'Shoulder towards the foot')} ${shoulder(1, 'Shoulder towards the top')}
      ${pair.includes('rounded') ? this.field(station, i, 'shoulderLength', 'Length of the rounding', { placeholder: 'natural' }) : nothing}
    </div>`
  }
}
