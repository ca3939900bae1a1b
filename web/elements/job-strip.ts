import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { newKey, startJob } from '../api.ts'
import { draftOf } from '../drafts.ts'
import type { JobState } from '../job-file.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { SessionController } from '../session.ts'
import { type JobAndPlan, jobAndPlan, noteChange, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, hours, priceText } from './amounts.ts'

const stateWords: Record<JobState, string> = { draft: 'draft', started: 'in work', done: 'done' }

/**
 * Name, state and leading figures of the job at hand on every page of it, and the start of its batch. Sends
 * `job-named` when it knows the name.
 */
@customElement('job-strip')
export class JobStrip extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        background: var(--sheet);
        padding: var(--space-2) var(--space-4) 0;
      }
      .strip {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-6);
        align-items: center;
      }
      .name {
        font-family: var(--serif);
        font-size: var(--size-large);
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      .name p {
        display: inline;
      }
      dl.figures {
        gap: var(--space-1) var(--space-6);
      }
      dl.figures dd {
        font-size: var(--size);
      }
      .start {
        margin-left: auto;
      }
      @media (min-width: 46rem) {
        .start {
          order: 1;
        }
      }
      /* On a narrow page the figures speak for themselves, and the batch is started on the Rack page. */
      @media (max-width: 46rem) {
        .start {
          display: none;
        }
        dl.figures {
          gap: 0 var(--space-3);
        }
        dl.figures dt {
          position: absolute;
          width: 1px;
          height: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        dl.figures > div {
          position: relative;
        }
        dl.figures dd {
          font-size: var(--size-small);
        }
      }
    `,
  ]

  @property() jobId = ''
  @state() private starting = false
  @state() private message = ''
  private readonly load = new Load<JobAndPlan>(this)
  private startKey = ''
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop' || (change.kind === 'job' && change.id === this.jobId)) void this.fetch()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('jobId')) return
    this.startKey = newKey()
    this.message = ''
    this.load.value = undefined
    void this.fetch()
  }

  private readonly fetch = async () => {
    await this.load.from(() => jobAndPlan(this.jobId))
    const name = this.load.value?.job.name
    if (name) this.dispatchEvent(new CustomEvent('job-named', { detail: name }))
  }

  private readonly start = async () => {
    if (draftOf(this.jobId)) {
      this.message =
        'There are unsaved edits on the Profile page: save or drop them before the start freezes the plan.'
      return
    }
    this.starting = true
    this.message = ''
    try {
      await startJob(this.jobId, this.startKey)
      noteChange({ kind: 'job', id: this.jobId })
      go(jobPath(this.jobId, 'rack'))
    } catch (failure) {
      this.message = (failure as Error).message
    } finally {
      this.starting = false
    }
  }

  override render() {
    return this.load.shown(
      (loaded) => this.strip(loaded),
      () => void this.fetch(),
    )
  }

  private strip({ job, plan }: JobAndPlan) {
    const { blank, boardFeet, time, quote } = plan
    const unsaved = job.state === 'draft' && draftOf(this.jobId) !== undefined
    return html`
      <section class="strip" aria-label="The job at hand">
        <div class="name">
          <p>${job.name}</p>
          <span class="mark ${job.state === 'started' ? 'going' : job.state === 'done' ? 'in' : ''}">${stateWords[job.state]}</span>
        </div>
        ${
          job.state === 'draft'
            ? html`<div class="start no-print">
              <button type="button" class="main" ?disabled=${this.starting} @click=${this.start}>Start the batch</button>
            </div>`
            : nothing
        }
        <dl class="figures">
          ${fact('Quantity', `${job.quantity} ${plan.job.profile.split ? 'halves' : 'pieces'}`)}
          ${fact('Blanks', `${blank.count} blanks, ${blank.spares} spare`)}
          ${fact('Wood to buy', boardFeetText(boardFeet.bought))}
          ${fact('Time', `${hours(time.p50)} h (${hours(time.p10)}–${hours(time.p90)} h)`)}
          ${quote ? fact('Price', priceText(quote.total, quote.currency)) : nothing}
        </dl>
      </section>
      ${unsaved ? html`<p class="small soft no-print">The figures are of the job as saved; there are unsaved edits on this device.</p>` : nothing}
      ${this.message ? html`<p class="problem" role="alert">${this.message}</p>` : nothing}
    `
  }
}

const fact = (name: string, value: string) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`
