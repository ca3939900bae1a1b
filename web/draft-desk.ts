import type { ReactiveController, ReactiveControllerHost } from 'lit'
import type { Breach } from '../shared/problem.ts'
import type { Units } from '../shared/units/length.ts'
import { newKey, Refusal } from './api.ts'
import type { Draft, DraftShelf, OtherDraft } from './drafts.ts'
import type { EditDetail } from './edit.ts'
import { type EntryDetail, entryAt, withEntry } from './entry.ts'
import { inUnitsFirst, jobField } from './field-words.ts'
import { inUnits, type Lengths } from './job-entries.ts'
import { type DraftSaver, type Stored, sameFile } from './save-draft.ts'
import { editedDraft, historyInUnits, redoneDraft, undoneDraft } from './undo.ts'

/** What the desk needs to know of the files it works on, and whom it tells. */
export interface DeskTrade<File, Kept extends Stored> {
  shelf: DraftShelf<File>
  saver: DraftSaver<File, Kept>
  load: (id: string) => Promise<Kept>
  /** The draft is another one now: what rests on it is worked out again, at once or in the next pause of `typing`. */
  changed: (typing: boolean) => void
  /** It is stored; `fresh` where it was not before. */
  stored: (id: string, fresh: boolean) => void
  /** What is stored is fetched again. */
  reload: () => Promise<void>
  /** Brings the cursor to the field of an error. */
  focus: (path: string) => void
}

/** What a new file says of itself before anything of it is typed. */
const NOTHING_YET = 'Nothing typed yet.'

const UNDOABLE = /^(profile\.stations|joints)/

/** Whether nothing stands in the field yet. */
function isUntouched(file: unknown, path: string): boolean {
  const value = entryAt(file, path)
  return value === undefined || value === '' || (Array.isArray(value) && value.every((each) => each === ''))
}

/** Whether a length of a joint or the place of a station was left empty. */
const isBlank = (file: unknown, path: string): boolean =>
  /^(joints\[\d+\]\.(at|size|depth)|profile\.stations\[\d+\]\.at)/.test(path) && isUntouched(file, path)

/** What is stored of a file that comes to the desk. */
interface Ground<File> {
  file: File
  revision: number
  /** Kept edits go on from what is stored now, whatever they started from. */
  rebased?: boolean
}

/** Writes a file of one kind: kept on the device at each stroke, undone and done again, stored without a loss. */
export class DraftDesk<File extends Lengths, Kept extends Stored> implements ReactiveController {
  draft: Draft<File> | undefined
  /** What the server refused. */
  refused: Breach[] = []
  message = ''
  /** It was changed elsewhere while it was written here. */
  conflict = false
  /** It was deleted elsewhere while edits of it are kept here. */
  gone = false
  others: OtherDraft<File>[] = []
  saving = false
  saved = true
  /** Somebody tried to save: from now on also what is still empty is told. */
  tried = false
  private id = ''
  /** The device has no room for the edits: they stand on the desk and nowhere else. */
  private unkept = false
  /** The field being typed in: its error waits until it is left. */
  private typing = ''
  private readonly host: ReactiveControllerHost
  private readonly trade: DeskTrade<File, Kept>

  constructor(host: ReactiveControllerHost, trade: DeskTrade<File, Kept>) {
    this.host = host
    this.trade = trade
    host.addController(this)
  }

  hostConnected() {
    addEventListener('storage', this.listOthers)
  }

  hostDisconnected() {
    removeEventListener('storage', this.listOthers)
  }

  private readonly listOthers = () => {
    this.others = this.trade.shelf.others().filter(({ id }) => id === this.id)
    this.host.requestUpdate()
  }

  /** Clears the desk for another file. */
  turnTo(id: string) {
    this.id = id
    this.unkept = false
    this.draft = undefined
    this.tried = false
    this.refused = []
    this.message = ''
    this.conflict = false
    this.gone = false
  }

  /**
   * Kept edits come back; without any what is stored, or something new, is the start. While it is being saved the desk
   * stays as it is: what is stored just now is about to be older than what lies on it.
   */
  begin(stored: Ground<File> | undefined, fresh: () => File) {
    const { shelf } = this.trade
    if (this.saving && this.draft) return
    this.gone = this.id !== '' && !stored
    this.listOthers()
    const [other] = this.others
    const lying = this.draft
    const onShelf = shelf.of(this.id)
    // What is being written on the desk goes on, with its way back, whatever was fetched meanwhile.
    const written = lying && (this.unkept || sameFile(onShelf, lying)) ? lying : undefined
    const kept = written ?? onShelf ?? (this.gone && other ? shelf.adopt(other) : undefined)
    // What is on the desk and saved already stays, with the way back to what was before.
    const stays = this.saved && stored && this.draft?.revision === stored.revision ? this.draft : undefined
    this.draft = kept ??
      stays ?? {
        file: stored?.file ?? fresh(),
        key: newKey(),
        ...(stored && { revision: stored.revision }),
      }
    if (stored?.rebased) this.draft = { ...this.draft, revision: stored.revision }
    this.saved = !kept && stored !== undefined
    if (!stays && !written)
      this.message = this.gone
        ? ''
        : kept
          ? 'Your unsaved edits from this device are back.'
          : stored
            ? ''
            : NOTHING_YET
    this.listOthers()
    this.trade.changed(false)
  }

  readonly entry = ({ detail: { path, value } }: CustomEvent<EntryDetail>) => {
    const merge = path === this.typing
    this.typing = path
    this.change(path === 'units' ? this.rewritten(value as Units) : this.typed(path, value, merge))
  }

  private typed(path: string, value: unknown, merge: boolean): Draft<File> {
    const draft = this.draft!
    const file = withEntry(draft.file, path, value)
    const kinds = (file.joints ?? []).map(({ kind }) => kind)
    return UNDOABLE.test(path) ? editedDraft(draft, file, jobField(path, kinds), merge) : { ...draft, file }
  }

  private rewritten(units: Units): Draft<File> {
    const { history, ...draft } = this.draft!
    const file = inUnits(draft.file, units)
    return { ...draft, file, ...(history && { history: historyInUnits(history, draft.file.units, units) }) }
  }

  readonly edit = ({ detail }: CustomEvent<EditDetail>) => {
    const draft = this.draft!
    const { stations, joints = draft.file.joints, label, merge } = detail
    const file = { ...draft.file, profile: { ...draft.file.profile, stations }, ...(joints && { joints }) }
    this.typing = ''
    this.change(editedDraft(draft, file, label, merge))
  }

  readonly undo = () => {
    this.typing = ''
    this.change(undoneDraft(this.draft!))
  }

  readonly redo = () => {
    this.typing = ''
    this.change(redoneDraft(this.draft!))
  }

  readonly left = () => {
    this.typing = ''
    this.host.requestUpdate()
  }

  /** Goes on with a changed draft, kept on this device at once. */
  change(draft: Draft<File> | undefined) {
    if (!draft) return
    this.draft = draft
    this.refused = []
    this.saved = false
    this.unkept = !this.trade.shelf.keep(this.id, draft)
    this.message = this.unkept ? 'This device has no room to keep your edits: save soon.' : ''
    this.trade.changed(true)
    this.host.requestUpdate()
  }

  /** Saves what can be read; with errors the cursor goes to the first of them. */
  async save(errors: readonly Breach[]) {
    this.tried = true
    if (errors[0]) {
      if (this.message !== NOTHING_YET) this.message = ''
      this.host.requestUpdate()
      await this.host.updateComplete
      this.trade.focus(errors[0].path)
      return
    }
    await this.send(this.draft!.revision)
  }

  private async send(revision: number | undefined) {
    const { id } = this
    const { shelf, saver } = this.trade
    const sent = saver.withSending({ ...this.draft!, ...(revision !== undefined && { revision }) })
    this.draft = sent
    this.unkept = !shelf.keep(id, sent)
    this.saving = true
    this.host.requestUpdate()
    try {
      const kept = await saver.save(id, sent)
      // Another file may lie on the desk by now.
      if (this.id === id) this.kept(kept, sent)
      else if (sameFile(shelf.of(id)?.file, sent.file)) shelf.drop(id)
    } catch (failure) {
      if (this.id === id) this.failed(failure)
    } finally {
      this.saving = false
      this.host.requestUpdate()
    }
  }

  /** What was typed while the save was under way stays as unsaved edits on the new revision. */
  private kept({ id, revision }: Kept, sent: Draft<File>) {
    const { shelf } = this.trade
    this.conflict = false
    this.unkept = false
    const same = this.draft === sent
    const fresh = this.id === ''
    shelf.drop(this.id)
    // From now on it is kept under its own id, however long the page takes to follow.
    this.id = id
    const { file, key, history } = this.draft!
    this.draft = { file, key, revision, ...(history && { history }) }
    if (!same) this.unkept = !shelf.keep(id, this.draft)
    this.saved = same
    this.message = same ? 'Saved.' : ''
    this.trade.stored(id, fresh)
  }

  /** Tells a refusal where it belongs. */
  readonly failed = (failure: unknown) => {
    if (!(failure instanceof Refusal)) throw failure
    this.conflict = failure.status === 412
    this.refused = failure.errors
    this.message = this.conflict || failure.errors.some(({ path }) => path) ? '' : failure.message
    this.gone = failure.status === 404
    this.host.requestUpdate()
    if (failure.code === 'wrong-state') void this.trade.reload()
    const [first] = failure.errors
    if (first) void this.host.updateComplete.then(() => this.trade.focus(first.path))
  }

  readonly saveOverTheirs = async () => {
    try {
      const { revision } = await this.trade.load(this.id)
      await this.send(revision)
    } catch (failure) {
      this.failed(failure)
    }
  }

  readonly discard = async () => {
    this.trade.shelf.drop(this.id)
    this.unkept = false
    this.conflict = false
    this.tried = false
    await this.trade.reload()
  }

  /** Stores edits as something of their own; `drop` forgets them here once they are. */
  private async saveAsNew({ revision: _revision, ...draft }: Draft<File>, drop: () => void) {
    const { saver } = this.trade
    try {
      const { id } = await saver.save('', saver.withSending(draft))
      drop()
      this.trade.stored(id, true)
    } catch (failure) {
      this.failed(failure)
    }
  }

  readonly saveMineAsNew = () => this.saveAsNew(this.draft!, () => this.trade.shelf.drop(this.id))

  readonly abandon = () => this.trade.shelf.drop(this.id)

  /** Goes on with another tab's draft; the own one is laid aside. */
  adopt(other: OtherDraft<File>) {
    if (!this.saved) this.trade.shelf.setAside(this.id)
    this.draft = this.trade.shelf.adopt(other)
    this.saved = false
    this.message = 'These edits are kept on this device and not saved yet.'
    this.listOthers()
    this.trade.changed(false)
  }

  /** Stores the edits of another tab as something of their own. */
  saveOtherAsNew(other: OtherDraft<File>) {
    return this.saveAsNew(other.draft, () => this.trade.shelf.dropOther(other))
  }

  dropOther(other: OtherDraft<File>) {
    this.trade.shelf.dropOther(other)
    this.listOthers()
  }

  /** Errors as they are shown: not of the field being typed in, nor of fields still empty before the first try to save. */
  shown(errors: readonly Breach[]): Breach[] {
    const { file } = this.draft!
    return [...errors, ...this.refused]
      .filter(({ path }) => path !== this.typing && (this.tried || !isUntouched(file, path)))
      .map(({ path, message }) => ({
        path,
        message: isBlank(file, path) ? 'is missing' : inUnitsFirst(message, file.units),
      }))
  }
}
