import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Profile } from '../../shared/profile/profile.ts'
import { styleOf, type Units } from '../../shared/units/length.ts'
import { readStations } from '../entered-stations.ts'
import type { EnteredJoint, EnteredStation } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import './stations-table.ts'
import './turned-part.ts'

/**
 * A profile to draw: the drawing, the stations in a table in step with it. Sends `entry` with path and value for
 * what is typed, `edit` for a change made as a whole, `undo` and `redo`.
 */
@customElement('profile-editor')
export class ProfileEditor extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .drawing {
        background: var(--well);
        border-radius: var(--round);
        padding: var(--space-2);
      }
    `,
  ]

  @property({ attribute: false }) stations: readonly EnteredStation[] = []
  @property({ attribute: false }) joints: readonly EnteredJoint[] = []
  @property() units: Units = 'in'
  /** Key of the wood, for its colour. */
  @property() species = ''
  /** Name of the part, read out with the drawing. */
  @property() name = ''
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false
  @property({ type: Boolean }) canUndo = false
  @property({ type: Boolean }) canRedo = false
  @state() private profile?: Profile

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('stations') && !changed.has('units')) return
    const stations = readStations(this.stations, this.units)
    if (stations) this.profile = { stations, split: false }
  }

  override render() {
    return html`
      <div class="page">
        ${
          this.disabled
            ? nothing
            : html`<div class="buttons">
              <button type="button" ?disabled=${!this.canUndo} @click=${() => this.tell('undo')}>Undo</button>
              <button type="button" ?disabled=${!this.canRedo} @click=${() => this.tell('redo')}>Redo</button>
            </div>`
        }
        ${
          this.profile
            ? html`<figure class="drawing">
              <turned-part
                .profile=${this.profile}
                .species=${this.species}
                .lengthStyle=${styleOf(this.units)}
                .name=${this.name}
                dimensions
              ></turned-part>
            </figure>`
            : nothing
        }
        <stations-table .stations=${this.stations} .errors=${this.errors} .disabled=${this.disabled}></stations-table>
      </div>
    `
  }

  private tell(what: 'undo' | 'redo') {
    this.dispatchEvent(new CustomEvent(what, { bubbles: true, composed: true }))
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'profile-editor': ProfileEditor
  }
}
