import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { printPath } from '../api.ts'
import { jobDrafts } from '../drafts.ts'
import '../elements/job-strip.ts'
import { Load } from '../load.ts'
import { SessionController } from '../session.ts'
import { type JobAndPlan, jobAndPlan, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

/** Loads the job at hand for the strip over its pages. Sends `job-named` when it knows the name. */
@customElement('job-frame')
export class JobFrame extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  private readonly loaded = new Load<JobAndPlan>(this)
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (
        change.kind === 'shop' ||
        change.kind === 'board' ||
        (change.kind === 'job' && change.id === this.jobId)
      )
        void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('jobId')) return
    this.loaded.value = undefined
    void this.reload()
  }

  private async reload() {
    await this.loaded.from(() => jobAndPlan(this.jobId))
    const name = this.loaded.value?.job.name
    if (name) this.dispatchEvent(new CustomEvent('job-named', { detail: name }))
  }

  override render() {
    // The page below says so.
    if (this.loaded.isMissing) return nothing
    return this.loaded.shown(
      ({ job, plan }) => html`
        <job-strip
          .job=${job}
          .plan=${plan}
          .quotePath=${printPath(this.jobId, 'quote.pdf')}
          .unsaved=${job.state === 'draft' && jobDrafts.has(this.jobId)}
        ></job-strip>
      `,
      () => void this.reload(),
    )
  }
}
