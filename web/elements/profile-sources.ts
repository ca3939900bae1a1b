import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { tellEdit } from '../edit.ts'
import { tellEntry } from '../entry.ts'
import { inUnits, isUnbegun } from '../job-entries.ts'
import type { JobFile } from '../job-file.ts'
import { drawnProfile, libraryFileOf } from '../library-file.ts'
import { profilePath } from '../router.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import type { Comparable } from './compare-with.ts'
import './compare-with.ts'
import { choiceField, textField } from './field.ts'
import { profileWords } from './profile-words.ts'
import './turned-part.ts'

/** What of a job is to be kept in the library. */
export interface Keeping {
  name: string
  /** The profile it is a new version of; absent for a profile of its own. */
  versionOf?: string
}

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`

const unitWords = { in: 'inches', mm: 'mm' }

/** What a profile taken from the library takes the place of. */
const replaced = ({ profile, joints = [] }: JobFile): string =>
  `the ${counted(profile.stations.length, 'station')}${joints.length > 0 ? ` and ${counted(joints.length, 'joint')}` : ''} of this job`

/**
 * Between a job and the library: takes a profile from it, keeps the job's in it, compares the two. Sends `look` when
 * it is opened, `edit` and `entry` for a profile taken, `keep` with what to keep.
 */
@customElement('profile-sources')
export class ProfileSources extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      details {
        padding-block: var(--space-1);
      }
      details[open] {
        padding-bottom: var(--space-4);
      }
      .part {
        height: 4rem;
      }
      h2 {
        font-size: var(--size);
      }
      section {
        display: grid;
        gap: var(--space-2);
        padding-block: var(--space-3);
        border-top: 1px solid var(--line);
      }
    `,
  ]

  @property({ attribute: false }) file!: JobFile
  /** The job's profile as it is drawn; absent while it cannot be read. */
  @property({ attribute: false }) profile?: Profile
  /** The library; absent until it is fetched. */
  @property({ attribute: false }) library?: readonly LibraryProfile[]
  /** The job's profile is frozen: none can take its place. */
  @property({ type: Boolean }) disabled = false
  /** How keeping went, or why the library is not there. */
  @property() message = ''
  @property({ type: Boolean }) busy = false
  @state() private chosen = ''
  @state() private against = ''
  @state() private name?: string
  @state() private versionOf = ''
  @state() private taken = ''

  constructor() {
    super()
    new SessionController(this)
  }

  private readonly look = (event: Event) => {
    if ((event.target as HTMLDetailsElement).open) this.dispatchEvent(new CustomEvent('look'))
  }

  override render() {
    return html`
      <details class="card no-print" @toggle=${this.look}>
        <summary>Library of profiles: take one, keep this one, compare</summary>
        <p role="status" class=${this.message || this.taken ? 'notice' : 'hidden-label'}>${this.message || this.taken}</p>
        ${this.library ? this.parts(this.library) : this.message ? nothing : html`<p class="soft">Fetching the library…</p>`}
      </details>
    `
  }

  private parts(library: readonly LibraryProfile[]) {
    const choices = library.flatMap((entry) => {
      const profile = drawnProfile(entry)
      return profile ? [{ key: entry.id, name: entry.name, profile, entry }] : []
    })
    return html`
      ${this.origin(library)} ${this.disabled ? nothing : this.take(choices)} ${this.keep(library)}
      ${
        this.profile && choices.length > 0
          ? html`<section aria-labelledby="against">
            <h2 id="against">Compare with one of the library</h2>
            <compare-with
              .choices=${choices}
              .chosen=${this.against}
              .drawn=${{ name: 'this job, as it stands', profile: this.profile }}
              .lengthStyle=${lengthStyle(this.file.units)}
              @choose=${({ detail }: CustomEvent<string>) => {
                this.against = detail
              }}
            ></compare-with>
          </section>`
          : nothing
      }
    `
  }

  /** Where the job's profile came from, and whether the library has gone on since. */
  private origin(library: readonly LibraryProfile[]) {
    const { from } = this.file
    const origin = library.find(({ id }) => id === from?.profile)
    if (!from || !origin) return nothing
    const later = origin.revision > from.revision ? `; the library has version ${origin.revision} now` : ''
    return html`<p>Its profile came from <a href=${profilePath(origin.id)}>${origin.name}</a>, version ${from.revision}${later}.</p>`
  }

  private take(choices: readonly (Comparable & { entry: LibraryProfile })[]) {
    const chosen = choices.find(({ key }) => key === this.chosen)
    return html`<section aria-labelledby="take">
      <h2 id="take">From the library</h2>
      ${
        choices.length === 0
          ? html`<p class="soft">No profile is in the library yet.</p>`
          : html`<div class="fields">
            ${choiceField({
              path: 'chosen',
              label: 'Profile',
              wide: true,
              value: this.chosen,
              choices: [['', 'choose one'], ...choices.map(({ key, name }) => [key, name] as const)],
              enter: (text) => {
                this.chosen = text
                this.taken = ''
              },
            })}
          </div>`
      }
      ${chosen ? this.offered(chosen.entry, chosen.profile) : nothing}
    </section>`
  }

  private offered(entry: LibraryProfile, profile: Profile) {
    const { file } = this
    const split = (entry.profile.split ?? false) !== (file.profile.split ?? false)
    return html`
      <div class="part">
        <turned-part compact orientation="horizontal" .profile=${profile} .species=${file.species}></turned-part>
      </div>
      <p>${profileWords(profile, lengthStyle(file.units))}${entry.joints?.length ? `, ${counted(entry.joints.length, 'joint')}` : ''}.</p>
      <p>It takes the place of ${replaced(file)}; “Undo” brings them back. All else of the job stays.</p>
      ${entry.units === file.units ? nothing : html`<p>${this.unitsWords(entry, file)}</p>`}
      ${
        split
          ? html`<p class="caution">In the library it is ${entry.profile.split ? '' : 'not '}turned as a glued pair and split; this job stays as its own field says.</p>`
          : nothing
      }
      <div class="buttons"><button type="button" class="main" @click=${() => this.takeOver(entry)}>Take ${entry.name}</button></div>
    `
  }

  private unitsWords({ units }: LibraryProfile, file: JobFile): string {
    return isUnbegun(file)
      ? `It is written in ${unitWords[units]}, and so will the job be.`
      : `It is written in ${unitWords[units]}, the job in ${unitWords[file.units]}: its lengths stay as they are, each with its unit.`
  }

  /** The profile in the units of the job, every length meaning what it meant; a job not begun yet takes its units. */
  private takeOver(entry: LibraryProfile) {
    const units = isUnbegun(this.file) ? entry.units : this.file.units
    if (units !== this.file.units) tellEntry(this, 'units', units)
    const { profile, joints = [] } = inUnits(libraryFileOf(entry), units)
    tellEdit(this, { stations: profile.stations, joints, label: `Take ${entry.name} from the library` })
    tellEntry(this, 'from', { profile: entry.id, revision: entry.revision })
    this.chosen = ''
    this.taken = `${entry.name} is in the stations now.`
  }

  private keep(library: readonly LibraryProfile[]) {
    const origin = library.find(({ id }) => id === this.file.from?.profile)
    const versionOf = origin && this.versionOf === origin.id
    const name = this.name ?? this.file.name
    return html`<section aria-labelledby="keep">
      <h2 id="keep">Keep in the library</h2>
      <div class="fields">
        ${
          origin
            ? choiceField({
                path: 'versionOf',
                label: 'Keep it as',
                wide: true,
                value: versionOf ? origin.id : '',
                choices: [
                  ['', 'a profile of its own'],
                  [origin.id, `a new version of ${origin.name}`],
                ],
                enter: (text) => {
                  this.versionOf = text
                },
              })
            : nothing
        }
        ${
          versionOf
            ? nothing
            : textField({
                path: 'keptName',
                label: 'Name in the library',
                wide: true,
                value: name,
                enter: (text) => {
                  this.name = text
                },
              })
        }
      </div>
      <div class="buttons">
        <button
          type="button"
          ?disabled=${this.busy || !this.profile || (!versionOf && name.trim() === '')}
          @click=${() => this.tellKeep(versionOf ? { name: origin.name, versionOf: origin.id } : { name: name.trim() })}
        >
          Keep this profile
        </button>
      </div>
      ${this.profile ? nothing : html`<p class="soft">It can be kept when its stations can be read.</p>`}
    </section>`
  }

  private tellKeep(detail: Keeping) {
    this.taken = ''
    this.dispatchEvent(new CustomEvent('keep', { detail }))
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-sources': ProfileSources
  }
}
