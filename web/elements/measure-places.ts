import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { GatheredStation } from '../../shared/profile/measured/gathered.ts'
import { readLength } from '../../shared/units/length.ts'
import type { Entered } from '../job-file.ts'
import { length } from '../session.ts'
import { type EnteredPlace, type EnteredSheet, readingAt } from '../sheet-file.ts'
import { pageWear } from '../styles/all.ts'

/** Beyond so many places rows out of sight are not laid out. */
const MANY = 100

/** Every place of the sheet, from the foot to the top, to go back to. Sends `go-place`. */
@customElement('measure-places')
export class MeasurePlaces extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ol {
        display: grid;
        gap: 0.25rem;
        grid-template-columns: minmax(0, 1fr);
      }
      ol.many li {
        content-visibility: auto;
        contain-intrinsic-size: auto 3rem;
      }
      button {
        display: grid;
        grid-template-columns: 1.75rem minmax(0, 1.2fr) minmax(0, 1fr) minmax(0, 1.2fr) 4.5rem 1.25rem;
        justify-content: stretch;
        gap: 0 var(--space-2);
        width: 100%;
        padding: var(--space-1) var(--space-2);
        text-align: left;
        font-weight: 500;
      }
      button[aria-current] {
        border-color: var(--accent);
        border-width: 3px;
        background: var(--accent-wash);
      }
      .wide {
        grid-column: 2 / -1;
        font-size: var(--size-small);
        color: var(--ink-soft);
      }
      .wrong {
        color: var(--under);
      }
      @media (max-width: 30rem) {
        button {
          grid-template-columns: 1.5rem minmax(0, 1fr) minmax(0, 1fr) 3.75rem 1rem;
        }
        .name {
          grid-column: 2 / -1;
          grid-row: 2;
          font-size: var(--size-small);
          color: var(--ink-soft);
        }
        .name:empty {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) sheet!: EnteredSheet
  @property({ type: Number }) original = 0
  @property({ type: Number }) place = 0
  @property({ attribute: false }) gathered: readonly GatheredStation[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()

  private written(entered: Entered | undefined) {
    if (entered === undefined || entered === '') return html`<span class="soft">–</span>`
    const mm = readLength(entered, this.sheet.units)
    return mm === undefined
      ? html`<span class="wrong">“${entered}”?</span>`
      : html`<span>${length(mm, this.sheet.units)}</span>`
  }

  private go(place: number) {
    this.dispatchEvent(new CustomEvent('go-place', { detail: place }))
  }

  override render() {
    const { sheet } = this
    if (sheet.stations.length === 0)
      return html`<p class="soft">No station yet. Begin at the foot: its position is 0.</p>`
    return html`<ol class="plain ${sheet.stations.length > MANY ? 'many' : ''}">
      ${sheet.stations.map((_, i) => html`<li>${this.row(i)}</li>`)}
    </ol>`
  }

  private row(i: number) {
    const place = this.sheet.stations[i]!
    const { at, diameters } = readingAt(this.sheet, this.original, i)
    const side = place.then === 'square' && place.side !== undefined ? place.side : undefined
    return html`<button type="button" aria-current=${i === this.place ? 'step' : nothing} @click=${() => this.go(i)}>
      <span class="soft">${i}</span><span class="name">${place.name ?? ''}</span>
      <span class="position"><span class="hidden-label">position </span>${this.written(at)}</span>
      <span>${diameters.length > 0 || side === undefined ? html`Ø ${this.written(diameters[0])}${diameters[1] ? html` × ${this.written(diameters[1])}` : nothing}` : nothing}
        ${side === undefined ? nothing : html`□ ${this.written(side)}`}</span>
      <span>${this.shapeOf(i)}${this.sagittaOf(place)}</span><span>${place.check ? html`✓<span class="hidden-label"> check</span>` : nothing}</span>
      ${this.spread(i)}
    </button>`
  }

  /** The last station closes the piece: nothing lies above it. */
  private shapeOf(i: number): string {
    const { then = 'straight' } = this.sheet.stations[i]!
    return i === this.sheet.stations.length - 1 && then === 'straight' ? 'top' : then
  }

  /** How proud a bead or deep a cove is, where that was measured. */
  private sagittaOf({ then, sagitta }: EnteredPlace) {
    if (sagitta === undefined || (then !== 'bead' && then !== 'cove')) return nothing
    return html` ${this.written(sagitta)} ${then === 'bead' ? 'high' : 'deep'}`
  }

  /** What several originals say of the place together. */
  private spread(i: number) {
    const { units, originals } = this.sheet
    const gathered = this.gathered[i]
    if (originals.length < 2 || !gathered) return nothing
    const { at, diameter } = gathered
    const told = [
      diameter &&
        diameter.n > 1 &&
        `Ø ${length(diameter.mean, units)} mean of ${diameter.n}, range ${length(diameter.range, units)}`,
      at && at.n > 1 && `at ${length(at.mean, units)}, range ${length(at.range, units)}`,
    ].filter(Boolean)
    return told.length > 0 ? html`<span class="wide">${told.join(' · ')}</span>` : nothing
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-places': MeasurePlaces
  }
}
