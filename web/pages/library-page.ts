import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { isMeasuring, type LibraryProfile, type ProfileVersion } from '../../shared/library.ts'
import { changeProfile, profilePrintPath, profiles, profileVersions, storedProfile } from '../api-profiles.ts'
import { DraftDesk } from '../draft-desk.ts'
import { type OtherDraft, profileDrafts, sheetDrafts } from '../drafts.ts'
import '../elements/draft-notices.ts'
import { focusField } from '../elements/focus-field.ts'
import '../elements/library-form.ts'
import '../elements/compare-with.ts'
import type { Comparable } from '../elements/compare-with.ts'
import '../elements/prints-card.ts'
import type { PrintLink } from '../elements/prints-card.ts'
import '../elements/profile-versions.ts'
import '../elements/save-bar.ts'
import { drawnProfile, type LibraryFile, libraryFileOf, newLibraryFile } from '../library-file.ts'
import { type LivePlan, liveProfile } from '../live-plan.ts'
import { Load } from '../load.ts'
import { go, profilePath } from '../router.ts'
import { profileSaver } from '../save-profile.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { unlessGone } from '../unless-gone.ts'
import { makeJob } from './make-job.ts'

/** What the page works on: the stored profile with its versions, the others of the library. */
interface Ground extends ShopAndWoods {
  stored?: LibraryProfile
  versions: ProfileVersion[]
  others: LibraryProfile[]
}

/** One profile of the library: draw it, compare its versions, make a job of it. */
@customElement('library-page')
export class LibraryPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        padding-bottom: 1rem;
      }
    `,
  ]

  @property() profileId = ''
  @state() private live: Omit<LivePlan, 'plan'> = { errors: [] }
  /** What the drawing is compared with. */
  @state() private against = ''
  @state() private message = ''
  /** The message tells what went wrong. */
  @state() private failed = false
  private readonly ground = new Load<Ground>(this)
  private readonly desk = new DraftDesk<LibraryFile, LibraryProfile>(this, {
    shelf: profileDrafts,
    saver: profileSaver,
    load: storedProfile,
    changed: () => this.read(),
    stored: (id, fresh) => this.stored(id, fresh),
    reload: () => this.reload(),
    focus: (path) => focusField(this.renderRoot, path),
  })
  /** The desk waits for an answer to begin on, whichever comes last. */
  private waiting = false
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop') void this.refresh()
      else if (change.kind === 'profile' && !this.desk.saving)
        void (this.desk.saved ? this.reload() : this.refresh())
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('profileId')) return
    this.desk.turnTo(this.profileId)
    this.against = ''
    this.message = ''
    void this.reload()
  }

  /** Fetches everything anew; the desk begins on it where it waits for that, also where this overtook what it waited for. */
  private async refresh() {
    const { profileId } = this
    const ground = await this.ground.from(async () => {
      const [shop, stored, versions, all] = await Promise.all([
        shopAndWoods(),
        unlessGone(profileId, storedProfile, profileDrafts),
        unlessGone(profileId, profileVersions, profileDrafts),
        profiles(),
      ])
      const others = all.filter(({ id }) => id !== profileId)
      return { ...shop, ...(stored && { stored }), versions: versions ?? [], others }
    })
    if (!ground || !this.waiting || this.profileId !== profileId) return
    this.waiting = false
    const { stored } = ground
    this.desk.begin(stored && { file: libraryFileOf(stored), revision: stored.revision }, () =>
      newLibraryFile(ground.shop.units),
    )
  }

  private reload() {
    this.waiting = true
    return this.refresh()
  }

  private read() {
    if (this.desk.draft) this.live = liveProfile(this.desk.draft.file)
  }

  private stored(id: string, fresh: boolean) {
    noteChange({ kind: 'profile', id })
    if (fresh) go(profilePath(id), { replace: this.profileId === '' })
    else void this.refresh()
  }

  private async attempt(action: () => Promise<unknown>) {
    this.message = ''
    this.failed = false
    try {
      await action()
    } catch (failure) {
      this.failed = true
      this.message = (failure as Error).message
    }
  }

  private readonly makeJob = () => this.attempt(() => makeJob(this.ground.value!.stored!))

  private readonly restore = ({ detail }: CustomEvent<number>) =>
    this.attempt(async () => {
      const { stored, versions } = this.ground.value!
      const version = versions.find(({ revision }) => revision === detail)!
      const { id, revision } = await changeProfile(stored!.id, stored!.revision, libraryFileOf(version))
      noteChange({ kind: 'profile', id })
      await this.reload()
      this.message = `Version ${detail} is the latest again, as version ${revision}.`
    })

  private readonly compareVersion = ({ detail }: CustomEvent<number>) => {
    this.against = `version ${detail}`
    void this.updateComplete.then(() => {
      const compare = this.renderRoot.querySelector<HTMLElement>('compare-with')
      compare?.scrollIntoView({ block: 'start' })
      compare?.focus()
    })
  }

  private readonly abandon = () => {
    this.desk.abandon()
    go('/profiles')
  }

  override render() {
    return this.ground.shown(
      (ground) => (this.desk.draft ? this.page(ground, this.desk.draft.file) : html``),
      () => void this.reload(),
    )
  }

  private page(ground: Ground, file: LibraryFile) {
    const { desk, profileId } = this
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
        ${this.head(ground, file)}
        <p role="status" class=${this.message ? (this.failed ? 'problem' : 'notice') : 'hidden-label'}>${this.message}</p>
        <draft-notices
          what="profile"
          .conflict=${desk.conflict}
          .gone=${desk.gone}
          .fresh=${profileId === ''}
          .others=${desk.others}
          @discard=${desk.discard}
          @overwrite=${desk.saveOverTheirs}
          @save-as-new=${desk.saveMineAsNew}
          @abandon=${this.abandon}
          @adopt=${({ detail }: CustomEvent<OtherDraft<LibraryFile>>) => desk.adopt(detail)}
          @save-other=${({ detail }: CustomEvent<OtherDraft<LibraryFile>>) => desk.saveOtherAsNew(detail)}
          @drop-other=${({ detail }: CustomEvent<OtherDraft<LibraryFile>>) => desk.dropOther(detail)}
        ></draft-notices>
        <library-form
          .file=${file}
          .history=${desk.draft!.history}
          .woods=${ground.woods}
          .shown=${shown}
          @jump=${({ detail }: CustomEvent<string>) => focusField(this.renderRoot, detail)}
        ></library-form>
        ${this.comparison(ground, file)} ${profileId ? this.kept(ground, file) : nothing}
      </div>
      ${
        desk.gone
          ? nothing
          : html`<save-bar
            what="the profile"
            .errors=${shown.length}
            .saved=${desk.saved}
            .saving=${desk.saving}
            .message=${desk.message}
            .fresh=${profileId === ''}
            @save=${() => desk.save(this.live.errors)}
            @discard=${desk.discard}
          ></save-bar>`
      }
    `
  }

  private head({ stored }: Ground, file: LibraryFile) {
    const sheet = file.sheet !== undefined
    return html`
      <div class="page-head">
        <h1>${this.profileId ? stored?.name || 'Profile' : 'New profile'}</h1>
        <div class="buttons no-print">
          ${
            stored && drawnProfile(stored)
              ? html`<button type="button" @click=${this.makeJob}>Make a job${this.desk.saved ? '' : ` of version ${stored.revision}`}</button>`
              : nothing
          }
          ${
            this.profileId && sheet
              ? html`<a class="button" href=${profilePath(this.profileId, 'measure')}>Measuring sheet${sheetDrafts.has(this.profileId) ? ', with readings not saved yet' : ''}</a>`
              : nothing
          }
          ${this.profileId ? nothing : html`<a class="button" href=${profilePath('', 'measure')}>Copy a piece instead</a>`}
        </div>
      </div>
    `
  }

  /** The versions and the other profiles, against the drawing as it stands. */
  private comparison({ versions, others, stored }: Ground, file: LibraryFile) {
    const { job } = this.live
    const choices: Comparable[] = [...versions, ...others].flatMap((entry) => {
      const profile = drawnProfile(entry)
      const own = entry.id === stored?.id
      const name = own ? `version ${entry.revision}` : entry.name
      return profile ? [{ key: own ? `version ${entry.revision}` : entry.id, name, profile }] : []
    })
    if (!job || choices.length === 0) return nothing
    const chosen = choices.some(({ key }) => key === this.against) ? this.against : ''
    return html`<section class="card" aria-labelledby="compare">
      <h2 id="compare">Compare</h2>
      <compare-with
        .choices=${choices}
        .chosen=${chosen}
        .drawn=${{ name: this.desk.saved ? `version ${stored?.revision}, as drawn` : 'the drawing as it stands', profile: job.profile }}
        .lengthStyle=${lengthStyle(file.units)}
        @choose=${({ detail }: CustomEvent<string>) => {
          this.against = detail
        }}
      ></compare-with>
    </section>`
  }

  private kept({ versions, stored }: Ground, file: LibraryFile) {
    if (!stored) return nothing
    const shown = versions.map((version) => ({ version, profile: drawnProfile(version) }))
    return html`
      <section class="card" aria-labelledby="versions">
        <h2 id="versions">Versions</h2>
        <profile-versions
          .versions=${shown}
          .lengthStyle=${lengthStyle(file.units)}
          .held=${this.desk.saved ? '' : 'Save or drop your edits first: then a version can be restored.'}
          @compare-version=${this.compareVersion}
          @restore=${this.restore}
        ></profile-versions>
      </section>
      ${isMeasuring(stored) ? nothing : this.prints(stored)}
    `
  }

  private prints({ id, revision }: LibraryProfile) {
    const links: PrintLink[] = [
      {
        href: profilePrintPath(id, 'pattern.pdf'),
        name: 'Pattern',
        what: 'half and full profile, with station lines',
      },
      {
        href: profilePrintPath(id, 'story-stick.pdf'),
        name: 'Story stick',
        what: 'a strip with the positions alone',
      },
      {
        href: profilePrintPath(id, 'pattern.svg'),
        name: 'Pattern to cut',
        what: 'SVG in mm, cut and engraved lines apart',
      },
    ]
    return html`<section class="card no-print" aria-labelledby="prints">
      <h2 id="prints">Prints at true scale</h2>
      ${this.desk.saved ? nothing : html`<p class="soft">They show version ${revision}: what is not saved yet is not on them.</p>`}
      <prints-card .links=${links}></prints-card>
    </section>`
  }
}
