import { html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { LibraryProfile } from '../../shared/library.ts'
import { storedProfile } from '../api-profiles.ts'
import { DraftDesk } from '../draft-desk.ts'
import { type OtherDraft, sheetDrafts } from '../drafts.ts'
import '../elements/draft-notices.ts'
import '../elements/measure-drawn.ts'
import '../elements/measure-entry.ts'
import type { MeasureEntry, SheetEdit } from '../elements/measure-entry.ts'
import { measureBench } from '../elements/measure-look.ts'
import '../elements/measure-originals.ts'
import '../elements/measure-photo.ts'
import '../elements/measure-places.ts'
import '../elements/measure-ways.ts'
import type { ProfileWay } from '../elements/measure-ways.ts'
import { refusedEntries } from '../elements/refused-entries.ts'
import '../elements/save-bar.ts'
import '../elements/turned-part.ts'
import { type LibraryFile, libraryFileOf } from '../library-file.ts'
import { Load } from '../load.ts'
import { PhotoDesk } from '../photo-desk.ts'
import { go, profilePath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { profileSaver } from '../save-profile.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { type EnteredSheet, newSheet, sentSheet, sheetOf } from '../sheet-file.ts'
import {
  dropHand,
  firstHand,
  freshHand,
  handOf,
  handOnSheet,
  keepHand,
  type SheetHand,
} from '../sheet-hand.ts'
import { noHistory, redone, remembered, undone } from '../sheet-history.ts'
import { asMeasured, placeOfPath, withSheet } from '../sheet-in-file.ts'
import { type LiveSheet, liveSheet, spanAbove } from '../sheet-live.ts'
import { openPlace, unreadPlace } from '../sheet-way.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { unlessGone } from '../unless-gone.ts'
import { makeJob } from './make-job.ts'

interface Ground extends ShopAndWoods {
  stored?: LibraryProfile
}

/** The measuring sheet: a piece is copied at the bench, station by station, and becomes a profile of the library. */
@customElement('measure-page')
export class MeasurePage extends LitElement {
  static override styles = [...pageWear, measureBench]

  @property() profileId = ''
  @state() private live?: LiveSheet
  @state() private hand: SheetHand = freshHand
  @state() private message = ''
  @query('measure-entry') private entry?: MeasureEntry
  private sheet: EnteredSheet = newSheet('in')
  private readonly ground = new Load<Ground>(this)
  private readonly photo = new PhotoDesk(this)
  private readonly desk = new DraftDesk<LibraryFile, LibraryProfile>(this, {
    shelf: sheetDrafts,
    saver: profileSaver,
    load: storedProfile,
    changed: () => this.read(),
    stored: (id, fresh) => void this.afterStored(id, fresh),
    reload: () => this.reload(),
    focus: () => void this.entry?.takeFocus(),
  })
  /** The id that a new profile was given: its address changes, nothing else does. */
  private justStored = ''
  /** What is done once it is stored. */
  private next?: (id: string) => void | Promise<void>
  private begun = false
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    addEventListener('keydown', this.pressed)
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'profile' && change.id === this.profileId && this.desk.saved && !this.desk.saving)
        void this.reload()
    })
  }

  override disconnectedCallback() {
    removeEventListener('keydown', this.pressed)
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('profileId')) return
    if (this.justStored !== '' && this.profileId === this.justStored) return this.stay()
    this.desk.turnTo(this.profileId)
    this.begun = false
    void this.reload()
  }

  /** The sheet that was just stored for the first time goes on at its own address, under the same cursor. */
  private stay() {
    const { file, revision } = this.desk.draft!
    this.desk.turnTo(this.profileId)
    this.desk.begin(revision === undefined ? undefined : { file, revision }, () => file)
    if (!this.desk.saved) keepHand(this.desk.draft!.key, this.hand)
    void this.updateComplete.then(() => this.entry?.resume())
  }

  private async reload() {
    const { profileId } = this
    const ground = await this.ground.from(async () => {
      const [shop, stored] = await Promise.all([
        shopAndWoods(),
        unlessGone(profileId, storedProfile, sheetDrafts),
      ])
      return { ...shop, ...(stored && { stored }) }
    })
    // An answer that was overtaken by a later one is no start.
    if (!ground || this.profileId !== profileId) return
    this.begin(ground)
    await this.photo.load(this.photoKey, ground.stored?.id)
  }

  private begin({ stored, shop }: Ground) {
    const file = stored && libraryFileOf(stored)
    const { units } = shop
    const before = this.sheet
    this.desk.begin(
      file && {
        file: { ...file, sheet: { ...sheetOf(file.sheet, file.units) } },
        revision: stored.revision,
      },
      () => ({ name: '', units, profile: { stations: [] }, sheet: { ...newSheet(units) } }),
    )
    const { key, file: begun } = this.desk.draft!
    const hand = handOf(key) ?? (this.begun ? this.hand : firstHand(begun, this.sheet))
    // What somebody else has measured since is not undone with what was measured here.
    const changed = this.begun && !sameFile(before, this.sheet)
    this.hand = handOnSheet(changed ? { ...hand, history: noHistory } : hand, this.sheet)
    this.read()
    if (!this.begun) void this.updateComplete.then(() => this.entry?.takeFocus())
    this.begun = true
  }

  private get photoKey(): string {
    return this.profileId || this.desk.draft!.key
  }

  private read() {
    const file = this.desk.draft?.file
    if (!file) return
    this.sheet = sheetOf(file.sheet, file.units)
    this.live = liveSheet(this.sheet, this.hand.snap)
  }

  /** Goes on with another sheet; the profile follows it unless it was drawn on by hand. */
  private put(sheet: EnteredSheet) {
    const draft = this.desk.draft!
    this.desk.change({
      ...draft,
      file: withSheet(draft.file, sheet, liveSheet(sheet, this.hand.snap), this.hand),
    })
    keepHand(draft.key, this.hand)
  }

  private readonly edited = ({ detail: { sheet, stroke, place } }: CustomEvent<SheetEdit>) => {
    const { hand } = this
    this.hand = {
      ...hand,
      place: Math.min(place ?? hand.place, sheet.stations.length),
      history: remembered(hand.history, this.sheet, stroke),
    }
    this.put(sheet)
  }

  private readonly back = () => this.travel(undone(this.hand.history, this.sheet))

  private readonly forth = () => this.travel(redone(this.hand.history, this.sheet))

  private travel(to: ReturnType<typeof undone>) {
    if (!to) return
    this.hand = handOnSheet({ ...this.hand, history: to.history }, to.sheet)
    this.put(to.sheet)
    void this.entry?.updateComplete.then(() => this.entry?.takeFocus())
  }

  private reach(change: Partial<SheetHand>) {
    this.hand = { ...this.hand, ...change }
    if (this.desk.draft) keepHand(this.desk.draft.key, this.hand)
  }

  private readonly goPlace = ({ detail }: CustomEvent<number>) => this.reach({ place: detail })

  private readonly goBack = (event: CustomEvent<number>) => {
    this.goPlace(event)
    void this.updateComplete.then(() => {
      this.entry?.scrollIntoView({ block: 'nearest' })
      void this.entry?.takeFocus()
    })
  }

  private readonly goOriginal = ({ detail }: CustomEvent<number>) => {
    this.reach({ original: detail, place: unreadPlace(this.sheet, detail) })
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private readonly laidOut = () => {
    this.reach({ place: openPlace(this.sheet, this.hand.original) })
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private readonly pressed = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !this.desk.draft) return
    const key = event.key.toLowerCase()
    const target = event.composedPath()[0] as Partial<HTMLElement>
    if (target.dataset?.path === 'name') return
    else if (key === 'z' && !event.shiftKey) this.back()
    else if (key === 'y' || key === 'z') this.forth()
    else return
    event.preventDefault()
  }

  /** Saves however much is measured; a profile without a name is called by its day. */
  private async save(next?: (id: string) => void | Promise<void>) {
    const draft = this.desk.draft!
    this.message = ''
    if (this.live?.errors.size) return this.showFault([...this.live.errors.keys()][0]!)
    this.next = next
    if (this.desk.saved && this.profileId) return this.goNext(this.profileId)
    const name = draft.file.name.trim() || `Copied ${new Date().toISOString().slice(0, 10)}`
    if (name !== draft.file.name) this.desk.change({ ...draft, file: { ...draft.file, name } })
    this.put(sentSheet(this.sheet))
    await this.desk.save([])
  }

  /** Goes to the station of a figure that cannot be read. */
  private showFault(path: string) {
    this.next = undefined
    this.message = `${this.live!.errors.get(path)}`
    this.reach(placeOfPath(path))
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private async afterStored(id: string, fresh: boolean) {
    const { key } = this.desk.draft!
    // Saved as something new, the photograph goes with it from where it waits.
    const photoKey = fresh ? this.photoKey : id
    noteChange({ kind: 'profile', id })
    await this.photo.send(photoKey, id)
    if (this.desk.saved) dropHand(key)
    if (this.next) return this.goNext(id)
    if (id === this.profileId) return
    if (this.profileId === '') this.justStored = id
    go(profilePath(id, 'measure'), { replace: this.profileId === '' })
  }

  private async goNext(id: string) {
    const { next } = this
    this.next = undefined
    try {
      await next?.(id)
    } catch (failure) {
      this.message = (failure as Error).message
    }
  }

  private readonly makeAnew = ({ detail }: CustomEvent<ProfileWay>) => {
    this.reach(detail)
    this.put(this.sheet)
  }

  private readonly showWays = () => {
    const ways = this.renderRoot.querySelector('measure-originals')
    ways?.scrollIntoView({ block: 'start' })
    void ways?.updateComplete.then(() =>
      ways.renderRoot.querySelector('button')?.focus({ preventScroll: true }),
    )
  }

  private readonly draw = () => this.save((id) => go(profilePath(id)))

  private readonly job = () => this.save(async (id) => makeJob(await storedProfile(id)))

  /** A sheet that is started over is laid aside, not lost: it is dropped only when asked for twice. */
  private readonly discard = async () => {
    sheetDrafts.setAside(this.profileId)
    this.begun = false
    await this.desk.discard()
  }

  private readonly adopt = async ({ detail }: CustomEvent<OtherDraft<LibraryFile>>) => {
    const other = this.desk.others.find(({ place }) => place === detail.place)!
    await this.photo.adopt(other.draft.key)
    this.begun = false
    this.desk.adopt(other)
  }

  private readonly dropOther = async ({ detail }: CustomEvent<OtherDraft<LibraryFile>>) => {
    const { key } = detail.draft
    this.desk.dropOther(detail)
    dropHand(key)
    await this.photo.drop(key)
  }

  private readonly abandon = () => {
    dropHand(this.desk.draft!.key)
    this.desk.abandon()
    if (!sheetDrafts.has(this.profileId)) void this.photo.drop(this.photoKey)
    go('/profiles')
  }

  override render() {
    return this.ground.shown(
      (ground) =>
        this.desk.draft && this.live ? this.page(ground, this.live, this.desk.draft.file) : html``,
      () => void this.reload(),
    )
  }

  private page(ground: Ground, live: LiveSheet, file: LibraryFile) {
    const { desk, profileId } = this
    const told = this.message || this.photo.message
    return html`
      <div class="page" @sheet-edit=${this.edited} @entry=${desk.entry}>
        <div class="page-head">
          <h1>${file.name || 'Copy a piece'}</h1>
          <div class="buttons hand">
            <button type="button" @click=${this.showWays}>Set up</button>
            <button type="button" class="main" ?disabled=${desk.saving || desk.gone} @click=${() => this.save()}>Save</button>
          </div>
        </div>
        <p role="status" class=${told ? 'notice' : 'hidden-label'}>${told}</p>
        ${refusedEntries(desk.refused, file.units)}
        <draft-notices what="profile" .conflict=${desk.conflict} .gone=${desk.gone} .fresh=${profileId === ''} .others=${desk.others.map(asMeasured)}
          @discard=${this.discard} @overwrite=${desk.saveOverTheirs} @save-as-new=${desk.saveMineAsNew} @abandon=${this.abandon}
          @adopt=${this.adopt} @drop-other=${this.dropOther}></draft-notices>
        <div class="bench">
          <div>${this.entering(live, file)}</div>
          <div><measure-drawn .live=${live} .file=${file} .gone=${desk.gone} @draw=${this.draw} @make-job=${this.job}></measure-drawn>
            ${this.ways(ground, live, file)}</div>
        </div>
        ${this.photograph(live)}
      </div>
      ${
        desk.gone
          ? nothing
          : html`<save-bar what="the sheet" .saved=${desk.saved} .saving=${desk.saving} .errors=${live.errors.size} .message=${desk.message}
            .fresh=${profileId === ''} @save=${() => this.save()} @discard=${this.discard}></save-bar>`
      }
    `
  }

  private entering({ positions, errors, gathered, made, profile }: LiveSheet, file: LibraryFile) {
    const { sheet, hand } = this
    return html`
      ${
        profile
          ? html`<turned-part class="growing" .profile=${profile} .species=${file.species ?? ''} .lengthStyle=${lengthStyle(sheet.units)}
            orientation="horizontal" .most=${60} name="What is measured so far" .highlight=${spanAbove(made, hand.place)}></turned-part>`
          : nothing
      }
      <div class="card entering">
        <measure-entry .sheet=${sheet} .original=${hand.original} .place=${hand.place} .positions=${positions[hand.original] ?? []} .expected=${gathered[hand.place]?.at?.mean}
          .errors=${errors} .canUndo=${hand.history.past.length > 0} .canRedo=${hand.history.future.length > 0}
          @go-place=${this.goPlace} @undo-sheet=${this.back} @redo-sheet=${this.forth}></measure-entry>
      </div>
      <div class="card">
        <h2>Stations, from the foot</h2>
        <measure-places .sheet=${sheet} .original=${hand.original} .place=${hand.place} .gathered=${gathered} @go-place=${this.goBack}></measure-places>
      </div>
    `
  }

  private ways({ woods }: Ground, { offered, errors }: LiveSheet, file: LibraryFile) {
    const { sheet, hand } = this
    return html`
      <measure-originals .sheet=${sheet} .original=${hand.original} .errors=${errors} @go-original=${this.goOriginal}></measure-originals>
      <measure-ways .file=${file} .sheet=${sheet} .original=${hand.original} .woods=${woods} .offered=${offered} .asTolerance=${hand.asTolerance}
        .byHand=${hand.byHand} .snap=${hand.snap} @profile-way=${this.makeAnew} @laid-out=${this.laidOut}></measure-ways>
    `
  }

  private photograph({ sheet, errors, profile }: LiveSheet) {
    return html`<measure-photo .sheet=${this.sheet} .photo=${sheet.photo} .image=${this.photo.image} .profile=${profile} .errors=${errors}
      @photo=${({ detail }: CustomEvent<string | null>) => this.photo.keep(this.photoKey, detail)}></measure-photo>`
  }
}
