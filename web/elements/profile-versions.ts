import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { ProfileVersion } from '../../shared/library.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import type { LengthStyle } from '../../shared/units/length.ts'
import { pageWear } from '../styles/all.ts'
import { datedText } from '../time-text.ts'
import './ask-twice.ts'
import { profileWords } from './profile-words.ts'
import './turned-part.ts'

/** A version and how it is drawn; without a profile it is still being measured. */
export interface ShownVersion {
  version: ProfileVersion
  profile?: Profile
}

/** Every version of a profile, the newest first. Sends `compare-version` and `restore` with the revision. */
@customElement('profile-versions')
export class ProfileVersions extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ask-twice {
        --ask-height: var(--touch);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-2) var(--space-4);
        align-items: center;
        padding: var(--space-3) 0;
        border-top: 1px solid var(--line);
      }
      @media (min-width: 46rem) {
        li {
          grid-template-columns: minmax(0, 3fr) minmax(0, 2fr) auto;
        }
      }
      .part {
        height: 3.5rem;
      }
    `,
  ]

  @property({ attribute: false }) versions: readonly ShownVersion[] = []
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** Why none can be restored now; empty where any can. */
  @property() held = ''

  override render() {
    return html`
      ${this.held && this.versions.length > 1 ? html`<p class="soft" id="held">${this.held}</p>` : nothing}
      <ol class="plain" reversed>${this.versions.map((shown, i) => this.row(shown, i === 0))}</ol>
    `
  }

  private row({ version, profile }: ShownVersion, latest: boolean) {
    const { revision, name, at } = version
    return html`<li>
      <div>
        <p><b>Version ${revision}</b>${latest ? ', the latest' : nothing}: ${name}</p>
        <p class="soft small">
          ${datedText(at)}${profile ? html`, ${profileWords(profile, this.lengthStyle)}` : ', still being measured'}
        </p>
      </div>
      <div class="part">
        ${profile ? html`<turned-part compact orientation="horizontal" .profile=${profile} .species=${version.species ?? ''}></turned-part>` : nothing}
      </div>
      <div class="buttons no-print">
        ${
          profile
            ? html`<button type="button" aria-label="Compare version ${revision} with the drawing" @click=${() => this.tell('compare-version', revision)}>Compare</button>`
            : nothing
        }
        ${
          latest
            ? nothing
            : html`<ask-twice
              label="Restore"
              named="Restore version ${revision}"
              question="Save version ${revision} again as the latest? Every version stays."
              answer="Yes, restore it"
              ?disabled=${this.held !== ''}
              @confirmed=${() => this.tell('restore', revision)}
            ></ask-twice>`
        }
      </div>
    </li>`
  }

  private tell(name: 'compare-version' | 'restore', detail: number) {
    this.dispatchEvent(new CustomEvent(name, { detail }))
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-versions': ProfileVersions
  }
}
