import { css, html, LitElement, nothing, type PropertyValues } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Photo } from '../../shared/profile/measured/sheet.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { lengthEntryText } from '../entry.ts'
import { nudgedFoot, type PhotoPlace, photoPlace } from '../photo-place.ts'
import { shrunkPhoto } from '../photo-shrink.ts'
import type { EnteredPhotoLine, EnteredSheet } from '../sheet-file.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'
import { choiceField, textField } from './field.ts'
import { tellSheet } from './measure-entry.ts'
import './photo-overlay.ts'
import './photo-points.ts'

type Point = [number, number]

/** So far two known lengths may differ before it is told, %: common practice, no source. */
const DISAGREEMENT_TOLD = 2
/** One nudge, mm. */
const NUDGE = 0.5

const nudges: readonly { label: string; sign: string; by: Point }[] = [
  { label: 'towards the foot', sign: '←', by: [-NUDGE, 0] },
  { label: 'towards the top', sign: '→', by: [NUDGE, 0] },
  { label: 'across, one way', sign: '↑', by: [0, -NUDGE] },
  { label: 'across, the other way', sign: '↓', by: [0, NUDGE] },
]

/**
 * A photograph of the piece, scaled by lengths known on it and laid behind the drawing. Sends `photo` with the
 * picture as a data address or `null`, `sheet-edit` with the known lengths.
 */
@customElement('measure-photo')
export class MeasurePhoto extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .known {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr));
      }
      .known > div {
        display: grid;
        gap: var(--space-2);
        align-content: start;
      }
      input[type='range'] {
        padding: 0;
      }
      .nudges button {
        min-width: 3.5rem;
      }
    `,
  ]

  @property({ attribute: false }) sheet!: EnteredSheet
  /** The known lengths as read, mm. */
  @property({ attribute: false }) photo?: Photo
  @property() image = ''
  @property({ attribute: false }) profile?: Profile
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @state() private size?: { width: number; height: number }
  @state() private told = ''
  @state() private opacity = 0.6
  @state() private setsFoot = false

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('image')) void this.measure(this.image)
  }

  private async measure(image: string) {
    this.size = undefined
    if (!image) return
    const picture = new Image()
    picture.src = image
    try {
      await picture.decode()
      if (image === this.image) this.size = { width: picture.naturalWidth, height: picture.naturalHeight }
    } catch {
      this.told = 'The photograph cannot be shown: choose it again.'
    }
  }

  private readonly choose = async (event: Event) => {
    const field = event.target as HTMLInputElement
    const file = field.files?.[0]
    if (!file) return
    try {
      this.told = ''
      this.give(await shrunkPhoto(file))
      this.tell({ lines: [] })
    } catch (failure) {
      this.told = (failure as Error).message
    }
    field.value = ''
  }

  private give(image: string | null) {
    this.dispatchEvent(new CustomEvent('photo', { detail: image }))
  }

  private tell(photo: EnteredSheet['photo'], stroke = '') {
    const { photo: _before, ...sheet } = this.sheet
    tellSheet(this, { sheet: photo ? { ...sheet, photo } : sheet, stroke })
  }

  private get entered(): NonNullable<EnteredSheet['photo']> {
    return this.sheet.photo ?? { lines: [] }
  }

  private readonly drop = () => {
    this.give(null)
    this.tell(undefined)
  }

  private readonly line = ({ detail: [from, to] }: CustomEvent<[Point, Point]>) =>
    this.tell({ ...this.entered, lines: [...this.entered.lines, { from, to }] })

  private readonly foot = ({ detail }: CustomEvent<Point>) => {
    this.setsFoot = false
    this.tell({ ...this.entered, foot: detail })
  }

  private changeLine(i: number, change: Partial<EnteredPhotoLine>, stroke: string) {
    const lines = this.entered.lines.map((line, k) => {
      if (k !== i) return line
      const { length, ...rest } = { ...line, ...change }
      return { ...rest, ...(length !== undefined && length !== '' && { length }) }
    })
    this.tell({ ...this.entered, lines }, stroke)
  }

  private readonly dropLine = (i: number) =>
    this.tell({ ...this.entered, lines: this.entered.lines.filter((_, k) => k !== i) })

  private nudge(place: PhotoPlace, by: Point) {
    const { photo, size } = this
    if (place.scale && photo && size)
      this.tell({ ...this.entered, foot: nudgedFoot(photo, place.scale, by, size) }, 'nudge')
  }

  override render() {
    return html`<div class="card">
      <h2>Photograph</h2>
      <p>A guide for lengths and shapes only, never for diameters: a camera sees the near side larger. Caliper the diameters.</p>
      <div class="field">
        <label for="file">${this.image ? 'Another photograph' : 'Photograph of the piece, taken square to it from far off'}</label>
        <input id="file" type="file" accept="image/*" @change=${this.choose} />
      </div>
      ${this.told ? html`<p class="problem" role="alert">${this.told}</p>` : nothing}
      ${this.image && this.size ? this.scaling(this.size) : nothing}
    </div>`
  }

  private scaling(size: { width: number; height: number }) {
    const { lines } = this.entered
    const place = photoPlace(this.photo)
    return html`
      <p role="status">${this.nextStep()}</p>
      <photo-points .image=${this.image} .size=${size} .lines=${lines} .foot=${this.entered.foot} .setsFoot=${this.setsFoot}
        @line=${this.line} @foot=${this.foot}></photo-points>
      ${lines.length > 0 ? html`<div class="known">${lines.map((line, i) => this.known(line, i))}</div>` : nothing}
      ${this.scaleTold(place)}
      ${place.matrix ? this.laid(place, size) : nothing}
      <div class="buttons">
        <button type="button" aria-pressed=${this.setsFoot ? 'true' : 'false'} @click=${() => {
          this.setsFoot = !this.setsFoot
        }}>Tap the foot on the axis</button>
        <ask-twice label="Take the photograph away" question="Take the photograph and its known lengths away?" answer="Yes, take it away" @confirmed=${this.drop}></ask-twice>
      </div>
    `
  }

  private nextStep(): string {
    const { lines } = this.entered
    if (this.setsFoot) return 'Tap the middle of the foot.'
    const open = lines.findIndex(({ length }) => length === undefined)
    if (open >= 0) return `Type the true length between the two points of length ${open + 1}.`
    if (lines.length === 0)
      return 'Tap the two ends of a length you have measured along the piece, the end towards the foot first.'
    if (lines.length === 1) return 'Tap the two ends of a second known length, along the piece or across it.'
    return 'Two known lengths scale the photograph; more may be tapped.'
  }

  private known(line: EnteredPhotoLine, i: number) {
    const path = `photo.lines[${i}]`
    return html`<div>
      ${textField({
        path: `${path}.length`,
        label: `Length ${i + 1}, true, ${this.sheet.units}`,
        value: lengthEntryText(line.length),
        error: this.errors.get(`${path}.length`),
        enter: (length) => this.changeLine(i, { length }, `photo length ${i}`),
      })}
      ${choiceField({
        path: `${path}.way`,
        label: `Length ${i + 1} runs`,
        value: line.way ?? (i === 0 ? 'along' : ''),
        choices: [
          ...(i === 0 ? [] : [['', 'as it was tapped'] as const]),
          ['along', 'along the piece'],
          ['across', 'across it'],
        ],
        enter: (way) => {
          const { way: _before, ...rest } = line
          const lines = this.entered.lines.map((each, k) =>
            k === i ? { ...rest, ...(way && { way: way as 'along' }) } : each,
          )
          this.tell({ ...this.entered, lines })
        },
      })}
      <button type="button" @click=${() => this.dropLine(i)}>Delete length ${i + 1}</button>
    </div>`
  }

  private scaleTold({ scale, why }: PhotoPlace) {
    if (why) return html`<p class="caution">${why}</p>`
    if (!scale) return nothing
    const { pxPerMm, disagreement } = scale
    return html`
      <p>${pxPerMm.toFixed(2)} pixels to a mm.${disagreement === undefined ? ' One length alone cannot be checked: add a second.' : ` The known lengths disagree by ${disagreement.toFixed(1)} %.`}</p>
      ${
        disagreement !== undefined && disagreement > DISAGREEMENT_TOLD
          ? html`<p class="caution">A camera held tilted, or a point tapped beside its mark, does that: tap again, or take the photograph square to the piece and from farther off.</p>`
          : nothing
      }
    `
  }

  private laid(place: PhotoPlace, size: { width: number; height: number }) {
    return html`
      <photo-overlay .image=${this.image} .size=${size} .matrix=${place.matrix} .profile=${this.profile} .opacity=${this.opacity}></photo-overlay>
      <div class="field">
        <label for="opacity">How strongly the photograph shows: ${Math.round(this.opacity * 100)} %</label>
        <input id="opacity" type="range" min="0.1" max="1" step="0.05" .value=${String(this.opacity)} @input=${(
          event: Event,
        ) => {
          this.opacity = Number((event.target as HTMLInputElement).value)
        }} />
      </div>
      <div class="buttons nudges" role="group" aria-label="Nudge the photograph by ${NUDGE} mm">
        <span class="label">Nudge by ${NUDGE} mm</span>
        ${nudges.map(({ label, sign, by }) => html`<button type="button" aria-label="Nudge ${label}" @click=${() => this.nudge(place, by)}>${sign}</button>`)}
      </div>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-photo': MeasurePhoto
  }
}
