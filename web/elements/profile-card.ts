import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { profilePath } from '../router.ts'
import { sheetOf } from '../sheet-file.ts'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'
import { cardLook } from './card-look.ts'
import { profileWords } from './profile-words.ts'
import './turned-part.ts'

/** One profile of the library: drawn small, its size, its versions. Sends `make-job`, `duplicate`
 * and `delete`. */
@customElement('profile-card')
export class ProfileCard extends LitElement {
  static override styles = [
    ...pageWear,
    cardLook,
    css`
      ask-twice {
        --ask-height: var(--touch);
      }
      .part {
        display: grid;
        align-items: center;
        height: 6rem;
        padding: var(--space-1) 0;
      }
      .notes {
        overflow-wrap: anywhere;
      }
    `,
  ]

  @property({ attribute: false }) entry!: LibraryProfile
  /** The profile as it is drawn; absent while it is still being measured. */
  @property({ attribute: false }) profile?: Profile
  @property() wood = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  override render() {
    const { entry, profile } = this
    const { id, name, revision, notes } = entry
    return html`
      <div class="line">
        <a class="name" href=${profilePath(id)}>${name}</a>
        ${revision > 1 ? html`<span class="mark">${revision} versions</span>` : nothing}
        ${entry.sheet ? html`<span class="mark">measured</span>` : nothing}
      </div>
      <div class="part">
        ${
          profile
            ? html`<turned-part compact orientation="horizontal" .profile=${profile} .species=${entry.species ?? ''}></turned-part>`
            : html`<p class="soft">${this.measuredText()}</p>`
        }
      </div>
      <div>
        ${profile ? html`<p>${profileWords(profile, this.lengthStyle)}${this.wood ? `, in ${this.wood}` : ''}</p>` : nothing}
        ${notes ? html`<p class="soft notes">${notes}</p>` : nothing}
      </div>
      <div class="buttons no-print">
        ${
          profile
            ? html`<button type="button" aria-label="Make a job of ${name}" @click=${() => this.send('make-job')}>Make a job</button>`
            : html`<a class="button" href=${profilePath(id, 'measure')}>Go on measuring</a>`
        }
        <button type="button" aria-label="Duplicate ${name}" @click=${() => this.send('duplicate')}>Duplicate</button>
        <ask-twice
          label="Delete"
          named="Delete ${name}"
          question="Delete ${name}${revision > 1 ? ` and its ${revision} versions` : ''}? Jobs made from it keep their own profile."
          answer="Yes, delete it"
          danger
          @confirmed=${() => this.send('delete')}
        ></ask-twice>
      </div>
    `
  }

  /** How far a sheet without a profile is. */
  private measuredText(): string {
    const { sheet, units } = this.entry
    const count = sheet ? sheetOf(sheet, units).stations.length : 0
    if (count === 0) return 'Still being measured: no stations yet.'
    return `Still being measured: ${count} ${count === 1 ? 'station' : 'stations'} on its sheet.`
  }

  private send(name: 'make-job' | 'duplicate' | 'delete') {
    this.dispatchEvent(new CustomEvent(name))
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-card': ProfileCard
  }
}
