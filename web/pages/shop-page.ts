import { html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { ShopRecord } from '../../shared/estimate/record.ts'
import { type Breach, Problem } from '../../shared/problem.ts'
import { readShop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { changeShop, Refusal, shopSettings, species } from '../api.ts'
import { shopRecord } from '../api-record.ts'
import '../elements/save-bar.ts'
import '../elements/shop-form.ts'
import type { ShopForm } from '../elements/shop-form.ts'
import '../elements/shop-record.ts'
import { type EntryDetail, withEntry } from '../entry.ts'
import { inPercent, inUnitsFirst, shopField } from '../field-words.ts'
import { Load } from '../load.ts'
import { isPercent, type ShopFile, sentShop, shopFileOf, shopInUnits } from '../shop-entries.ts'
import { noteChange } from '../store.ts'
import { pageWear } from '../styles/all.ts'

const DRAFT = 'setwright.draft-shop'

interface Loaded {
  file: ShopFile
  revision: number
  woods: Species[]
  record: ShopRecord
}

interface ShopDraft {
  file: ShopFile
  revision: number
}

function draftKept(): ShopDraft | undefined {
  try {
    return (JSON.parse(localStorage.getItem(DRAFT) ?? 'null') as ShopDraft | null) ?? undefined
  } catch {
    return undefined
  }
}

const SPEEDS =
  'must be one step at least, such as 600, 900, 1400 rpm, or a slowest and a fastest speed, the slowest not above the fastest; each from 1 to 20,000 rpm'

/** What is wrong with a setting, in the words and figures it is entered in. */
function told({ path, message }: Breach, units: ShopFile['units']): Breach {
  if (path.endsWith('.speeds')) return { path, message: SPEEDS }
  return { path, message: isPercent(path) ? inPercent(message) : inUnitsFirst(message, units) }
}

/** The shop's settings, all of them, with where each default comes from. */
@customElement('shop-page')
export class ShopPage extends LitElement {
  static override styles = pageWear

  @state() private draft?: ShopDraft
  @state() private errors: Breach[] = []
  @state() private refused: Breach[] = []
  @state() private typing = ''
  @state() private saved = true
  @state() private saving = false
  @state() private message = ''
  @state() private conflict = false
  private readonly loaded = new Load<Loaded>(this)

  override connectedCallback() {
    super.connectedCallback()
    void this.reload()
  }

  private readonly reload = async () => {
    await this.loaded.from(async () => {
      const [{ value, revision }, woods, record] = await Promise.all([
        shopSettings(),
        species(),
        shopRecord(),
      ])
      return { file: shopFileOf(value), revision, woods, record }
    })
    if (!this.loaded.value) return
    const kept = draftKept()
    this.draft = kept ?? this.loaded.value
    this.saved = !kept
    this.message = kept ? 'Your unsaved edits from this device are back.' : ''
    this.read()
  }

  /** Every error at its field, as the server would find them. */
  private read() {
    try {
      readShop(sentShop(this.draft!.file))
      this.errors = []
    } catch (problem) {
      if (!(problem instanceof Problem)) throw problem
      this.errors = problem.errors
    }
  }

  private readonly entry = (event: CustomEvent<EntryDetail>) => {
    const { path, value } = event.detail
    const { file, revision } = this.draft!
    const next =
      path === 'units' ? shopInUnits(file, value as ShopFile['units']) : withEntry(file, path, value)
    this.draft = { file: next, revision }
    this.typing = path
    this.refused = []
    this.saved = false
    this.message = ''
    this.read()
    try {
      localStorage.setItem(DRAFT, JSON.stringify(this.draft))
    } catch {
      this.message = 'This device has no room to keep your edits: save soon.'
    }
  }

  private readonly left = () => {
    this.typing = ''
  }

  private readonly save = async () => {
    if (this.errors.length > 0) this.form()?.focusField(this.errors[0]!.path)
    else await this.send(this.draft!.revision)
  }

  private async send(revision: number | undefined) {
    const sent = this.draft!
    this.saving = true
    try {
      const { revision: now } = await changeShop(sentShop(sent.file), revision)
      this.conflict = false
      if (this.draft === sent) {
        localStorage.removeItem(DRAFT)
        await this.reload()
        this.message =
          'Saved. Drafts are planned by these settings; started batches keep the plan they were started with.'
      } else this.draft = { ...this.draft!, revision: now }
      noteChange({ kind: 'shop', id: 'shop' })
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      this.conflict = failure.status === 412
      this.refused = failure.errors
      this.message = this.conflict || failure.errors.some(({ path }) => path) ? '' : failure.message
    } finally {
      this.saving = false
    }
  }

  private readonly discard = async () => {
    localStorage.removeItem(DRAFT)
    this.conflict = false
    this.refused = []
    await this.reload()
  }

  private form() {
    return this.renderRoot.querySelector<ShopForm>('shop-form')
  }

  override render() {
    return this.loaded.shown(
      (loaded) => (this.draft ? this.page(loaded, this.draft) : html``),
      () => void this.reload(),
    )
  }

  private page({ woods, record }: Loaded, { file }: ShopDraft) {
    const shown = [...this.errors, ...this.refused]
      .filter(({ path }) => path !== this.typing)
      .map((breach) => told(breach, file.units))
    return html`
      <div class="page" @entry=${this.entry} @change=${this.left} @focusout=${this.left}>
        <h1>Shop</h1>
        <p class="soft">
          Nothing here is a rule: every figure is a start, with its source beside it, for you to replace with your own. The
          makers’ instructions for lathes, chucks and finishes come first.
        </p>
        ${
          this.conflict
            ? html`<div class="problem" role="alert">
              <p>The settings were changed elsewhere while you were editing. Your edits are still here.</p>
              <div class="buttons">
                <button type="button" @click=${this.discard}>Load theirs, drop mine</button>
                <button type="button" class="danger" @click=${() => this.send(undefined)}>Save mine over theirs</button>
              </div>
            </div>`
            : nothing
        }
        ${
          shown.length > 0
            ? html`<ul class="plain problem">
              ${shown.map(({ path, message }) => html`<li>${shopField(path)}: ${message}</li>`)}
            </ul>`
            : nothing
        }
        <shop-form
          .file=${file}
          .woods=${woods}
          .errors=${new Map(shown.map(({ path, message }) => [path, message]))}
        ></shop-form>
        <shop-record .record=${record}></shop-record>
      </div>
      <save-bar
        what="the settings"
        .errors=${shown.length}
        .saved=${this.saved}
        .saving=${this.saving}
        .message=${this.message}
        @save=${this.save}
        @discard=${this.discard}
      ></save-bar>
    `
  }
}
