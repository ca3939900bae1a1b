import { css, html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import type { Species } from '../../shared/wood/species.ts'
import { deleteProfile, profiles } from '../api.ts'
import { profileDrafts } from '../drafts.ts'
import { textField } from '../elements/field.ts'
import '../elements/profile-card.ts'
import { drawnProfile } from '../library-file.ts'
import { Load } from '../load.ts'
import { profilePath } from '../router.ts'
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
    try {
      this.message = await action()
    } catch (failure) {
      this.message = (failure as Error).message
    }
  }

  private makeJob(entry: LibraryProfile) {
    return this.attempt(async () => {
      await makeJob(entry)
      return ''
    })
  }

  private delete({ id, revision, name }: LibraryProfile) {
    return this.attempt(async () => {
      await deleteProfile(id, revision)
      profileDrafts.drop(id)
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
            <a class="button" href=${profilePath('', 'measure')}>Copy a piece</a>
          </div>
        </div>
        <p role="status" class=${this.message ? 'problem' : 'hidden-label'}>${this.message}</p>
        ${this.kept()}
        ${this.list.shown(
          (list) => (list.profiles.length === 0 ? this.none() : this.all(list)),
          () => void this.reload(),
        )}
      </div>
    `
  }

  /** Drawn on this device and stored nowhere: new profiles of other tabs, edits of profiles that are gone. */
  private kept() {
    const stored = new Set(this.list.value?.profiles.map(({ id }) => id))
    const kept = profileDrafts.others().filter(({ id }) => id === '' || (this.list.value && !stored.has(id)))
    if (kept.length === 0) return nothing
    return html`<div class="notice no-print">
      <p>Kept on this device and not saved yet:</p>
      <ul>
        ${kept.map(
          ({ id, draft }) =>
            html`<li><a href=${profilePath(id)}>${draft.file.name || 'a new profile without a name'}</a></li>`,
        )}
      </ul>
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
              @delete=${() => this.delete(entry)}
            ></profile-card></li>`,
          )}
        </ul>
      </div>
    `
  }
}
