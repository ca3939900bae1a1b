import { html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { isMeasuring, type LibraryProfile } from '../../shared/library.ts'
import { Refusal, storedProfile } from '../api.ts'
import { DraftDesk } from '../draft-desk.ts'
import { type OtherDraft, sheetDrafts } from '../drafts.ts'
import '../elements/draft-notices.ts'
import '../elements/measure-entry.ts'
import type { MeasureEntry, SheetEdit } from '../elements/measure-entry.ts'
import { measureBench } from '../elements/measure-look.ts'
import '../elements/measure-originals.ts'
import '../elements/measure-photo.ts'
import '../elements/measure-places.ts'
import '../elements/measure-ways.ts'
import '../elements/save-bar.ts'
import '../elements/turned-part.ts'
import { inUnitsFirst, jobField } from '../field-words.ts'
import { inUnits } from '../job-entries.ts'
import type { EnteredStation } from '../job-file.ts'
import { type LibraryFile, libraryFileOf } from '../library-file.ts'
import { Load } from '../load.ts'
import { PhotoDesk } from '../photo-desk.ts'
import { go, profilePath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { profileSaver } from '../save-profile.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { type EnteredSheet, newSheet, sentSheet, sheetOf } from '../sheet-file.ts'
import { dropHand, freshHand, handOf, keepHand, type SheetHand } from '../sheet-hand.ts'
import { noHistory, redone, remembered, undone } from '../sheet-history.ts'
import { type LiveSheet, liveSheet, sameStations, stationsOfSheet } from '../sheet-live.ts'
import { unreadPlace } from '../sheet-way.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { makeJob } from './make-job.ts'

interface Ground extends ShopAndWoods {
  stored?: LibraryProfile
}

/** So many reasons why it is no whole profile yet are told at once. */
const LACKING_TOLD = 4

/** A draft told by the stations on its sheet, which are more than those that can be drawn. */
const asMeasured = (other: OtherDraft<LibraryFile>): OtherDraft<LibraryFile> => {
  const { file } = other.draft
  const stations = sheetOf(file.sheet, file.units).stations as EnteredStation[]
  return { ...other, draft: { ...other.draft, file: { ...file, profile: { stations } } } }
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
  private turn = 0
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
    const turn = ++this.turn
    await this.ground.from(async () => {
      const [shop, stored] = await Promise.all([
        shopAndWoods(),
        profileId ? this.there(profileId) : undefined,
      ])
      return { ...shop, ...(stored && { stored }) }
    })
    const ground = this.ground.value
    // An answer that was overtaken by a later one is no start.
    if (!ground || this.ground.failure || turn !== this.turn) return
    this.begin(ground)
    await this.photo.load(this.photoKey, ground.stored?.id)
  }

  /** What is stored of it; nothing where it is gone and a sheet of it is kept here. */
  private async there(id: string): Promise<LibraryProfile | undefined> {
    try {
      return await storedProfile(id)
    } catch (failure) {
      if (failure instanceof Refusal && failure.status === 404 && sheetDrafts.has(id)) return undefined
      throw failure
    }
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
    const hand = handOf(key) ?? (this.begun ? this.hand : this.firstHand(begun))
    const { originals, stations } = this.sheet
    this.hand = {
      ...hand,
      original: Math.min(hand.original, originals.length - 1),
      place: Math.min(hand.place, stations.length),
      // What somebody else has measured since is not undone with what was measured here.
      history: this.begun && !sameFile(before, this.sheet) ? noHistory : hand.history,
    }
    if (!this.begun) void this.updateComplete.then(() => this.entry?.takeFocus())
    this.begun = true
  }

  /** Where a person begins on a sheet that this device has not kept. */
  private firstHand({ profile: { stations }, units }: LibraryFile): SheetHand {
    const { live } = this
    const made = live && live.lacking.length === 0 ? stationsOfSheet(live, this.sheet, false) : []
    return {
      ...freshHand,
      place: unreadPlace(this.sheet, 0),
      asTolerance: stations.some(({ plus, minus }) => plus !== undefined || minus !== undefined),
      byHand: stations.length > 0 && !sameStations(stations, made, units),
    }
  }

  private get photoKey(): string {
    return this.profileId || this.desk.draft!.key
  }

  private read() {
    const file = this.desk.draft?.file
    if (!file) return
    this.sheet = sheetOf(file.sheet, file.units)
    this.live = liveSheet(this.sheet)
  }

  /** Goes on with another sheet; the profile follows it unless it was drawn on by hand. */
  private put(sheet: EnteredSheet) {
    const draft = this.desk.draft!
    const file = draft.file.units === sheet.units ? draft.file : inUnits(draft.file, sheet.units)
    const live = liveSheet(sheet)
    const { byHand, asTolerance } = this.hand
    const stations =
      byHand || live.lacking.length > 0 ? file.profile.stations : stationsOfSheet(live, sheet, asTolerance)
    this.desk.change({
      ...draft,
      file: { ...file, sheet: { ...sheet }, profile: { ...file.profile, stations } },
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
    const { original, place } = this.hand
    this.hand = {
      ...this.hand,
      history: to.history,
      original: Math.min(original, to.sheet.originals.length - 1),
      place: Math.min(place, to.sheet.stations.length),
    }
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
    const { original } = this.hand
    const open =
      this.sheet.originals[original]?.readings.findIndex(({ diameters }) => diameters.length === 0) ?? -1
    this.reach({ place: open < 0 ? this.sheet.stations.length : open })
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
    const [, original, place] = /originals\[(\d+)\]\.readings\[(\d+)\]/.exec(path) ?? []
    const station = /^stations\[(\d+)\]/.exec(path)?.[1]
    this.next = undefined
    this.message = `${this.live!.errors.get(path)}`
    if (place !== undefined || station !== undefined)
      this.reach({ original: Number(original ?? this.hand.original), place: Number(place ?? station) })
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private async afterStored(id: string, fresh: boolean) {
    const { key } = this.desk.draft!
    const photoKey = fresh ? key : id
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

  private readonly tolerate = ({ detail }: CustomEvent<boolean>) => {
    this.reach({ asTolerance: detail })
    this.put(this.sheet)
  }

  private readonly takeByHand = ({ detail }: CustomEvent<boolean>) => {
    this.reach({ byHand: detail })
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
        ${desk.refused.length > 0 ? this.refused(file) : nothing}
        <draft-notices what="profile" .conflict=${desk.conflict} .gone=${desk.gone} .fresh=${profileId === ''} .others=${desk.others.map(asMeasured)}
          @discard=${this.discard} @overwrite=${desk.saveOverTheirs} @save-as-new=${desk.saveMineAsNew} @abandon=${this.abandon}
          @adopt=${this.adopt} @drop-other=${this.dropOther}></draft-notices>
        <div class="bench">
          <div>${this.entering(live, file)}</div>
          <div>${this.drawn(live, file)} ${this.ways(ground, live, file)}</div>
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

  /** Why the server took nothing of it: everything is still kept here. */
  private refused({ units }: LibraryFile) {
    return html`<div class="problem" role="alert">
      <p><b>Not stored; everything is kept on this device.</b></p>
      <ul class="plain">
        ${this.desk.refused.map(
          ({ path, message }) =>
            html`<li>${path === 'name' ? 'Name of the profile' : jobField(path, [])}: ${inUnitsFirst(message, units)}</li>`,
        )}
      </ul>
    </div>`
  }

  private onwards(file: LibraryFile) {
    const nothingDrawn = isMeasuring(file)
    return html`<div class="buttons no-print">
      <button type="button" ?disabled=${nothingDrawn} @click=${this.draw}>Draw it</button>
      <button type="button" ?disabled=${nothingDrawn} @click=${this.job}>Make a job of it</button>
    </div>`
  }

  private entering({ positions, errors, gathered, profile }: LiveSheet, file: LibraryFile) {
    const { sheet, hand } = this
    return html`
      ${
        profile
          ? html`<turned-part class="growing" .profile=${profile} .species=${file.species ?? ''} .lengthStyle=${lengthStyle(sheet.units)}
            orientation="horizontal" .most=${60} name="What is measured so far" .highlight=${this.span()}></turned-part>`
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

  /** The stretch above the station in hand. */
  private span(): [number, number] | undefined {
    const { made } = this.live!
    const at = (place: number) => made.stations[made.from.indexOf(place)]?.at
    const [from, to] = [at(this.hand.place), at(this.hand.place + 1)]
    return from === undefined || to === undefined || to <= from ? undefined : [from, to]
  }

  private drawn({ profile, lacking, made }: LiveSheet, file: LibraryFile) {
    const { units } = this.sheet
    return html`<div class="card">
      <h2>Drawing${profile ? html` <span class="soft small">${length(profile.stations.at(-1)!.at, units)} long so far</span>` : nothing}</h2>
      ${
        profile
          ? html`<turned-part .profile=${profile} .species=${file.species ?? ''} .lengthStyle=${lengthStyle(units)} dimensions .name=${file.name || 'Copied piece'}></turned-part>`
          : html`<p class="soft">It grows from the second station on.</p>`
      }
      ${this.desk.gone ? nothing : this.onwards(file)}
      ${made.notes.map((note) => html`<p class="caution">${note}</p>`)}
      ${profile ? lacking.slice(0, LACKING_TOLD).map((told) => html`<p class="soft">${told}</p>`) : nothing}
      ${profile && lacking.length > LACKING_TOLD ? html`<p class="soft">… and ${lacking.length - LACKING_TOLD} more.</p>` : nothing}
    </div>`
  }

  private ways({ woods }: Ground, { offered, errors }: LiveSheet, file: LibraryFile) {
    const { sheet, hand } = this
    return html`
      <measure-originals .sheet=${sheet} .original=${hand.original} .errors=${errors} @go-original=${this.goOriginal}></measure-originals>
      <measure-ways .file=${file} .sheet=${sheet} .original=${hand.original} .woods=${woods} .offered=${offered} .asTolerance=${hand.asTolerance}
        .byHand=${hand.byHand} @as-tolerance=${this.tolerate} @by-hand=${this.takeByHand} @laid-out=${this.laidOut}></measure-ways>
    `
  }

  private photograph({ sheet, errors, profile }: LiveSheet) {
    return html`<measure-photo .sheet=${this.sheet} .photo=${sheet.photo} .image=${this.photo.image} .profile=${profile} .errors=${errors}
      @photo=${({ detail }: CustomEvent<string | null>) => this.photo.keep(this.photoKey, detail)}></measure-photo>`
  }
}
