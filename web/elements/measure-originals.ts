import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { lengthEntryText } from '../entry.ts'
import {
  type EnteredDatum,
  type EnteredSheet,
  withOriginal,
  withOriginalChange,
  withoutOriginal,
} from '../sheet-file.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'
import { type Choice, choiceField, textField } from './field.ts'
import { tellSheet } from './measure-entry.ts'

/** Where old pieces are measured from when their foot is worn or gone. */
const datums = ['shoulder', 'seat', 'top'] as const
const OTHER = 'other'

const datumChoices: readonly Choice[] = [
  ['', 'the foot'],
  ...datums.map((name): Choice => [name, `the ${name}`]),
  [OTHER, 'another place'],
]

/**
 * The originals that are measured, one of them in hand; what its positions are counted from, and its wear. Sends
 * `sheet-edit`, and `go-original` with the index of the one to go on with.
 */
@customElement('measure-originals')
export class MeasureOriginals extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      button[aria-pressed='true'] {
        border-color: var(--accent);
        border-width: 3px;
        background: var(--accent-wash);
      }
    `,
  ]

  @property({ attribute: false }) sheet!: EnteredSheet
  @property({ type: Number }) original = 0
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  private change(change: Parameters<typeof withOriginalChange>[2], field: string) {
    tellSheet(this, {
      sheet: withOriginalChange(this.sheet, this.original, change),
      stroke: `original ${this.original} ${field}`,
    })
  }

  private go(original: number) {
    this.dispatchEvent(new CustomEvent('go-original', { detail: original }))
  }

  private readonly add = () => {
    const sheet = withOriginal(this.sheet)
    tellSheet(this, { sheet, stroke: '' })
    this.go(sheet.originals.length - 1)
  }

  private readonly drop = () => {
    const { original } = this
    this.go(Math.max(0, original - 1))
    tellSheet(this, { sheet: withoutOriginal(this.sheet, original), stroke: '' })
  }

  private readonly chooseDatum = (name: string) => {
    const datum = this.sheet.originals[this.original]!.datum
    const towards = name === 'top' || name === 'seat' ? 'foot' : (datum?.towards ?? 'top')
    this.change(
      { datum: name === '' ? undefined : { ...datum, name: name === OTHER ? '' : name, towards } },
      'datum',
    )
  }

  override render() {
    const { originals, units } = this.sheet
    const original = originals[this.original]!
    const { datum } = original
    const path = `originals[${this.original}]`
    const several = originals.length > 1
    return html`<div class="card">
      <h2>Originals</h2>
      <div class="buttons" role="group" aria-label="Original in hand">
        ${originals.map(
          ({ name }, k) => html`<button type="button" aria-pressed=${k === this.original ? 'true' : 'false'}
            @click=${() => this.go(k)}>${name || `Original ${k + 1}`}</button>`,
        )}
        <button type="button" @click=${this.add}>Add an original</button>
      </div>
      <div class="fields">
        ${textField({ path: `${path}.name`, label: 'Name of this original', value: original.name, error: this.errors.get(`${path}.name`), enter: (name) => this.change({ name }, 'name') })}
        ${choiceField({
          path: `${path}.datum`,
          label: 'Positions are read from',
          value: datum ? (datums.find((name) => name === datum.name) ?? OTHER) : '',
          choices: datumChoices,
          enter: this.chooseDatum,
        })}
        ${datum ? this.datumFields(datum, path) : nothing}
        ${textField({
          path: `${path}.wear`,
          label: `Worn off the foot, ${units}`,
          value: lengthEntryText(original.wear),
          placeholder: 'nothing',
          error: this.errors.get(`${path}.wear`),
          hint: 'The new piece is longer by it.',
          enter: (wear) => this.change({ wear }, 'wear'),
        })}
      </div>
      ${several ? html`<ask-twice label="Delete this original" question="Delete ${original.name} and all its readings?" answer="Yes, delete it" danger @confirmed=${this.drop}></ask-twice>` : nothing}
    </div>`
  }

  private datumFields(datum: EnteredDatum, path: string) {
    const { units } = this.sheet
    const set = (change: Partial<EnteredDatum>, field: string) => {
      const { fromFoot, ...rest } = { ...datum, ...change }
      this.change(
        { datum: { ...rest, ...(fromFoot !== undefined && fromFoot !== '' && { fromFoot }) } },
        field,
      )
    }
    return html`
      ${
        datums.some((name) => name === datum.name)
          ? nothing
          : textField({
              path: `${path}.datum.name`,
              label: 'Name of that place',
              value: datum.name,
              placeholder: 'rail, collar…',
              enter: (name) => set({ name }, 'datum name'),
            })
      }
      ${textField({
        path: `${path}.datum.fromFoot`,
        label: `It lies from the foot, ${units}`,
        value: lengthEntryText(datum.fromFoot),
        error: this.errors.get(`${path}.datum.fromFoot`),
        hint: 'As the piece stands today; left empty, the reading at the foot tells it.',
        enter: (fromFoot) => set({ fromFoot }, 'datum distance'),
      })}
      ${choiceField({
        path: `${path}.datum.towards`,
        label: 'Counted from it',
        value: datum.towards,
        choices: [
          ['top', 'towards the top'],
          ['foot', 'towards the foot'],
        ],
        enter: (towards) => set({ towards: towards as EnteredDatum['towards'] }, 'datum direction'),
      })}
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-originals': MeasureOriginals
  }
}
