import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { JobState } from '../../shared/contract/job.ts'
import type { Breach } from '../../shared/problem.ts'
import type { Units } from '../../shared/units/length.ts'
import { addJob, changeJob, newKey, Refusal, storedJob } from '../api.ts'
import { type Draft, draftOf, dropDraft, keepDraft } from '../drafts.ts'
import type { JobForm } from '../elements/job-form.ts'
import '../elements/job-form.ts'
import '../elements/save-bar.ts'
import { type EntryDetail, withEntry } from '../entry.ts'
import { exampleJob } from '../example-job.ts'
import { inUnits, jobFileOf, newJobFile, sentFile } from '../job-entries.ts'
import type { JobFile } from '../job-file.ts'
import { type LivePlan, livePlan } from '../live-plan.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

/** The new job: a plain stick, or the example where the address asks for it. */
const freshFile = (units: Units) => (location.search === '?example' ? exampleJob() : newJobFile(units))

/** What the page works on: the stored job it came from, if any, and the shop that plans it. */
interface Ground extends ShopAndWoods {
  stored?: { file: JobFile; revision: number; state: JobState }
}

/** Writes a job: its head, profile, joints and ways, with the drawing and the plan as they stand at each stroke. */
@customElement('profile-page')
export class ProfilePage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        padding-bottom: 1rem;
      }
    `,
  ]

  @property() jobId = ''
  @state() private draft?: Draft
  @state() private live: LivePlan = { errors: [] }
  @state() private refused: Breach[] = []
  @state() private message = ''
  @state() private conflict = false
  @state() private saving = false
  @state() private saved = true
  @state() private tried = false
  /** The field being typed in: its error waits until it is left. */
  @state() private typing = ''
  private readonly ground = new Load<Ground>(this)
  private timer = 0
  /** How long the last planning took. */
  private planMs = 0
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop') void this.reload()
      else if (change.kind === 'job' && change.id === this.jobId && this.saved && !this.saving)
        void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    clearTimeout(this.timer)
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (changed.has('jobId')) {
      this.draft = undefined
      this.tried = false
      this.refused = []
      this.message = ''
      this.conflict = false
      void this.reload()
    }
  }

  private async reload() {
    const { jobId } = this
    await this.ground.from(async () => {
      const [shop, job] = await Promise.all([shopAndWoods(), jobId ? storedJob(jobId) : undefined])
      return {
        ...shop,
        ...(job && { stored: { file: jobFileOf(job), revision: job.revision, state: job.state } }),
      }
    })
    if (this.ground.value && this.jobId === jobId) this.begin(this.ground.value)
  }

  /** Kept edits come back; without any the stored job, or a new one, is the start. */
  private begin({ stored, shop }: Ground) {
    const kept = stored && stored.state !== 'draft' ? undefined : draftOf(this.jobId)
    this.draft = kept ?? {
      file: stored?.file ?? freshFile(shop.units),
      key: newKey(),
      ...(stored && { revision: stored.revision }),
    }
    this.saved = !kept && stored !== undefined
    this.message = kept ? 'Your unsaved edits from this device are back.' : ''
    this.plan()
  }

  private plan() {
    if (!this.ground.value || !this.draft) return
    const begun = performance.now()
    this.live = livePlan(this.draft.file, this.ground.value)
    this.planMs = performance.now() - begun
  }

  private readonly entry = (event: CustomEvent<EntryDetail>) => {
    const { path, value } = event.detail
    const file =
      path === 'units'
        ? inUnits(this.draft!.file, value as JobFile['units'])
        : withEntry(this.draft!.file, path, value)
    this.draft = { ...this.draft!, file }
    this.typing = path
    this.refused = []
    this.saved = false
    this.message = keepDraft(this.jobId, this.draft)
      ? ''
      : 'This device has no room to keep your edits: save soon.'
    clearTimeout(this.timer)
    // A profile of very many stations waits for a longer pause in the typing.
    this.timer = window.setTimeout(() => this.plan(), Math.min(Math.max(60, 3 * this.planMs), 800))
  }

  private readonly left = () => {
    this.typing = ''
  }

  private async save() {
    this.tried = true
    clearTimeout(this.timer)
    this.plan()
    if (this.live.errors.length > 0) {
      this.message = ''
      await this.updateComplete
      this.form()?.focusField(this.live.errors[0]!.path)
      return
    }
    await this.send(this.draft!.revision)
  }

  private async send(revision: number | undefined) {
    const { draft, jobId } = this
    this.saving = true
    try {
      const job =
        jobId && revision !== undefined
          ? await changeJob(jobId, revision, sentFile(draft!.file))
          : await addJob({ ...sentFile(draft!.file), key: draft!.key })
      this.stored(job.id, job.revision, draft!)
    } catch (failure) {
      this.failed(failure)
    } finally {
      this.saving = false
    }
  }

  /** What was typed while the save was under way stays as unsaved edits on the new revision. */
  private stored(id: string, revision: number, sent: Draft) {
    this.conflict = false
    const same = this.draft === sent
    dropDraft(this.jobId)
    this.draft = { ...this.draft!, revision }
    if (!same) keepDraft(id, this.draft)
    this.saved = same
    this.message = same ? 'Saved.' : ''
    noteChange({ kind: 'job', id })
    if (!this.jobId) go(jobPath(id, 'profile'), { replace: true })
  }

  private failed(failure: unknown) {
    if (!(failure instanceof Refusal)) throw failure
    this.conflict = failure.status === 412
    this.refused = failure.errors
    this.message = this.conflict ? '' : failure.message
    if (failure.errors[0])
      void this.updateComplete.then(() => this.form()?.focusField(failure.errors[0]!.path))
  }

  private form() {
    return this.renderRoot.querySelector<JobForm>('job-form')
  }

  private readonly saveOverTheirs = async () => {
    try {
      const theirs = await storedJob(this.jobId)
      await this.send(theirs.revision)
    } catch (failure) {
      this.failed(failure)
    }
  }

  private readonly discard = async () => {
    dropDraft(this.jobId)
    this.conflict = false
    this.tried = false
    await this.reload()
  }

  private readonly duplicate = async () => {
    const { file } = this.draft!
    try {
      const job = await addJob({ ...file, name: `${file.name} (copy)`, key: newKey() })
      noteChange({ kind: 'job', id: job.id })
      go(jobPath(job.id, 'profile'))
    } catch (failure) {
      this.failed(failure)
    }
  }

  /** Errors as they are shown: not for the field being typed in, nor a missing name before the first try to save. */
  private shownErrors(): Breach[] {
    const { errors } = this.live
    return [...errors, ...this.refused].filter(
      ({ path }) => path !== this.typing && (path !== 'name' || this.tried || !!this.draft?.file.name),
    )
  }

  override render() {
    return this.ground.shown(
      (ground) => (this.draft ? this.page(ground, this.draft) : html``),
      () => void this.reload(),
    )
  }

  private page(ground: Ground, draft: Draft) {
    const frozen = ground.stored !== undefined && ground.stored.state !== 'draft'
    const shown = this.shownErrors()
    return html`
      <div class="page" @entry=${this.entry} @change=${this.left} @focusout=${this.left}>
        <div class="page-head"><h1>${this.jobId ? 'Profile' : 'New job'}</h1></div>
        ${frozen ? this.frozen() : nothing} ${this.conflict ? this.conflicted() : nothing}
        <job-form
          .file=${draft.file}
          .live=${this.live}
          .shown=${shown}
          .ground=${ground}
          .disabled=${frozen}
        ></job-form>
      </div>
      ${
        frozen
          ? nothing
          : html`<save-bar
            .errors=${shown.length}
            .saved=${this.saved}
            .saving=${this.saving}
            .message=${this.message}
            .fresh=${!this.jobId}
            @save=${this.save}
            @discard=${this.discard}
          ></save-bar>`
      }
    `
  }

  private frozen() {
    return html`
      <div class="notice no-print">
        <div class="page-head">
          <p>The batch is started: profile and plan are frozen, so that every piece is made and checked alike.</p>
          <p><button type="button" @click=${this.duplicate}>Duplicate to change</button></p>
        </div>
      </div>
    `
  }

  private conflicted() {
    return html`
      <div class="problem" role="alert">
        <p>This job was changed elsewhere while you were editing. Your edits are still here.</p>
        <div class="buttons">
          <button type="button" @click=${this.discard}>Load theirs, drop mine</button>
          <button type="button" class="danger" @click=${this.saveOverTheirs}>Save mine over theirs</button>
        </div>
      </div>
    `
  }
}
