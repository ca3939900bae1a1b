import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { isMeasuring } from '../../shared/library.ts'
import type { Breach } from '../../shared/problem.ts'
import type { Species } from '../../shared/wood/species.ts'
import { tellEntry } from '../entry.ts'
import { jobField } from '../field-words.ts'
import type { EnteredJoint } from '../job-file.ts'
import type { LibraryFile } from '../library-file.ts'
import { pageWear } from '../styles/all.ts'
import type { History } from '../undo.ts'
import { type Choice, choiceField, noteField, textField, tickField } from './field.ts'
import './joints-table.ts'
import './profile-editor.ts'
import { wrongEntries } from './wrong-entries.ts'

/** One list for all that have nothing, so that nothing is drawn anew for it. */
const none: EnteredJoint[] = []

/**
 * A profile of the library as it is written: its name and wood, stations, joints, notes. Sends `entry`, passes on
 * what the editor sends, and `jump` with the path of a field to go to.
 */
@customElement('library-form')
export class LibraryForm extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: LibraryFile
  @property({ attribute: false }) history?: History
  @property({ attribute: false }) woods: readonly Species[] = []
  @property({ attribute: false }) shown: readonly Breach[] = []

  override render() {
    const { file } = this
    const errors = new Map(this.shown.map(({ path, message }) => [path, message]))
    return html`
      <div class="page">
        ${this.summary()}
        <section class="card" aria-labelledby="about">
          <h2 id="about">Profile</h2>
          ${this.about(errors)}
        </section>
        ${isMeasuring(file) ? this.measuring() : this.drawing(errors)}
      </div>
    `
  }

  private summary() {
    const kinds = (this.file.joints ?? []).map(({ kind }) => kind)
    const named = (path: string) => (path === 'name' ? 'Name of the profile' : jobField(path, kinds))
    return wrongEntries(this.shown, named, (detail) =>
      this.dispatchEvent(new CustomEvent('jump', { detail })),
    )
  }

  private about(errors: ReadonlyMap<string, string>) {
    const { file, woods } = this
    const enter = (path: string) => (text: string) => tellEntry(this, path, text)
    const named: Choice[] = woods.map(({ key, name }) => [key, name])
    const known = !file.species || woods.some(({ key }) => key === file.species)
    return html`
      <div class="fields">
        ${textField({ path: 'name', label: 'Name of the profile', wide: true, value: file.name, error: errors.get('name'), enter: enter('name') })}
        ${choiceField({
          path: 'units',
          label: 'Written in',
          value: file.units,
          choices: [
            ['in', 'inches'],
            ['mm', 'millimetres'],
          ],
          enter: enter('units'),
        })}
        ${choiceField({
          path: 'species',
          label: 'Wood it is drawn in',
          value: file.species ?? '',
          choices: [['', 'any wood'], ...(known ? [] : [[file.species!, file.species!] as const]), ...named],
          error: errors.get('species'),
          enter: enter('species'),
        })}
        ${tickField({
          path: 'profile.split',
          label: 'Turned as a glued pair and split',
          wide: true,
          on: file.profile.split ?? false,
          enter: (on) => tellEntry(this, 'profile.split', on || undefined),
        })}
      </div>
      ${noteField({ path: 'notes', label: 'Notes', value: file.notes ?? '', error: errors.get('notes'), enter: enter('notes') })}
    `
  }

  private measuring() {
    return html`<section class="card" aria-labelledby="stations">
      <h2 id="stations">Stations</h2>
      <p>They are still being measured. The drawing comes when the sheet is whole.</p>
    </section>`
  }

  private drawing(errors: ReadonlyMap<string, string>) {
    const { file, history } = this
    return html`
      <section class="card" aria-labelledby="stations">
        <div>
          <h2 id="stations">Stations</h2>
          <p class="soft small">From the foot, 0, to the top. A length can be written 2 3/8, 2-3/8", 2⅜ in, 60.3 mm, 8' 4".</p>
        </div>
        <profile-editor
          .stations=${file.profile.stations}
          .joints=${file.joints ?? none}
          .units=${file.units}
          .species=${file.species ?? ''}
          .name=${file.name}
          .errors=${errors}
          .canUndo=${(history?.past.length ?? 0) > 0}
          .canRedo=${(history?.future.length ?? 0) > 0}
        ></profile-editor>
      </section>
      <section class="card" aria-labelledby="joints">
        <h2 id="joints">Joints</h2>
        <joints-table .joints=${file.joints ?? none} .errors=${errors}></joints-table>
      </section>
    `
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'library-form': LibraryForm
  }
}
