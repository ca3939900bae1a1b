import { css, html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { Species } from '../../shared/wood/species.ts'
import { addJob, deleteJob, jobs, newKey, piecesOf } from '../api.ts'
import { draftOf, dropDraft } from '../drafts.ts'
import { jobFileOf } from '../job-entries.ts'
import type { JobState, StoredJob } from '../job-file.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { noteChange, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

const stateWords: Record<JobState, string> = { draft: 'draft', started: 'in work', done: 'done' }

interface Listed {
  jobs: StoredJob[]
  woods: readonly Species[]
  /** How far each started batch has come, by job. */
  progress: ReadonlyMap<string, { made: number; share: number }>
}

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
  return { jobs: all, woods, progress: new Map(progress) }
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
      .job {
        grid-template-rows: auto 1fr auto;
      }
      .name {
        font-family: var(--serif);
        font-size: var(--size-large);
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      .line {
        display: flex;
        gap: var(--space-2) var(--space-3);
        flex-wrap: wrap;
        align-items: baseline;
      }
      progress {
        width: 100%;
        height: 0.75rem;
        accent-color: var(--accent);
      }
      .quantity {
        font-size: var(--size-figure);
        font-weight: 650;
        line-height: 1;
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

  private readonly reload = () => this.list.from(listed)

  private async duplicate(job: StoredJob) {
    await this.attempt(async () => {
      const copy = await addJob({ ...jobFileOf(job as never), name: `${job.name} (copy)`, key: newKey() })
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
      dropDraft(job.id)
      noteChange({ kind: 'job', id: job.id })
      await this.reload()
      this.message = `${job.name} is deleted.`
    })
  }

  private async attempt(action: () => Promise<void>) {
    this.message = ''
    try {
      await action()
    } catch (failure) {
      this.message = (failure as Error).message
    }
  }

  private readonly open = async (event: Event) => {
    const input = event.target as HTMLInputElement
    const text = await input.files?.[0]?.text()
    input.value = ''
    if (text === undefined) return
    await this.attempt(async () => {
      const job = await addJob({ ...jobFileOf(JSON.parse(text) as never), key: newKey() })
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
            <a class="button main" href="/jobs/new">${draftOf('') ? 'Go on with the new job' : 'New job'}</a>
          </div>
        </div>
        <p role="status" class=${this.message ? 'problem' : 'hidden-label'}>${this.message}</p>
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
          ${draftOf('') ? nothing : html`<a class="button" href="/jobs/new?example">See an example first</a>`}
        </div>
      </section>
    `
  }

  private all(list: Listed) {
    return html`<ul class="plain jobs">${list.jobs.map((job) => this.job(job, list))}</ul>`
  }

  private job(job: StoredJob, { woods, progress }: Listed) {
    const come = progress.get(job.id)
    const wood = woods.find(({ key }) => key === job.species)?.name ?? job.species
    const page = job.state === 'draft' ? 'profile' : job.state === 'started' ? 'rack' : 'checks'
    return html`
      <li class="card job">
        <div class="line">
          <a class="name" href=${jobPath(job.id, page)}>${job.name}</a>
          <span class="mark ${job.state === 'started' ? 'going' : job.state === 'done' ? 'in' : ''}">${stateWords[job.state]}</span>
        </div>
        <div>
          <p class="line"><span class="quantity">${job.quantity}</span> ${job.profile.split ? 'halves' : 'pieces'} in ${wood}</p>
          <p class="soft">
            ${[job.customer && `for ${job.customer}`, job.due && `due ${job.due}`].filter(Boolean).join(', ') || 'no customer, no date'}
          </p>
          ${
            come
              ? html`<p class="small">
                <progress max="1" value=${come.share} aria-label="Progress of ${job.name}"></progress>
                ${come.made} of ${job.quantity} ${job.profile.split ? 'halves' : 'pieces'} finished, ${Math.round(come.share * 100)} % of the work done
              </p>`
              : nothing
          }
        </div>
        <div class="buttons no-print">
          <button type="button" aria-label="Duplicate ${job.name}" @click=${() => this.duplicate(job)}>Duplicate</button>
          <button type="button" class="danger" aria-label="Delete ${job.name}" @click=${() => this.ask(job)}>Delete</button>
        </div>
      </li>
    `
  }
}
