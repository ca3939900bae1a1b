import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { JobState } from '../../shared/contract/job.ts'
import type { Plan } from '../../shared/plan.ts'
import type { Units } from '../../shared/units/length.ts'
import { addJob, newKey, planOf, storedJob } from '../api.ts'
import { copyName } from '../copy-name.ts'
import { DraftDesk } from '../draft-desk.ts'
import { jobDrafts, type OtherDraft } from '../drafts.ts'
import '../elements/draft-notices.ts'
import { focusField } from '../elements/focus-field.ts'
import '../elements/job-form.ts'
import '../elements/save-bar.ts'
import { exampleJob } from '../example-job.ts'
import { frozenFile, OPEN_FIELDS, withOpenFields } from '../frozen-file.ts'
import { jobFileOf, newJobFile, sentFile } from '../job-entries.ts'
import type { JobFile, StoredJob } from '../job-file.ts'
import { type LivePlan, livePlan } from '../live-plan.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { jobSaver } from '../save-job.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { unlessGone } from '../unless-gone.ts'
import './job-library.ts'

/** The new job: a plain stick, or the example where the address asks for it. */
const freshFile = (units: Units) => (location.search === '?example' ? exampleJob() : newJobFile(units))

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
  @state() private live: LivePlan = { errors: [] }
  private readonly ground = new Load<Ground>(this)
  private readonly desk = new DraftDesk<JobFile, StoredJob>(this, {
    shelf: jobDrafts,
    saver: jobSaver,
    load: storedJob,
    changed: (typing) => this.replan(typing),
    stored: (id, fresh) => this.stored(id, fresh),
    reload: () => this.reload(),
    focus: (path) => focusField(this.renderRoot, path),
  })
  private timer = 0
  /** How long the last planning took. */
  private planMs = 0
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      const { saved, saving } = this.desk
      if (change.kind === 'shop' || change.kind === 'board') void this.reload()
      else if (change.kind === 'job' && change.id === this.jobId && saved && !saving) void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    clearTimeout(this.timer)
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('jobId')) return
    this.desk.turnTo(this.jobId)
    void this.reload()
  }

  private async reload() {
    const { jobId } = this
    const ground = await this.ground.from(async () => {
      const [shop, job] = await Promise.all([shopAndWoods(), unlessGone(jobId, storedJob, jobDrafts)])
      const frozen = job && job.state !== 'draft' ? await planOf(jobId) : undefined
      return {
        ...shop,
        ...(job && { stored: { file: jobFileOf(job), revision: job.revision, state: job.state } }),
        ...(frozen && { frozen }),
      }
    })
    // An answer that was overtaken by a later one is no start.
    if (ground && this.jobId === jobId) this.begin(ground)
  }

  private begin({ stored, shop, frozen }: Ground) {
    if (frozen) this.setLateEditsAside(stored!.file)
    this.desk.begin(stored && { ...stored, rebased: frozen !== undefined }, () => freshFile(shop.units))
  }

  /** Edits that the batch was started without cannot reach it any more: they wait beside it. */
  private setLateEditsAside(file: JobFile) {
    const kept = jobDrafts.of(this.jobId)
    if (kept && !sameFile(kept.file, withOpenFields(file, kept.file))) jobDrafts.setAside(this.jobId)
  }

  private plan() {
    const { draft } = this.desk
    if (!this.ground.value || !draft) return
    const begun = performance.now()
    const live = livePlan(draft.file, this.ground.value)
    const { frozen } = this.ground.value
    // A started batch is shown as it is made; only what may still be changed can be wrong.
    const errors = live.errors.filter(({ path }) => OPEN_FIELDS.some((field) => field === path))
    this.live = frozen ? { job: frozen.job, plan: frozen, errors } : live
    this.planMs = performance.now() - begun
  }

  private replan(typing: boolean) {
    clearTimeout(this.timer)
    // A profile of very many stations waits for a longer pause in the typing.
    if (typing)
      this.timer = window.setTimeout(() => this.plan(), Math.min(Math.max(60, 3 * this.planMs), 800))
    else this.plan()
  }

  private readonly save = async () => {
    this.replan(false)
    await this.desk.save(this.live.errors)
  }

  private stored(id: string, fresh: boolean) {
    noteChange({ kind: 'job', id })
    if (fresh) go(jobPath(id, 'profile'), { replace: this.jobId === '' })
  }

  private readonly abandon = () => {
    this.desk.abandon()
    go('/jobs')
  }

  private readonly duplicate = async () => {
    const file = this.shownFile()
    try {
      const job = await addJob({ ...sentFile(file), name: copyName(file.name), key: newKey() })
      noteChange({ kind: 'job', id: job.id })
      go(jobPath(job.id, 'profile'))
    } catch (failure) {
      this.desk.failed(failure)
    }
  }

  /** A started batch is shown as it is made, whatever the file tells. */
  private shownFile(): JobFile {
    const { file } = this.desk.draft!
    const frozen = this.ground.value?.frozen
    return frozen ? frozenFile(file, frozen.job.profile) : file
  }

  override render() {
    return this.ground.shown(
      (ground) => (this.desk.draft ? this.page(ground) : html``),
      () => void this.reload(),
    )
  }

  private page(ground: Ground) {
    const { desk } = this
    const frozen = ground.frozen !== undefined
    const shown = desk.shown(this.live.errors)
    return html`
      <div
        class="page"
        @entry=${desk.entry}
        @edit=${desk.edit}
        @undo=${desk.undo}
        @redo=${desk.redo}
        @change=${desk.left}
        @focusout=${desk.left}
      >
        <div class="page-head"><h1>${this.jobId ? 'Profile' : 'New job'}</h1></div>
        ${frozen ? this.frozen() : nothing} ${this.notices(frozen)}
        <job-form
          .file=${this.shownFile()}
          .history=${frozen ? undefined : desk.draft!.history}
          .live=${this.live}
          .shown=${shown}
          .ground=${ground}
          .disabled=${frozen}
        >
          <job-library slot="library" .file=${this.shownFile()} .profile=${this.live.job?.profile} .disabled=${frozen}></job-library>
        </job-form>
      </div>
      ${
        desk.gone
          ? nothing
          : html`<save-bar
            .errors=${shown.length}
            .saved=${desk.saved}
            .saving=${desk.saving}
            .message=${desk.message}
            .fresh=${!this.jobId}
            @save=${this.save}
            @discard=${desk.discard}
          ></save-bar>`
      }
    `
  }

  private notices(started: boolean) {
    const { desk } = this
    return html`<draft-notices
      what="job"
      .conflict=${desk.conflict}
      .gone=${desk.gone}
      .fresh=${!this.jobId}
      .started=${started}
      .others=${desk.others}
      @discard=${desk.discard}
      @overwrite=${desk.saveOverTheirs}
      @save-as-new=${desk.saveMineAsNew}
      @abandon=${this.abandon}
      @adopt=${({ detail }: CustomEvent<OtherDraft>) => desk.adopt(detail)}
      @save-other=${({ detail }: CustomEvent<OtherDraft>) => desk.saveOtherAsNew(detail)}
      @drop-other=${({ detail }: CustomEvent<OtherDraft>) => desk.dropOther(detail)}
    ></draft-notices>`
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
}
