import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { newKey } from '../api.ts'
import { draftOf } from '../drafts.ts'
import '../elements/job-strip.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { type JobAndPlan, jobAndPlan, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { startBatch } from './start-batch.ts'

/** Loads the job at hand for the strip over its pages, and starts its batch. Sends `job-named` when it knows the name. */
@customElement('job-frame')
export class JobFrame extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @state() private starting = false
  @state() private message = ''
  private readonly loaded = new Load<JobAndPlan>(this)
  private startKey = ''
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop' || (change.kind === 'job' && change.id === this.jobId)) void this.reload()
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
    this.loaded.value = undefined
    void this.reload()
  }

  private async reload() {
    await this.loaded.from(() => jobAndPlan(this.jobId))
    const name = this.loaded.value?.job.name
    if (name) this.dispatchEvent(new CustomEvent('job-named', { detail: name }))
  }

  private readonly start = async () => {
    this.starting = true
    this.message = ''
    try {
      await startBatch(this.jobId, this.startKey)
      go(jobPath(this.jobId, 'rack'))
    } catch (failure) {
      this.message = (failure as Error).message
    } finally {
      this.starting = false
    }
  }

  override render() {
    return this.loaded.shown(
      ({ job, plan }) => html`
        <job-strip
          .job=${job}
          .plan=${plan}
          .unsaved=${job.state === 'draft' && draftOf(this.jobId) !== undefined}
          .starting=${this.starting}
          @start=${this.start}
        ></job-strip>
        ${this.message ? html`<p class="problem" role="alert">${this.message}</p>` : nothing}
      `,
      () => void this.reload(),
    )
  }
}
