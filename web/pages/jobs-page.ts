import { css, html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import type { Species } from '../../shared/wood/species.ts'
import { addJob, deleteJob, jobs, newKey, piecesOf, planOf } from '../api.ts'
import { ships } from '../api-schedule.ts'
import { copyName } from '../copy-name.ts'
import { jobDrafts } from '../drafts.ts'
import type { Progress } from '../elements/job-card.ts'
import '../elements/job-card.ts'
import { dayText, standing } from '../elements/ships-words.ts'
import { jobFileOf } from '../job-entries.ts'
import type { StoredJob } from '../job-file.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { noteChange, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

/** Plans are fetched for so many jobs of the list; the others show what they are without one. */
const PLANS_SHOWN = 24

interface Listed {
  jobs: StoredJob[]
  woods: readonly Species[]
  /** How far each started batch has come, by job. */
  progress: ReadonlyMap<string, Progress>
}

const order = { started: 0, draft: 1, done: 2 }

/** What is in work first, then what is to come, each by its day; what is done last. */
const byUrgency = (a: StoredJob, b: StoredJob): number =>
  order[a.state] - order[b.state] ||
  (a.due ?? '9').localeCompare(b.due ?? '9') ||
  a.name.localeCompare(b.name)

async function listed(): Promise<Listed> {
  const [all, { woods }] = await Promise.all([jobs(), shopAndWoods()])
  const started = all.filter((job) => job.state !== 'draft')
  const progress = await Promise.all(
    started.map(async (job) => {
      // What the customer waits for: the pieces that have come farthest, as many as were ordered.
      const ordered = Number(job.quantity)
      const pieces = (await piecesOf(job.id)).filter((piece) => !piece.spoiled)
      const wanted = pieces
        .map(({ progress }) => progress)
        .sort((a, b) => b - a)
        .slice(0, ordered)
      const share = wanted.reduce((sum, progress) => sum + progress, 0) / ordered
      return [job.id, { made: wanted.filter((progress) => progress >= 1).length, share }] as const
    }),
  )
  return { jobs: all.sort(byUrgency), woods, progress: new Map(progress) }
}

/** Every job with where it stands; the way into each, and to a new one. */
@customElement('jobs-page')
export class JobsPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .jobs {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 22rem), 1fr));
      }
      .jobs > li {
        display: grid;
      }
      dialog {
        border: 1px solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        color: var(--ink);
        max-width: min(28rem, calc(100vw - 2rem));
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 0.5);
      }
      dialog > div {
        display: grid;
        gap: var(--space-4);
      }
    `,
  ]

  @state() private doomed?: StoredJob
  @state() private message = ''
  /** The message tells what went wrong. */
  @state() private failed = false
  /** When each open job ships, in words. */
  @state() private shipping: ReadonlyMap<string, string> = new Map()
  @state() private plans: ReadonlyMap<string, Plan> = new Map()
  private readonly list = new Load<Listed>(this)
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    void this.reload()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind === 'job' || kind === 'piece') void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly reload = async () => {
    await this.list.from(listed)
    await Promise.all([this.fetchPlans(), this.fetchShipping()])
  }

  /** The list stands without it where it cannot be told. */
  private async fetchShipping() {
    const { rows = [], today } = (await ships().catch(() => undefined)) ?? {}
    this.shipping = new Map(
      rows.map((row) => [row.id, `ships ${dayText(row.done, today)}, ${standing(row).text}`]),
    )
  }

  /** One after the other, so that the list stands at once; a job that cannot be planned goes without. */
  private async fetchPlans() {
    for (const { id } of (this.list.value?.jobs ?? []).slice(0, PLANS_SHOWN)) {
      if (!this.isConnected) return
      const plan = await planOf(id).catch(() => undefined)
      if (plan) this.plans = new Map([...this.plans, [id, plan]])
    }
  }

  private async duplicate(job: StoredJob) {
    await this.attempt(async () => {
      const copy = await addJob({ ...jobFileOf(job), name: copyName(job.name), key: newKey() })
      noteChange({ kind: 'job', id: copy.id })
      go(jobPath(copy.id, 'profile'))
    })
  }

  private async ask(job: StoredJob) {
    this.doomed = job
    await this.updateComplete
    this.renderRoot.querySelector('dialog')!.showModal()
  }

  private readonly confirmed = async () => {
    const job = this.doomed!
    this.renderRoot.querySelector('dialog')!.close()
    await this.attempt(async () => {
      await deleteJob(job.id, job.revision)
      jobDrafts.drop(job.id)
      noteChange({ kind: 'job', id: job.id })
      await this.reload()
      this.message = `${job.name} is deleted.`
    })
  }

  private async attempt(action: () => Promise<void>) {
    this.message = ''
    this.failed = false
    try {
      await action()
    } catch (failure) {
      this.failed = true
      this.message = (failure as Error).message
    }
  }

  private readonly open = async (event: Event) => {
    const input = event.target as HTMLInputElement
    const text = await input.files?.[0]?.text()
    input.value = ''
    if (text === undefined) return
    await this.attempt(async () => {
      const job = await addJob({ ...jobFileOf(JSON.parse(text)), key: newKey() })
      noteChange({ kind: 'job', id: job.id })
      go(jobPath(job.id, 'profile'))
    })
  }

  override render() {
    return html`
      <div class="page">
        <div class="page-head">
          <h1>Jobs</h1>
          <div class="buttons no-print">
            <a class="button" href="/ships">When it ships</a>
            <a class="button main" href="/jobs/new">${jobDrafts.of('') ? 'Go on with the new job' : 'New job'}</a>
          </div>
        </div>
        <p role="status" class=${this.message ? (this.failed ? 'problem' : 'notice') : 'hidden-label'}>${this.message}</p>
        ${this.kept()}
        ${this.list.shown(
          (list) => (list.jobs.length === 0 ? this.none() : this.all(list)),
          () => void this.reload(),
        )}
        <div class="field no-print">
          <label for="file">Open a job file (.json)</label>
          <input id="file" type="file" accept=".json,application/json" @change=${this.open} />
        </div>
      </div>
      <dialog aria-labelledby="sure">
        <div>
          <h2 id="sure">Delete ${this.doomed?.name}?</h2>
          <p>${this.doomed?.state === 'draft' ? 'The job goes for good.' : 'The job goes for good, with its pieces, steps and readings.'}</p>
          <div class="buttons">
            <button type="button" class="danger" @click=${this.confirmed}>Delete it</button>
            <form method="dialog"><button>Keep it</button></form>
          </div>
        </div>
      </dialog>
    `
  }

  /** Entered on this device and stored nowhere: new jobs of other tabs, edits of jobs that are gone. */
  private kept() {
    const stored = new Set(this.list.value?.jobs.map(({ id }) => id))
    const kept = jobDrafts.others().filter(({ id }) => id === '' || (this.list.value && !stored.has(id)))
    if (kept.length === 0) return nothing
    return html`<div class="notice no-print">
      <p>Kept on this device and not saved yet:</p>
      <ul>
        ${kept.map(
          ({ id, draft }) =>
            html`<li><a href=${id ? jobPath(id, 'profile') : '/jobs/new'}>${draft.file.name || 'a new job without a name'}</a></li>`,
        )}
      </ul>
    </div>`
  }

  private none() {
    return html`
      <section class="card">
        <h2>No job yet</h2>
        <p>
          A job is one batch of turned parts. Enter the profile by its stations; blanks, lumber, order of work, time and
          price follow from it.
        </p>
        <div class="buttons">
          <a class="button main" href="/jobs/new">Write the first job</a>
          ${jobDrafts.of('') ? nothing : html`<a class="button" href="/jobs/new?example">See an example first</a>`}
        </div>
      </section>
    `
  }

  private all(list: Listed) {
    return html`<ul class="plain jobs">${list.jobs.map((job) => this.job(job, list))}</ul>`
  }

  private job(job: StoredJob, { woods, progress }: Listed) {
    const wood = woods.find(({ key }) => key === job.species)?.name ?? job.species
    return html`<li><job-card
      class="card"
      .job=${job}
      .wood=${wood}
      .come=${progress.get(job.id)}
      .plan=${this.plans.get(job.id)}
      .ships=${this.shipping.get(job.id) ?? ''}
      @duplicate=${() => this.duplicate(job)}
      @delete=${() => this.ask(job)}
    ></job-card></li>`
  }
}
