import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { JobState } from '../../shared/contract/job.ts'
import type { Plan } from '../../shared/plan.ts'
import type { Breach } from '../../shared/problem.ts'
import type { Units } from '../../shared/units/length.ts'
import { addJob, newKey, planOf, Refusal, storedJob } from '../api.ts'
import { type Draft, jobDrafts, type OtherDraft } from '../drafts.ts'
import type { JobForm } from '../elements/job-form.ts'
import '../elements/ask-twice.ts'
import '../elements/job-form.ts'
import '../elements/save-bar.ts'
import type { EditDetail } from '../edit.ts'
import { type EntryDetail, entryAt, withEntry } from '../entry.ts'
import { exampleJob } from '../example-job.ts'
import { inUnitsFirst, jobField } from '../field-words.ts'
import { frozenFile, OPEN_FIELDS, withOpenFields } from '../frozen-file.ts'
import { inUnits, jobFileOf, newJobFile, sentFile } from '../job-entries.ts'
import type { JobFile } from '../job-file.ts'
import { type LivePlan, livePlan } from '../live-plan.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { jobSaver } from '../save-job.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import './job-library.ts'
import { editedDraft, historyInUnits, redoneDraft, undoneDraft } from '../undo.ts'

/** The new job: a plain stick, or the example where the address asks for it. */
const freshFile = (units: Units) => (location.search === '?example' ? exampleJob() : newJobFile(units))

/** Whether nothing stands in the field yet. */
function isUntouched(file: JobFile, path: string): boolean {
  const value = entryAt(file, path)
  return value === undefined || value === '' || (Array.isArray(value) && value.every((each) => each === ''))
}

/** Whether a length of a joint or the place of a station was left empty. */
const isBlank = (file: JobFile, path: string): boolean =>
  /^(joints\[\d+\]\.(at|size|depth)|profile\.stations\[\d+\]\.at)/.test(path) && isUntouched(file, path)

/** What can be taken back: the profile and its joints. */
const UNDOABLE = /^(profile\.stations|joints)/

/** What the page works on: the stored job it came from, if any, and the shop that plans it. */
interface Ground extends ShopAndWoods {
  stored?: { file: JobFile; revision: number; state: JobState }
  /** The plan a started batch is made to. */
  frozen?: Plan
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
  /** The job was deleted elsewhere while edits of it are kept here. */
  @state() private gone = false
  @state() private others: OtherDraft[] = []
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
    addEventListener('storage', this.listOthers)
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop') void this.reload()
      else if (change.kind === 'job' && change.id === this.jobId && this.saved && !this.saving)
        void this.reload()
    })
  }

  override disconnectedCallback() {
    removeEventListener('storage', this.listOthers)
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
      this.gone = false
      void this.reload()
    }
  }

  private async reload() {
    const { jobId } = this
    await this.ground.from(async () => {
      const [shop, job] = await Promise.all([shopAndWoods(), jobId ? this.job(jobId) : undefined])
      const frozen = job && job.state !== 'draft' ? await planOf(jobId) : undefined
      return {
        ...shop,
        ...(job && { stored: { file: jobFileOf(job), revision: job.revision, state: job.state } }),
        ...(frozen && { frozen }),
      }
    })
    if (this.ground.value && !this.ground.failure && this.jobId === jobId) this.begin(this.ground.value)
  }

  /** The stored job; none where it is gone and edits of it are kept here. */
  private async job(jobId: string) {
    try {
      return await storedJob(jobId)
    } catch (failure) {
      if (failure instanceof Refusal && failure.status === 404 && jobDrafts.has(jobId)) return undefined
      throw failure
    }
  }

  /** Kept edits come back; without any the stored job, or a new one, is the start. */
  private begin({ stored, shop, frozen }: Ground) {
    this.gone = this.jobId !== '' && !stored
    if (frozen) this.setLateEditsAside(stored!.file)
    this.listOthers()
    const [other] = this.others
    const kept = jobDrafts.of(this.jobId) ?? (this.gone && other ? jobDrafts.adopt(other) : undefined)
    this.draft = kept ?? {
      file: stored?.file ?? freshFile(shop.units),
      key: newKey(),
      ...(stored && { revision: stored.revision }),
    }
    if (frozen && stored) this.draft = { ...this.draft, revision: stored.revision }
    this.saved = !kept && stored !== undefined
    this.message = kept && !this.gone ? 'Your unsaved edits from this device are back.' : ''
    this.listOthers()
    this.plan()
  }

  private readonly listOthers = () => {
    this.others = jobDrafts.others().filter(({ id }) => id === this.jobId)
  }

  /** Edits that the batch was started without cannot reach it any more: they wait beside it. */
  private setLateEditsAside(file: JobFile) {
    const kept = jobDrafts.of(this.jobId)
    if (kept && !sameFile(kept.file, withOpenFields(file, kept.file))) jobDrafts.setAside(this.jobId)
  }

  private plan() {
    if (!this.ground.value || !this.draft) return
    const begun = performance.now()
    const live = livePlan(this.draft.file, this.ground.value)
    const { frozen } = this.ground.value
    // A started batch is shown as it is made; only what may still be changed can be wrong.
    const errors = live.errors.filter(({ path }) => OPEN_FIELDS.some((field) => field === path))
    this.live = frozen ? { job: frozen.job, plan: frozen, errors } : live
    this.planMs = performance.now() - begun
  }

  private readonly entry = (event: CustomEvent<EntryDetail>) => {
    const { path, value } = event.detail
    const merge = path === this.typing
    this.typing = path
    this.change(path === 'units' ? this.rewritten(value as Units) : this.typed(path, value, merge))
  }

  private typed(path: string, value: unknown, merge: boolean): Draft {
    const draft = this.draft!
    const file = withEntry(draft.file, path, value)
    return UNDOABLE.test(path)
      ? editedDraft(
          draft,
          file,
          jobField(
            path,
            (file.joints ?? []).map(({ kind }) => kind),
          ),
          merge,
        )
      : { ...draft, file }
  }

  private rewritten(units: Units): Draft {
    const { history, ...draft } = this.draft!
    const file = inUnits(draft.file, units)
    return { ...draft, file, ...(history && { history: historyInUnits(history, draft.file.units, units) }) }
  }

  private readonly edit = ({ detail }: CustomEvent<EditDetail>) => {
    const draft = this.draft!
    const { stations, joints = draft.file.joints, label, merge } = detail
    const file = { ...draft.file, profile: { ...draft.file.profile, stations }, ...(joints && { joints }) }
    this.typing = ''
    this.change(editedDraft(draft, file, label, merge))
  }

  private readonly undo = () => {
    this.typing = ''
    this.change(undoneDraft(this.draft!))
  }

  private readonly redo = () => {
    this.typing = ''
    this.change(redoneDraft(this.draft!))
  }

  /** Goes on with a changed draft, kept on this device at once and planned in the next pause. */
  private change(draft: Draft | undefined) {
    if (!draft) return
    this.draft = draft
    this.refused = []
    this.saved = false
    this.message = jobDrafts.keep(this.jobId, this.draft)
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
    const { jobId } = this
    const sent = jobSaver.withSending({ ...this.draft!, ...(revision !== undefined && { revision }) })
    this.draft = sent
    jobDrafts.keep(jobId, sent)
    this.saving = true
    try {
      const job = await jobSaver.save(jobId, sent)
      this.stored(job.id, job.revision, sent)
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
    jobDrafts.drop(this.jobId)
    const { file, key, history } = this.draft!
    this.draft = { file, key, revision, ...(history && { history }) }
    if (!same) jobDrafts.keep(id, this.draft)
    this.saved = same
    this.message = same ? 'Saved.' : ''
    noteChange({ kind: 'job', id })
    if (!this.jobId) go(jobPath(id, 'profile'), { replace: true })
  }

  private failed(failure: unknown) {
    if (!(failure instanceof Refusal)) throw failure
    this.conflict = failure.status === 412
    this.refused = failure.errors
    this.message = this.conflict || failure.errors.some(({ path }) => path) ? '' : failure.message
    this.gone = failure.status === 404
    if (failure.code === 'wrong-state') void this.reload()
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
    jobDrafts.drop(this.jobId)
    this.conflict = false
    this.tried = false
    await this.reload()
  }

  /** Stores the edits as a job of their own. */
  private async saveAsNew({ revision: _revision, ...draft }: Draft, drop: () => void) {
    try {
      const job = await jobSaver.save('', jobSaver.withSending(draft))
      drop()
      noteChange({ kind: 'job', id: job.id })
      go(jobPath(job.id, 'profile'))
    } catch (failure) {
      this.failed(failure)
    }
  }

  private readonly abandon = () => {
    jobDrafts.drop(this.jobId)
    go('/jobs')
  }

  private adopt(other: OtherDraft) {
    if (!this.saved) jobDrafts.setAside(this.jobId)
    jobDrafts.adopt(other)
    this.begin(this.ground.value!)
  }

  private drop(other: OtherDraft) {
    jobDrafts.dropOther(other)
    this.listOthers()
  }

  private readonly duplicate = async () => {
    const file = this.shownFile()
    try {
      const job = await addJob({ ...sentFile(file), name: `${file.name} (copy)`, key: newKey() })
      noteChange({ kind: 'job', id: job.id })
      go(jobPath(job.id, 'profile'))
    } catch (failure) {
      this.failed(failure)
    }
  }

  /** Errors as they are shown: not for the field being typed in, nor of fields still empty before the first try to save. */
  private shownErrors(): Breach[] {
    const { errors } = this.live
    const { file } = this.draft!
    return [...errors, ...this.refused]
      .filter(({ path }) => path !== this.typing && (this.tried || !isUntouched(file, path)))
      .map(({ path, message }) => ({
        path,
        message: isBlank(file, path) ? 'is missing' : inUnitsFirst(message, file.units),
      }))
  }

  /** A started batch is shown as it is made, whatever the file tells. */
  private shownFile(): JobFile {
    const { file } = this.draft!
    const frozen = this.ground.value?.frozen
    return frozen ? frozenFile(file, frozen.job.profile) : file
  }

  override render() {
    return this.ground.shown(
      (ground) => (this.draft ? this.page(ground) : html``),
      () => void this.reload(),
    )
  }

  private page(ground: Ground) {
    const frozen = ground.frozen !== undefined
    const shown = this.shownErrors()
    return html`
      <div
        class="page"
        @entry=${this.entry}
        @edit=${this.edit}
        @undo=${this.undo}
        @redo=${this.redo}
        @change=${this.left} @focusout=${this.left}>
        <div class="page-head"><h1>${this.jobId ? 'Profile' : 'New job'}</h1></div>
        ${frozen ? this.frozen() : nothing} ${this.conflict ? this.conflicted() : nothing}
        ${this.gone ? this.deleted() : nothing} ${this.others.map((other) => this.other(other, frozen))}
        <job-form
          .file=${this.shownFile()}
          .history=${frozen ? undefined : this.draft!.history}
          .live=${this.live}
          .shown=${shown}
          .ground=${ground}
          .disabled=${frozen}
        >
          <job-library slot="library" .file=${this.shownFile()} .profile=${this.live.job?.profile} .disabled=${frozen}></job-library>
        </job-form>
      </div>
      ${
        this.gone
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
          <p>
            The batch is started: profile and plan are frozen, so that every piece is made and checked alike. Name,
            customer, due day and notes can still be changed.
          </p>
          <p><button type="button" @click=${this.duplicate}>Duplicate to change</button></p>
        </div>
      </div>
    `
  }

  private deleted() {
    return html`
      <div class="problem" role="alert">
        <p>This job was deleted elsewhere. What you entered is still here.</p>
        <div class="buttons">
          <button type="button" class="main" @click=${() => this.saveAsNew(this.draft!, () => jobDrafts.drop(this.jobId))}>
            Save as a new job
          </button>
          <button type="button" class="danger" @click=${this.abandon}>Drop it</button>
        </div>
      </div>
    `
  }

  /** Edits of another tab, or of one that was closed. */
  private other(other: OtherDraft, frozen: boolean) {
    const { file } = other.draft
    const name = file.name || 'no name yet'
    const told = frozen
      ? 'These edits were not saved when the batch was started and cannot reach it any more'
      : this.jobId
        ? 'Other unsaved edits of this job are kept on this device, from another tab or one that was closed'
        : 'Another new job is kept unsaved on this device, from another tab or one that was closed'
    return html`
      <div class="notice no-print">
        <div class="page-head">
          <p>${told}: ${name}, ${file.profile.stations.length} stations.</p>
          <div class="buttons">
            ${
              frozen || this.gone
                ? html`<button type="button" @click=${() => this.saveAsNew(other.draft, () => jobDrafts.dropOther(other))}>
                  Save them as a new job
                </button>`
                : html`<button type="button" @click=${() => this.adopt(other)}>Go on with ${this.jobId ? 'them' : 'it'}</button>`
            }
            <ask-twice
              label="Drop ${this.jobId ? 'them' : 'it'}"
              question="Drop what was entered for good?"
              answer="Yes, drop it"
              @confirmed=${() => this.drop(other)}
            ></ask-twice>
          </div>
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
