import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type CountedTwice, twiceWords } from '../../shared/lumber-on-hand.ts'
import type { Species } from '../../shared/wood/species.ts'
import type { StoredJob } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'

/** Chooses the jobs lumber is bought for. Sends `choose` with the ids that are chosen then. */
@customElement('lumber-jobs')
export class LumberJobs extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      ul {
        display: grid;
        gap: 0 var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 22rem), 1fr));
      }
      label.tick > span {
        overflow-wrap: anywhere;
      }
    `,
  ]

  @property({ attribute: false }) jobs: readonly StoredJob[] = []
  @property({ attribute: false }) woods: readonly Species[] = []
  /** Boards on hand that jobs cannot all have. */
  @property({ attribute: false }) twice: readonly CountedTwice[] = []
  @property({ attribute: false }) chosen: readonly string[] = []

  private tick(id: string, on: boolean) {
    const detail = on ? [...this.chosen, id] : this.chosen.filter((each) => each !== id)
    this.dispatchEvent(new CustomEvent<string[]>('choose', { detail, bubbles: true, composed: true }))
  }

  override render() {
    const drafts = this.jobs.filter(({ state }) => state === 'draft')
    const others = this.jobs.filter(({ state }) => state !== 'draft')
    const open = others.some(({ id }) => this.chosen.includes(id))
    return html`
      ${drafts.length === 0 ? html`<p class="soft">No job is waiting for its lumber.</p>` : this.list(drafts)}
      ${
        others.length === 0
          ? nothing
          : html`<details ?open=${open}>
            <summary>Started or done</summary>
            ${this.list(others)}
          </details>`
      }
    `
  }

  private counted(id: string) {
    const words = twiceWords(id, this.twice)
    return words === '' ? nothing : html`<p class="small caution"><span>${words}</span></p>`
  }

  private list(jobs: readonly StoredJob[]) {
    return html`<ul class="plain">
      ${jobs.map(
        ({ id, name, species, quantity }) => html`<li>
          <label class="tick">
            <input
              type="checkbox"
              .checked=${this.chosen.includes(id)}
              @change=${(event: Event) => this.tick(id, (event.target as HTMLInputElement).checked)}
            />
            <span>${name} <span class="soft small">${quantity} of ${this.woods.find(({ key }) => key === species)?.name ?? species}</span></span>
          </label>
          ${this.counted(id)}
        </li>`,
      )}
    </ul>`
  }
}
