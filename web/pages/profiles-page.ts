import { css, html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import type { Species } from '../../shared/wood/species.ts'
import { newKey } from '../api.ts'
import { addProfile, deleteProfile, profilePhoto, profiles, putProfilePhoto } from '../api-profiles.ts'
import { copyName } from '../copy-name.ts'
import { type OtherDraft, profileDrafts, sheetDrafts } from '../drafts.ts'
import { textField } from '../elements/field.ts'
import '../elements/profile-card.ts'
import { drawnProfile, type LibraryFile, libraryFileOf } from '../library-file.ts'
import { Load } from '../load.ts'
import { dropPhoto } from '../photo-store.ts'
import { go, profilePath } from '../router.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { noteChange, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { makeJob } from './make-job.ts'

interface Listed {
  profiles: LibraryProfile[]
  woods: readonly Species[]
}

async function listed(): Promise<Listed> {
  const [all, { woods }] = await Promise.all([profiles(), shopAndWoods()])
  return { profiles: all.sort((a, b) => a.name.localeCompare(b.name)), woods }
}

/** The library of profiles: each drawn small, found by a word, made into a job; the way to a new one. */
@customElement('profiles-page')
export class ProfilesPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .profiles {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 22rem), 1fr));
      }
      .profiles > li {
        display: grid;
      }
      .search {
        max-width: 26rem;
      }
    `,
  ]

  @state() private search = ''
  @state() private message = ''
  /** The message tells what went wrong. */
  @state() private failed = false
  private readonly list = new Load<Listed>(this)
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    void this.reload()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind === 'profile' || kind === 'shop') void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly reload = () => this.list.from(listed)

  private async attempt(action: () => Promise<string>) {
    this.message = ''
    this.failed = false
    try {
      this.message = await action()
    } catch (failure) {
      this.failed = true
      this.message = (failure as Error).message
    }
  }

  private makeJob(entry: LibraryProfile) {
    return this.attempt(async () => {
      await makeJob(entry)
      return ''
    })
  }

  /** The copy, with the photograph behind it, is gone on with, so that it gets a name and a shape of its own. */
  private duplicate(entry: LibraryProfile) {
    return this.attempt(async () => {
      const { id } = await addProfile({
        ...libraryFileOf(entry),
        name: copyName(entry.name),
        key: newKey(),
      })
      const photo = await profilePhoto(entry.id)
      if (photo !== undefined) await putProfilePhoto(id, photo)
      noteChange({ kind: 'profile', id })
      go(profilePath(id))
      return ''
    })
  }

  private delete({ id, revision, name }: LibraryProfile) {
    return this.attempt(async () => {
      await deleteProfile(id, revision)
      profileDrafts.drop(id)
      sheetDrafts.drop(id)
      // Another tab may still hold readings of it, to be stored as something of their own.
      if (!sheetDrafts.has(id)) await dropPhoto(id).catch(() => undefined)
      noteChange({ kind: 'profile', id })
      return `${name} is deleted.`
    })
  }

  override render() {
    return html`
      <div class="page">
        <div class="page-head">
          <h1>Profiles</h1>
          <div class="buttons no-print">
            <a class="button main" href=${profilePath('')}>${profileDrafts.of('') ? 'Go on with the new profile' : 'Draw a profile'}</a>
            <a class="button" href=${profilePath('', 'measure')}>${sheetDrafts.of('') ? 'Go on copying a piece' : 'Copy a piece'}</a>
          </div>
        </div>
        <p role="status" class=${this.message ? (this.failed ? 'problem' : 'notice') : 'hidden-label'}>${this.message}</p>
        ${this.kept()}
        ${this.list.shown(
          (list) => (list.profiles.length === 0 ? this.none() : this.all(list)),
          () => void this.reload(),
        )}
      </div>
    `
  }

  /** Drawn or measured on this device and stored nowhere: what other tabs hold, edits of profiles that are gone. */
  private kept() {
    const stored = new Set(this.list.value?.profiles.map(({ id }) => id))
    const homeless = ({ id }: { id: string }) => id === '' || (this.list.value && !stored.has(id))
    const link = (page: 'library' | 'measure', { id, draft }: OtherDraft<LibraryFile>, unnamed: string) =>
      html`<li><a href=${profilePath(id, page)}>${draft.file.name || unnamed}</a></li>`
    const kept = [
      ...profileDrafts
        .others()
        .filter(homeless)
        .map((other) => link('library', other, 'a new profile without a name')),
      ...sheetDrafts
        .others()
        .filter(homeless)
        .map((other) => link('measure', other, 'a measuring sheet without a name')),
    ]
    if (kept.length === 0) return nothing
    return html`<div class="notice no-print">
      <p>Kept on this device and not saved yet:</p>
      <ul>${kept}</ul>
    </div>`
  }

  private none() {
    return html`
      <section class="card">
        <h2>No profile yet</h2>
        <p>
          The library keeps the profiles you make again: drawn here, or copied from a piece with tape and caliper. Every
          version stays.
        </p>
      </section>
    `
  }

  private all({ profiles, woods }: Listed) {
    const nameOf = (species?: string) => woods.find(({ key }) => key === species)?.name ?? species ?? ''
    const words = this.search.toLowerCase().split(/\s+/).filter(Boolean)
    const found = profiles.filter(({ name, notes = '', species }) => {
      const text = `${name} ${notes} ${nameOf(species)}`.toLowerCase()
      return words.every((word) => text.includes(word))
    })
    return html`
      <div class="page">
        <div class="search no-print">
          ${textField({
            path: 'search',
            label: 'Find by name, wood or note',
            value: this.search,
            enter: (text) => {
              this.search = text
            },
          })}
        </div>
        <p role="status" class=${found.length === profiles.length ? 'hidden-label' : 'soft'}>${found.length} of ${profiles.length} profiles</p>
        <ul class="plain profiles">
          ${found.map(
            (entry) => html`<li><profile-card
              class="card"
              .entry=${entry}
              .profile=${drawnProfile(entry)}
              .wood=${nameOf(entry.species)}
              .lengthStyle=${lengthStyle(entry.units)}
              @make-job=${() => this.makeJob(entry)}
              @duplicate=${() => this.duplicate(entry)}
              @delete=${() => this.delete(entry)}
            ></profile-card></li>`,
          )}
        </ul>
      </div>
    `
  }
}
