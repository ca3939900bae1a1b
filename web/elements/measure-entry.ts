import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import type { ShapeName } from '../../shared/profile/profile.ts'
import { readLength } from '../../shared/units/length.ts'
import { lengthEntryText } from '../entry.ts'
import type { Entered } from '../job-file.ts'
import {
  type EnteredPlace,
  type EnteredSheet,
  insertedPlace,
  readingAt,
  withDiameter,
  withFirstOnTop,
  withoutPlace,
  withPlace,
  withReading,
} from '../sheet-file.ts'
import { shapeKeys, typedDiameter } from '../sheet-keys.ts'
import { belongsOnTop, onwardPlace, placeBehind } from '../sheet-way.ts'
import { pageWear } from '../styles/all.ts'
import './big-keypad.ts'
import { tickField } from './field.ts'
import {
  type FigureName,
  figurePath,
  figureText,
  type PlaceInHand,
  roundText,
  sizeOf,
  whereText,
} from './measure-figures.ts'
import { measureLook } from './measure-look.ts'

/** A change of the sheet: strokes under one name are taken back together. */
export interface SheetEdit {
  sheet: EnteredSheet
  stroke: string
  /** The place the person is at from now on; where absent, it stays. */
  place?: number
}

/** Tells the page that the sheet was changed. */
export const tellSheet = (from: HTMLElement, detail: SheetEdit): void => {
  from.dispatchEvent(new CustomEvent('sheet-edit', { detail, bubbles: true, composed: true }))
}

/** The cursor stays in its figure while keys are pressed beside it: nothing jumps under the thumb. */
const keepFocus = (event: Event) => event.preventDefault()

/**
 * The place in hand: position, diameter, the shape above it. Enter moves on. Sends `sheet-edit` with each stroke,
 * `go-place` with the place to go to, `undo-sheet`, `redo-sheet`.
 */
@customElement('measure-entry')
export class MeasureEntry extends LitElement {
  static override styles = [...pageWear, measureLook]

  @property({ attribute: false }) sheet!: EnteredSheet
  @property({ type: Number }) original = 0
  /** Index of the place; one beyond either end for a place that is not on the sheet yet. */
  @property({ type: Number }) place = 0
  /** Where the places of this original lie, mm from the foot. */
  @property({ attribute: false }) positions: readonly (number | undefined)[] = []
  /** Where all originals together have this station, mm from the foot. */
  @property({ type: Number }) expected?: number
  /** What cannot be read, by its path in the sheet. */
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) canUndo = false
  @property({ type: Boolean }) canRedo = false
  @state() private keys = matchMedia('(pointer: coarse)').matches
  @state() private secondOpen = false
  /** Said when the person cannot move on. */
  @state() private told = ''
  /** The field being typed in: its error waits until it is left. */
  @state() private typing = ''
  private active: FigureName = 'at'
  /** The letter that was taken last, to tell the `c` of `cm`. */
  private left?: { key: string; text: string; shape: ShapeName } | undefined

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('place') || changed.has('original')) {
      this.secondOpen = false
      this.told = ''
      this.left = undefined
    }
  }

  /** Index the place has once it is on the sheet. */
  private get index(): number {
    return Math.max(0, this.place)
  }

  private get entered(): EnteredPlace {
    return (this.place >= 0 && this.sheet.stations[this.place]) || { then: 'straight' }
  }

  private get reading() {
    return this.place < 0 ? { diameters: [] } : readingAt(this.sheet, this.original, this.place)
  }

  /** The sheet with this place on it. */
  private get ground(): EnteredSheet {
    return this.place < 0 ? insertedPlace(this.sheet, 0) : this.sheet
  }

  private tell(sheet: EnteredSheet, field: string) {
    const { index } = this
    this.told = ''
    // Taken in at once, so that the next stroke finds its field.
    this.sheet = sheet
    this.place = index
    tellSheet(this, { sheet, stroke: field && `${this.original}.${index}.${field}`, place: index })
  }

  /** Puts the cursor into a figure of this place: by itself where the next one is missing. */
  async takeFocus(figure?: FigureName): Promise<void> {
    await this.updateComplete
    const { at, diameters } = this.reading
    const isRead = (text: Entered | undefined) =>
      text !== undefined && readLength(text, this.sheet.units) !== undefined
    const next = figure ?? (isRead(at) && diameters.length === 0 ? 'first' : 'at')
    const field = this.renderRoot.querySelector<HTMLInputElement>(`#${next}`)
    field?.focus({ preventScroll: this.keys })
    // A whole figure is written over, a half one is gone on with.
    if (isRead(this.textOf(next))) field?.select()
  }

  /** Brings the cursor back to where it was. */
  resume(): void {
    this.renderRoot.querySelector<HTMLElement>(`#${this.active}`)?.focus({ preventScroll: true })
  }

  private get inHand(): PlaceInHand {
    const { sheet, original, place, entered, reading } = this
    return { sheet, original, place, entered, reading }
  }

  private textOf(figure: FigureName): string {
    return figureText(this.inHand, figure)
  }

  private writeFigure(figure: FigureName, text: string) {
    this.typing = figure
    const { ground, original, index } = this
    if (figure === 'at') {
      this.left = undefined
      this.tell(
        withReading(ground, original, index, { at: text.trim() === '=' ? this.samePlace() : text }),
        'at',
      )
    } else if (figure === 'size') {
      const size = sizeOf(this.entered)
      if (size) this.tell(withPlace(ground, index, { [size.field]: text }), 'size')
    } else this.writeDiameter(figure, text)
  }

  /** As read at the place measured before: the two stations of a step. */
  private samePlace(): string {
    if (this.sheet.way === 'span') return '0'
    const before = placeBehind(this.sheet, this.original, this.place)
    return lengthEntryText(readingAt(this.sheet, this.original, before).at)
  }

  private writeDiameter(figure: 'first' | 'second', text: string) {
    const { then = 'straight', check } = this.entered
    const typed = typedDiameter(text, this.sheet.units, this.left)
    const shape = typed.takenBack ? this.left?.shape : typed.shape
    this.left = typed.shape && { key: text.slice(-1).toLowerCase(), text: typed.text, shape: then }
    let sheet = withDiameter(this.ground, this.original, this.index, figure === 'first' ? 0 : 1, typed.text)
    if (shape) sheet = withPlace(sheet, this.index, { then: shape })
    if (typed.check) sheet = withPlace(sheet, this.index, { check: check ? undefined : true })
    this.tell(sheet, figure)
    if (typed.second) this.openSecond()
    else if (typed.shape === 'square' || (typed.shape === then && sizeOf(this.entered)))
      void this.takeFocus('size')
  }

  private readonly openSecond = () => {
    this.secondOpen = true
    void this.takeFocus('second')
  }

  private shapeSpan(shape: ShapeName) {
    const again = this.entered.then === shape
    this.tell(withPlace(this.ground, this.index, { then: shape }), 'shape')
    void this.takeFocus(shape === 'square' || (again && sizeOf(this.entered)) ? 'size' : this.active)
  }

  private go(place: number, figure?: FigureName) {
    this.place = place
    this.dispatchEvent(new CustomEvent('go-place', { detail: place }))
    void this.takeFocus(figure === 'at' || figure === 'first' ? figure : undefined)
  }

  private readonly pressed = (event: KeyboardEvent) => {
    const { sheet, original, place, active } = this
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return
    if (!(event.target as Element).matches('input:not([type=checkbox])')) return
    if (event.key === 'Enter' && !event.shiftKey) this.moveOn()
    else if (event.key === 'Enter') this.go(placeBehind(sheet, original, place), active)
    else if (event.key === 'ArrowDown') this.go(Math.min(place + 1, sheet.stations.length), active)
    else if (event.key === 'ArrowUp') this.go(Math.max(place - 1, 0), active)
    else return
    event.preventDefault()
  }

  /** To the next figure of this place, or to the next place. */
  private readonly moveOn = () => {
    this.typing = ''
    const { active } = this
    const text = this.textOf(active)
    if (text.trim() !== '' && readLength(text, this.sheet.units) === undefined) {
      void this.takeFocus(active)
      return
    }
    if (active === 'at') this.moveFromPosition(text)
    else if (active === 'first' && (this.secondOpen || this.reading.diameters.length > 1))
      void this.takeFocus('second')
    else if (active !== 'size' && this.entered.then === 'square' && this.textOf('size') === '')
      void this.takeFocus('size')
    else this.leave()
  }

  private moveFromPosition(text: string) {
    const fresh = this.place < 0 || this.place >= this.sheet.stations.length
    if (text.trim() === '' && fresh && this.sheet.stations.length > 0)
      this.told = 'Type the position of the next station, or save: everything measured so far is drawn.'
    else if (belongsOnTop(this.sheet, this.original, this.place)) void this.raise()
    else void this.takeFocus('first')
  }

  /** The place in hand is the topmost one, and said to be. */
  private async raise() {
    const sheet = withFirstOnTop(this.sheet)
    this.sheet = sheet
    this.place = sheet.stations.length - 1
    tellSheet(this, { sheet, stroke: '', place: this.place })
    await this.takeFocus('first')
    this.told = 'It is read before all the others: it stands at the top now.'
  }

  private leave() {
    if (this.place < 0 || this.place >= this.sheet.stations.length) {
      this.told = 'Nothing is entered for this station yet.'
      void this.takeFocus('at')
    } else this.go(onwardPlace(this.sheet, this.original, this.place))
  }

  private readonly insert = () => {
    this.tell(insertedPlace(this.sheet, this.index), '')
    void this.takeFocus('at')
  }

  private readonly drop = () => {
    this.tell(withoutPlace(this.sheet, this.place), '')
    void this.takeFocus('at')
  }

  private readonly keyed = (event: CustomEvent<{ text: string }>) => {
    this.writeFigure(this.active, event.detail.text)
    void this.focusKeyed()
  }

  private async focusKeyed() {
    await this.updateComplete
    this.renderRoot.querySelector<HTMLInputElement>(`#${this.active}`)?.focus({ preventScroll: true })
  }

  override render() {
    const { place, sheet } = this
    const fresh = place < 0 || place >= sheet.stations.length
    return html`<div class="entry" @keydown=${this.pressed}>
      <div class="head">
        <h2>${fresh ? 'Next station' : `Station ${place}${this.entered.name ? `, ${this.entered.name}` : ''}`}</h2>
        <p class="soft small">${sheet.originals.length > 1 ? html`<b>${sheet.originals[this.original]?.name}</b>, ` : nothing}${fresh ? `${sheet.stations.length} so far` : `of ${sheet.stations.length}, from the foot`}</p>
      </div>
      ${this.figures()}
      ${this.told ? html`<p class="caution" role="status">${this.told}</p>` : nothing}
      <div class="shapes" @mousedown=${keepFocus} role="group" aria-label="Shape of the span above this station">
        ${shapeKeys.map(
          ({
            key,
            shape,
          }) => html`<button type="button" aria-pressed=${(this.entered.then ?? 'straight') === shape ? 'true' : 'false'}
            @click=${() => this.shapeSpan(shape)}>${shape}<kbd aria-hidden="true">${key}</kbd></button>`,
        )}
      </div>
      ${
        this.keys
          ? html`<big-keypad @mousedown=${keepFocus} .lengthStyle=${sheet.units === 'mm' ? 'mm' : 'fraction'} .text=${this.textOf(this.active)}
            @keyed=${this.keyed}></big-keypad>`
          : nothing
      }
      <div class="send" @mousedown=${keepFocus}>
        <button type="button" ?disabled=${!this.canUndo} @click=${() => this.dispatchEvent(new CustomEvent('undo-sheet'))}>Undo</button>
        <button type="button" @click=${this.openSecond}>2nd at 90°</button>
        <button type="button" class="main" @click=${this.moveOn}>Enter</button>
      </div>
      ${this.keys ? nothing : html`<p class="hint">Behind a diameter: the letter of a shape, twice for its rise or depth, x for a second diameter, k to check here. At a position: = for the one before again, as at a step. Shift+Enter goes back.</p>`}
      ${this.more(fresh)}
    </div>`
  }

  private figures() {
    const { positions, expected } = this
    const { then = 'straight' } = this.entered
    const size = sizeOf(this.entered)
    const { diameters } = this.reading
    const second = this.secondOpen || diameters.length > 1
    return html`<div class="figures ${size || second ? 'three' : ''}">
      ${this.figure('at', 'Position', { hint: whereText(this.inHand, { positions, expected, typing: this.typing === 'at' }) })}
      ${this.figure('first', second ? 'Diameter' : then === 'square' ? 'Diameter below' : 'Diameter', { hint: second ? roundText(this.inHand) : '' })}
      ${second ? this.figure('second', 'At 90°') : nothing}
      ${size ? this.figure('size', size.label, { placeholder: size.hint ?? '' }) : nothing}
    </div>`
  }

  private figure(figure: FigureName, label: string, { hint = '', placeholder = '' } = {}): TemplateResult {
    const error = this.typing === figure ? undefined : this.errors.get(figurePath(this.inHand, figure))
    const told = [error && `${figure}-error`, hint && `${figure}-hint`].filter(Boolean).join(' ')
    return html`<div class="field">
      <label for=${figure}>${label}, ${this.sheet.units}</label>
      <input id=${figure} autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next"
        inputmode=${this.keys ? 'none' : 'text'} placeholder=${placeholder || nothing}
        aria-invalid=${error ? 'true' : nothing} aria-describedby=${told || nothing}
        .value=${live(this.textOf(figure))}
        @focus=${() => {
          this.active = figure
          this.requestUpdate()
        }}
        @blur=${() => {
          this.typing = ''
        }}
        @input=${(event: Event) => this.writeFigure(figure, (event.target as HTMLInputElement).value)} />
      ${error ? html`<p class="error" id="${figure}-error">${error}</p>` : nothing}
      ${hint ? html`<p class="hint" id="${figure}-hint">${hint}</p>` : nothing}
    </div>`
  }

  private more(fresh: boolean) {
    return html`
      <div class="more">
        <div class="field">
          <label for="name">Name of the station</label>
          <input id="name" autocomplete="off" spellcheck="false" maxlength="80" .value=${live(this.entered.name ?? '')}
            @input=${(event: Event) => this.tell(withPlace(this.ground, this.index, { name: (event.target as HTMLInputElement).value }), 'name')}
            @focus=${() => {
              this.active = 'first'
            }} />
        </div>
        ${tickField({
          path: 'check',
          label: 'Check here',
          on: this.entered.check ?? false,
          enter: (on) => this.tell(withPlace(this.ground, this.index, { check: on || undefined }), 'check'),
        })}
      </div>
      <div class="buttons">
        <button type="button" @click=${() => this.go(placeBehind(this.sheet, this.original, this.place))}>Station before</button>
        <button type="button" ?disabled=${fresh} @click=${this.insert}>Insert a station below</button>
        <button type="button" class="danger" ?disabled=${fresh} @click=${this.drop}>Delete this station</button>
        <button type="button" ?disabled=${!this.canRedo} @click=${() => this.dispatchEvent(new CustomEvent('redo-sheet'))}>Redo</button>
        <button type="button" aria-pressed=${this.keys ? 'true' : 'false'} @click=${() => {
          this.keys = !this.keys
        }}>Big keys</button>
      </div>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-entry': MeasureEntry
  }
}
