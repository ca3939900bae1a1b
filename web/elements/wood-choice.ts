import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { sawnMoisture } from '../../shared/wood/green-moisture.ts'
import type { Lot } from '../../shared/wood/lot.ts'
import type { Species } from '../../shared/wood/species.ts'
import { entryAt, tellEntry } from '../entry.ts'
import type { JobFile } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { choiceField, textField } from './field.ts'
import { confidenceOf, markOf } from './species-words.ts'

/** The wood of the job, its moisture and how its grain should lie. Sends `entry`. */
@customElement('wood-choice')
export class WoodChoice extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) woods: readonly Species[] = []
  /** Lots the shop knows. */
  @property({ attribute: false }) lots: readonly Lot[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false

  private percent(
    path: 'lumber.moisture' | 'moisture' | 'serviceMoisture',
    label: string,
    placeholder = '8',
  ) {
    return textField({
      path,
      label,
      unit: '% MC',
      inputmode: 'decimal',
      value: String(entryAt(this.file, path) ?? ''),
      placeholder,
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text) => tellEntry(this, path, text),
    })
  }

  /** What is reckoned with where nobody says what the wood holds when it is sawn, % MC. */
  private sawnWhenUnsaid(): string {
    const { species, moisture = 8, lumber: { dryness, sap } = {} } = this.file
    const unsaid = sawnMoisture({
      species,
      moisture: Number(moisture),
      lumber: { ...(dryness && { dryness }), ...(sap && { sap }) },
    })
    return String(unsaid.moisture)
  }

  override render() {
    const wood = this.woods.find(({ key }) => key === this.file.species)
    return html`
      <div class="page">
        <div class="fields">
          ${this.picker()}
          ${this.percent('lumber.moisture', 'Moisture when sawn', this.sawnWhenUnsaid())}
          ${this.percent('moisture', 'Moisture when turned')}
          ${this.percent('serviceMoisture', 'Moisture in use')}
          ${choiceField({
            path: 'grain',
            label: 'Grain',
            value: this.file.grain ?? 'any',
            choices: [
              ['any', 'any'],
              ['rift', 'rift: rings at 45°'],
              ['straight', 'straight'],
            ],
            error: this.errors.get('grain'),
            disabled: this.disabled,
            enter: (text) => tellEntry(this, 'grain', text),
          })}
          ${textField({
            path: 'lot',
            label: 'Lot of wood',
            wide: true,
            hint: 'boards bought together; finished pieces weighed correct its density',
            value: this.file.lot ?? '',
            list: 'lots',
            error: this.errors.get('lot'),
            disabled: this.disabled,
            enter: (text) => tellEntry(this, 'lot', text),
          })}
          <datalist id="lots">
            ${this.lots.filter(({ species }) => species === this.file.species).map(({ name }) => html`<option value=${name}></option>`)}
          </datalist>
        </div>
        ${wood ? this.told(wood) : nothing}
      </div>
    `
  }

  /** Woods whose figures stand on print come first; the others carry their mark. */
  private picker() {
    const [safe, others] = [this.woods.filter((wood) => wood.safe), this.woods.filter((wood) => !wood.safe)]
    const options = (woods: readonly Species[]) =>
      woods.map(
        (wood) =>
          html`<option value=${wood.key} .selected=${live(wood.key === this.file.species)}>${wood.name}${markOf(wood)}</option>`,
      )
    const error = this.errors.get('species')
    const known = this.woods.some(({ key }) => key === this.file.species)
    return html`
      <div class="field">
        <label for="species">Wood</label>
        <select
          id="species"
          data-path="species"
          ?disabled=${this.disabled}
          aria-invalid=${error ? 'true' : nothing}
          aria-describedby=${error ? 'species-error' : nothing}
          @change=${(event: Event) => tellEntry(this, 'species', (event.target as HTMLSelectElement).value)}
        >
          ${known ? nothing : html`<option value=${this.file.species} selected>${this.file.species || 'choose a wood'}</option>`}
          <optgroup label="Figures that stand on print">${options(safe)}</optgroup>
          <optgroup label="Figures less sure, marked">${options(others)}</optgroup>
        </select>
        ${error ? html`<p class="error" id="species-error">${error}</p>` : nothing}
      </div>
    `
  }

  private told(wood: Species) {
    return html`
      <p class="small soft">
        ${wood.name}${wood.botanical ? html` (<i>${wood.botanical}</i>)` : nothing}, ${wood.kind}. Source: ${wood.source};
        ${confidenceOf(wood)}${wood.notes ? html`. ${wood.notes}` : nothing}
      </p>
      ${
        wood.safe
          ? nothing
          : html`<p class="caution">The figures of this wood are less sure: check what rests on them before buying.</p>`
      }
    `
  }
}
