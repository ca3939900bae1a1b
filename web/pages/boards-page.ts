import { css, html, LitElement, nothing } from 'lit'
import { customElement, query, state } from 'lit/decorators.js'
import { keyed } from 'lit/directives/keyed.js'
import { type HeldBoard, readBoard } from '../../shared/contract/board.ts'
import { type Breach, Problem } from '../../shared/problem.ts'
import { boardFeet } from '../../shared/units/board-foot.ts'
import { addBoard, boards, Refusal } from '../api.ts'
import { changeBoard, deleteBoard } from '../api-boards.ts'
import '../elements/board-card.ts'
import { boardFeetText } from '../elements/amounts.ts'
import '../elements/board-form.ts'
import type { BoardForm } from '../elements/board-form.ts'
import { type EntryDetail, withEntry } from '../entry.ts'
import { inUnitsFirst } from '../field-words.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { Load } from '../load.ts'
import {
  alikeEntry,
  entryBreach,
  freshStock,
  nextStock,
  type StockEntry,
  sentStock,
  stockEntryOf,
  stockField,
} from '../stock-entry.ts'
import { noteChange, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

interface Loaded extends ShopAndWoods {
  rack: HeldBoard[]
}

/** What is being written: a new board, or the one of that name. */
interface Writing {
  entry: StockEntry
  changes: string
}

/** Where a board being written is kept on this device. */
const placeOf = (changes: string): string => `setwright.board${changes && `.${changes}`}`

/** What is put together under one heading: the boards of a wood. */
const woodOf = ({ species }: HeldBoard): string => species ?? ''

/** Board feet of boards, all copies of them; those without end not counted. */
const feetOf = (rack: readonly HeldBoard[], count: (board: HeldBoard) => number): number =>
  rack.reduce((sum, board) => sum + boardFeet(board) * count(board), 0)

const heldOf = ({ reserved = [] }: HeldBoard): number => reserved.reduce((sum, { count }) => sum + count, 0)

/** The boards on hand, by their wood; what of them is free, and one more to write down. */
@customElement('boards-page')
export class BoardsPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .boards {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 22rem), 1fr));
      }
      section {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: minmax(0, 1fr);
      }
    `,
  ]

  @state() private writing?: Writing | undefined
  @state() private errors: Breach[] = []
  @state() private message = ''
  @state() private saving = false
  @query('board-form') private form?: BoardForm
  private readonly loaded = new Load<Loaded>(this)
  private unwatch?: () => void

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind === 'shop' || kind === 'board') void this.reload()
    })
    void this.begin()
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly reload = () =>
    this.loaded.from(async () => {
      const [shop, rack] = await Promise.all([shopAndWoods(), boards()])
      return { ...shop, rack }
    })

  /** Opens the form where a board was being written, or none is there yet. */
  private async begin() {
    const loaded = await this.reload()
    if (!loaded) return
    const fresh = freshStock(loaded.shop.units)
    const entry = keptEntry(placeOf(''), fresh)
    if (loaded.rack.length === 0 || JSON.stringify(entry) !== JSON.stringify(fresh))
      this.writing = { entry, changes: '' }
  }

  private write(entry: StockEntry, changes = '') {
    this.writing = { entry, changes }
    this.errors = []
    this.message = ''
    void this.updateComplete.then(() => this.form?.focusField(changes ? 'width' : 'key'))
  }

  private readonly entry = ({ detail: { path, value } }: CustomEvent<EntryDetail>) => {
    const { changes, entry } = this.writing!
    const next = withEntry(entry, path, value)
    this.writing = { changes, entry: next }
    this.errors = this.errors.filter((error) => error.path !== path)
    keepEntry(placeOf(changes), next)
  }

  private forget(changes: string) {
    localStorage.removeItem(placeOf(changes))
    this.errors = []
  }

  private readonly leave = () => {
    this.forget(this.writing!.changes)
    this.writing = undefined
    this.message = ''
  }

  private readonly save = async () => {
    const { entry, changes } = this.writing!
    const sent = sentStock(entry)
    this.saving = true
    this.message = ''
    try {
      // Read as the server will, so that what is wrong is said without asking it.
      readBoard(sent, entry.units)
      const { key } = changes ? await changeBoard(sent) : await addBoard(sent)
      this.forget(changes)
      this.writing = changes ? undefined : { entry: nextStock(entry), changes: '' }
      this.message = changes ? `${key} is saved.` : `${key} is on the rack.`
      noteChange({ kind: 'board', id: key })
    } catch (failure) {
      this.refused(failure, entry)
    } finally {
      this.saving = false
    }
  }

  /** A refusal in words that stand at its fields. */
  private refused(failure: unknown, { key, units }: StockEntry) {
    if (!(failure instanceof Refusal || failure instanceof Problem)) throw failure
    const errors =
      failure.code === 'key-reused'
        ? [{ path: 'key', message: `There is already a board named ${key}.` }]
        : failure.errors.map(entryBreach)
    this.errors = errors.map(({ path, message }) => ({
      path,
      message: message.endsWith('read ""') ? 'is missing' : inUnitsFirst(message, units),
    }))
    this.message = errors.length > 0 && failure.code === 'bad-input' ? '' : failure.message
    if (errors.length > 0) void this.updateComplete.then(() => this.form?.focusField(errors[0]!.path))
  }

  private readonly drop = async ({ detail }: CustomEvent<HeldBoard>) => {
    this.message = ''
    try {
      await deleteBoard(detail.key)
      this.message = `${detail.key} is gone from the rack.`
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      this.message = failure.message
    }
    noteChange({ kind: 'board', id: detail.key })
  }

  override render() {
    return this.loaded.shown(
      (loaded) => this.page(loaded),
      () => void this.reload(),
    )
  }

  private page(loaded: Loaded) {
    const { rack, woods, shop } = loaded
    const named = (key: string) =>
      woods.find((wood) => wood.key === key)?.name ?? (key || 'Wood not written down')
    const groups = [...new Set(rack.map(woodOf))].sort((a, b) => named(a).localeCompare(named(b)))
    return html`
      <div class="page">
        <div class="page-head">
          <h1>Boards on hand</h1>
          <div class="buttons no-print">
            <button type="button" class="main" ?disabled=${this.writing?.changes === ''} @click=${() => this.write(keptEntry(placeOf(''), freshStock(shop.units)))}>
              Add a board
            </button>
          </div>
        </div>
        <p class="soft">
          Jobs are planned from these first, then from the yard’s. A started batch has its boards reserved; once its
          blanks are sawn they leave the rack, and offcuts worth keeping come onto it.
        </p>
        <p role="status" ?hidden=${!this.message}>${this.message}</p>
        ${this.writing ? this.formCard(loaded, this.writing) : nothing}
        ${rack.length === 0 ? html`<p>No boards are on the rack. Measure what stands in the shop, defects too.</p>` : nothing}
        ${groups.map((key) =>
          this.group(
            named(key),
            rack.filter((board) => woodOf(board) === key),
            loaded,
          ),
        )}
      </div>
    `
  }

  private formCard({ woods, shop }: Loaded, { entry, changes }: Writing) {
    return html`<div class="card no-print">
      <h2>${changes ? `Change ${changes}` : 'Add a board'}</h2>
      ${
        this.errors.length > 0
          ? html`<p class="problem" role="alert">Not saved yet. To be put right: ${this.errors.map(({ path }) => stockField(path)).join('; ')}.</p>`
          : nothing
      }
      ${keyed(
        changes,
        html`<board-form .entry=${entry} .errors=${this.errors} .woods=${woods} .currency=${shop.currency} .changes=${changes}
          .saving=${this.saving} @entry=${this.entry} @save=${this.save} @leave=${this.leave}></board-form>`,
      )}
    </div>`
  }

  private group(name: string, rack: HeldBoard[], { shop }: Loaded) {
    const total = feetOf(rack, ({ count }) => count ?? 0)
    const held = feetOf(rack, heldOf)
    return html`<section aria-label=${name}>
      <h2>${name}</h2>
      <p class="soft">
        ${boardFeetText(total)} as they measure${held > 0 ? `, ${boardFeetText(Math.max(0, total - held))} of it free` : ''}
      </p>
      <div class="boards">
        ${rack.map(
          (
            board,
          ) => html`<board-card .board=${board} .wood=${name} .units=${shop.units} .currency=${shop.currency}
            @change=${() => this.write(keptEntry(placeOf(board.key), stockEntryOf(board, shop.units)), board.key)}
            @alike=${() => this.write(alikeEntry(board, shop.units))}
            @drop=${this.drop}></board-card>`,
        )}
      </div>
    </section>`
  }
}
