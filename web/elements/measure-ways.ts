import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { Problem } from '../../shared/problem.ts'
import type { Snap } from '../../shared/profile/edit/snap.ts'
import type { OfferedTolerance } from '../../shared/profile/measured/profile-of-sheet.ts'
import { diameterChoices } from '../../shared/profile/measured/sheet.ts'
import type { Units } from '../../shared/units/length.ts'
import type { Species } from '../../shared/wood/species.ts'
import { lengthEntryText, tellEntry } from '../entry.ts'
import type { LibraryFile } from '../library-file.ts'
import { length } from '../session.ts'
import { type EnteredSheet, readingAt, sheetInUnits } from '../sheet-file.ts'
import type { SheetHand } from '../sheet-hand.ts'
import { type LinesAsked, withLines } from '../sheet-lines.ts'
import { snapChoices } from '../snap-choice.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField, tickField } from './field.ts'
import { tellSheet } from './measure-entry.ts'

const choiceTexts: Record<(typeof diameterChoices)[number], string> = {
  larger: 'the larger, as it was turned',
  mean: 'their mean',
  today: 'the first, as it stands today',
}

/** How the profile is made of the sheet. */
export type ProfileWay = Partial<Pick<SheetHand, 'asTolerance' | 'byHand' | 'snap'>>

/**
 * What is copied, how it is read, regular lines, what becomes of the range. Sends `entry` for the profile's name and
 * wood, `sheet-edit` for the sheet, `profile-way` with how its profile is made.
 */
@customElement('measure-ways')
export class MeasureWays extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: LibraryFile
  @property({ attribute: false }) sheet!: EnteredSheet
  @property({ type: Number }) original = 0
  @property({ attribute: false }) woods: readonly Species[] = []
  @property({ attribute: false }) offered?: OfferedTolerance
  @property({ type: Boolean }) asTolerance = false
  @property() snap: Snap = 'none'
  @property({ type: Boolean }) byHand = false
  @state() private asked: LinesAsked = { from: '', to: '', pitch: '' }
  @state() private told = ''

  private set(change: Partial<EnteredSheet>, field: string) {
    tellSheet(this, { sheet: { ...this.sheet, ...change }, stroke: field })
  }

  private make(detail: ProfileWay) {
    this.dispatchEvent(new CustomEvent<ProfileWay>('profile-way', { detail }))
  }

  override render() {
    return html`<div class="card">
      <h2>The piece, and how it is read</h2>
      <div class="fields">${this.about()} ${this.reading()}</div>
      ${this.lines()} ${this.range()}
      ${
        this.byHand
          ? html`<p class="caution">The profile is drawn by hand: it stays as drawn, whatever is measured. Drawn anew, it follows the sheet again; the version before is kept.</p>
            <div class="buttons"><button type="button" @click=${() => this.make({ byHand: false })}>Draw it anew from the sheet</button></div>`
          : nothing
      }
    </div>`
  }

  private about() {
    const { file, sheet, woods } = this
    const enter = (path: string) => (text: string) => tellEntry(this, path, text)
    const named = woods.map(({ key, name }): Choice => [key, name])
    const known = !file.species || woods.some(({ key }) => key === file.species)
    return html`
      ${textField({ path: 'name', label: 'Name of the profile', wide: true, value: file.name, enter: enter('name') })}
      ${choiceField({
        path: 'species',
        label: 'Wood it is drawn in',
        value: file.species ?? '',
        choices: [['', 'not said'], ...(known ? [] : [[file.species!, file.species!] as const]), ...named],
        enter: enter('species'),
      })}
      ${choiceField({
        path: 'units',
        label: 'Figures are in',
        value: sheet.units,
        choices: [
          ['in', 'inches'],
          ['mm', 'millimetres'],
        ],
        enter: (units) => tellSheet(this, { sheet: sheetInUnits(sheet, units as Units), stroke: 'units' }),
      })}
    `
  }

  private reading() {
    const { sheet } = this
    return html`
      ${choiceField({
        path: 'way',
        label: 'Positions are read',
        value: sheet.way,
        choices: [
          ['running', 'all from one place'],
          ['span', 'each from the one before'],
        ],
        hint: 'Figures already typed stay, and are read the new way.',
        enter: (way) => this.set({ way: way as EnteredSheet['way'] }, 'way'),
      })}
      ${choiceField({
        path: 'choice',
        label: 'Of two diameters at 90° counts',
        value: sheet.choice,
        choices: diameterChoices.map((choice): Choice => [choice, choiceTexts[choice]]),
        enter: (choice) => this.set({ choice: choice as EnteredSheet['choice'] }, 'choice'),
      })}
      ${choiceField({
        path: 'snap',
        label: 'The profile falls on',
        value: this.snap,
        choices: [['none', 'what was read'], ...snapChoices],
        hint: 'The readings stay as they are.',
        enter: (snap) => this.make({ snap: snap as Snap }),
      })}
    `
  }

  private lines() {
    const { units, stations } = this.sheet
    const field = (name: keyof LinesAsked, label: string, placeholder = '') =>
      textField({
        path: `lines.${name}`,
        label: `${label}, ${units}`,
        value: this.asked[name],
        placeholder,
        enter: (text) => {
          this.asked = { ...this.asked, [name]: text }
          this.told = ''
        },
      })
    const at = (place: number) => lengthEntryText(readingAt(this.sheet, this.original, place).at)
    return html`<details>
      <summary>Regular lines on a plain taper</summary>
      <div class="fields" @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && (event.target as Element).matches('input') && this.lay()}>
        ${field('from', 'From', stations.length > 1 ? at(0) : '')} ${field('to', 'To', stations.length > 1 ? at(stations.length - 1) : '')}
        ${field('pitch', 'Every')}
      </div>
      ${this.told ? html`<p class="error" role="alert">${this.told}</p>` : nothing}
      <div class="buttons"><button type="button" @click=${this.lay}>Lay the lines out</button></div>
      <p class="hint">Their positions are filled in: only diameters are left to type.</p>
    </details>`
  }

  private readonly lay = () => {
    try {
      const sheet = withLines(this.sheet, this.original, this.asked)
      this.told = ''
      tellSheet(this, { sheet, stroke: '' })
      this.dispatchEvent(new CustomEvent('laid-out'))
    } catch (problem) {
      if (!(problem instanceof Problem)) throw problem
      this.told = problem.errors[0]
        ? `${problem.errors[0].path || 'Lines'} ${problem.errors[0].message}`
        : problem.message
    }
  }

  private range() {
    const { offered } = this
    if (this.sheet.originals.length < 2 || !offered) return nothing
    const say = (mm: number) => length(mm, this.sheet.units)
    const { diameter, position } = offered
    if (diameter === undefined && position === undefined)
      return html`<p class="soft">Where two originals were read at one station, their range is offered as tolerance here.</p>`
    return html`
      <p>From their mean the originals depart by up to ${diameter === undefined ? 'nothing' : say(diameter)} in diameter and
        ${position === undefined ? 'nothing' : say(position)} in position.</p>
      ${
        diameter === undefined
          ? nothing
          : tickField({
              path: 'as-tolerance',
              label: 'Take the range at each station as its tolerance',
              on: this.asTolerance,
              enter: (asTolerance) => this.make({ asTolerance }),
            })
      }
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measure-ways': MeasureWays
  }
}
