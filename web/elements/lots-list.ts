import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Units } from '../../shared/units/length.ts'
import { densityOf, massOf } from '../../shared/wood/density.ts'
import { type Lot, lotDensity, type Weighing } from '../../shared/wood/lot.ts'
import type { Species } from '../../shared/wood/species.ts'
import { tellEntry } from '../entry.ts'
import { withoutLot, withoutWeighing } from '../lots.ts'
import { pageWear } from '../styles/all.ts'
import { momentText } from '../time-text.ts'
import { massIn } from './mass-words.ts'

/** The lots of the shop with what finished pieces of them weighed. Sends `entry` with the lots that are left. */
@customElement('lots-list')
export class LotsList extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .hint {
        margin-bottom: var(--space-3);
      }
      .lots {
        display: grid;
        gap: var(--space-4);
      }
      .lot {
        display: grid;
        gap: var(--space-2);
        padding-bottom: var(--space-3);
        border-bottom: 1px solid var(--line);
      }
      .weighings li {
        max-width: 36rem;
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        align-items: center;
        padding-block: var(--space-1);
      }
    `,
  ]

  @property({ attribute: false }) lots: readonly Lot[] = []
  @property({ attribute: false }) woods: readonly Species[] = []
  @property() units: Units = 'in'

  private tell(lots: Lot[]) {
    tellEntry(this, 'lots', lots)
  }

  override render() {
    return html`
      <p class="hint">
        Boards bought together. Finished pieces weighed on the Part page of a job correct the density of the table for the
        jobs of their lot.
      </p>
      ${this.lots.length === 0 ? html`<p class="soft">No piece has been weighed yet.</p>` : nothing}
      <ul class="plain lots">${this.lots.map((lot) => html`<li>${this.lot(lot)}</li>`)}</ul>
    `
  }

  private lot(lot: Lot) {
    const wood = this.woods.find(({ key }) => key === lot.species)
    const density = wood && lotDensity(lot, wood)
    return html`<div class="lot" role="group" aria-label="Lot ${lot.name}">
      <h3>${lot.name}</h3>
      <p>
        ${wood?.name ?? lot.species}${density && density.factor !== 1 ? `: ${(density.factor * 100).toFixed(1)} % of the table’s density` : ': the table’s density'}
      </p>
      ${density?.cautions.map((text) => html`<p class="caution"><span>${text}</span></p>`)}
      <ul class="plain weighings">${lot.weighings.map((weighing, i) => this.weighing(lot, wood, weighing, i))}</ul>
      <div class="buttons">
        <button type="button" class="danger" aria-label="Delete the lot ${lot.name}" @click=${() => this.tell(withoutLot(this.lots, lot.name))}>
          Delete the lot
        </button>
      </div>
    </div>`
  }

  private weighing(
    { name }: Lot,
    wood: Species | undefined,
    { mass, volume, moisture, at }: Weighing,
    i: number,
  ) {
    const density = wood && densityOf(wood, moisture)
    const share = density && Math.round((mass / massOf(volume, density)) * 100)
    return html`<li>
      <div>
        <p>${massIn(mass, this.units)}${share === undefined ? '' : `, ${share} % of the table’s`}</p>
        <p class="small soft">at ${moisture} % MC${at ? `, ${momentText(at)}` : ''}</p>
      </div>
      <button type="button" aria-label="Take back weighing ${i + 1} of ${name}" @click=${() => this.tell(withoutWeighing(this.lots, name, i))}>
        Take back
      </button>
    </li>`
  }
}
