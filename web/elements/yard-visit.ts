import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { pageWear } from '../styles/all.ts'
import './ask-twice.ts'

/** A job that can be bought for. */
export interface VisitJob {
  job: string
  name: string
  wood: string
  started?: boolean
  isChosen: boolean
  /** It is of another wood than those chosen. */
  isOther: boolean
}

/** Another tally kept on this device. */
export interface OtherTally {
  id: string
  name: string
  about: string
}

/**
 * What a visit to a yard is about: its name, the jobs bought for, the yard and the grade; and the tallies kept for
 * later. Sends `rename`, `jobs` (ids), `wood`, `yard` (name), `grade`, `open` (id), `fresh`, `throw-away`.
 */
@customElement('yard-visit')
export class YardVisit extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .visit {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
      }
      .jobs {
        max-height: 22rem;
        overflow-y: auto;
        padding: 0.3125rem;
      }
      label.tick span {
        overflow-wrap: anywhere;
      }
      li button {
        width: 100%;
        justify-content: space-between;
        text-align: left;
      }
    `,
  ]

  @property() name = ''
  @property({ attribute: false }) jobs: readonly VisitJob[] = []
  /** Woods to choose from where no job says which. */
  @property({ attribute: false }) woods: readonly (readonly [string, string])[] = []
  @property() wood = ''
  @property({ attribute: false }) yards: readonly string[] = []
  @property() yard = ''
  @property({ attribute: false }) grades: readonly (readonly [string, string])[] = []
  @property() grade = ''
  @property({ attribute: false }) others: readonly OtherTally[] = []
  /** How old what is known of the jobs is, in words. */
  @property() asOf = ''
  @property({ type: Boolean }) closed = false

  private tell(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail }))
  }

  private tick({ job }: VisitJob, isOn: boolean): void {
    const chosen = this.jobs
      .filter((each) => (each.job === job ? isOn : each.isChosen))
      .map((each) => each.job)
    this.tell('jobs', chosen)
  }

  override render() {
    return html`<div class="visit">
      <div class="field">
        <label for="name">Name of this tally</label>
        <input id="name" maxlength="60" autocomplete="off" .value=${live(this.name)} @change=${(event: Event) => this.tell('rename', (event.target as HTMLInputElement).value)} />
      </div>
      ${this.closed ? nothing : html`${this.jobChoice()}${this.termsChoice()}`}
      ${this.otherTallies()}
      <div class="buttons">
        <button type="button" @click=${() => this.tell('fresh')}>New tally</button>
        <ask-twice danger label="Throw this tally away" answer="Yes, throw it away"
          question="Its boards and all that was entered will be gone from this device. Throw “${this.name}” away?"
          @confirmed=${() => this.tell('throw-away')}></ask-twice>
      </div>
    </div>`
  }

  private jobChoice(): TemplateResult {
    return html`<fieldset>
      <legend>Wood for</legend>
      ${
        this.jobs.length === 0
          ? html`<p class="soft">No job is known here yet. Open this page once where the server is in reach; boards can be tallied without.</p>`
          : html`<div class="jobs">${this.jobs.map(
              (job) => html`<div><label class="tick">
                <input type="checkbox" .checked=${live(job.isChosen)} ?disabled=${job.isOther}
                  @change=${(event: Event) => this.tick(job, (event.target as HTMLInputElement).checked)} />
                <span>${job.name} · ${job.wood}${job.started ? ' · in work' : ''}${job.isOther ? ' (another wood: a tally of its own)' : ''}</span>
              </label></div>`,
            )}</div>`
      }
      ${this.asOf ? html`<p class="hint">${this.asOf}</p>` : nothing}
    </fieldset>`
  }

  private termsChoice(): TemplateResult {
    const select = (
      id: string,
      label: string,
      value: string,
      choices: readonly (readonly [string, string])[],
    ) => html`<div class="field">
      <label for=${id}>${label}</label>
      <select id=${id} @change=${(event: Event) => this.tell(id, (event.target as HTMLSelectElement).value)}>
        ${choices.map(([key, text]) => html`<option value=${key} .selected=${live(key === value)}>${text}</option>`)}
      </select>
    </div>`
    const yards = [
      ['', 'not in the shop’s list'] as const,
      ...this.yards.map((name) => [name, name] as const),
    ]
    return html`<div class="fields">
      ${this.woods.length > 0 ? select('wood', 'Wood', this.wood, this.woods) : nothing}
      ${select('yard', 'Yard', this.yard, yards)} ${select('grade', 'Grade', this.grade, this.grades)}
    </div>`
  }

  private otherTallies(): TemplateResult | typeof nothing {
    if (this.others.length === 0) return nothing
    return html`<div>
      <p class="label">Kept for later</p>
      <ul class="plain">${this.others.map(
        ({ id, name, about }) => html`<li>
          <button type="button" @click=${() => this.tell('open', id)}><span>${name}</span><span class="small soft">${about}</span></button>
        </li>`,
      )}</ul>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'yard-visit': YardVisit
  }
}
