import { html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { RackBoard } from '../../shared/contract/board.ts'
import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { setPieces } from '../../shared/cutting/set-layout.ts'
import { type GlueChoice, glueChoices } from '../../shared/glue-choices.ts'
import { type Plan, sheetOf, standsInSets } from '../../shared/plan.ts'
import type { Breach } from '../../shared/problem.ts'
import { addBoard, boards, cutFor, deleteBoard, printPath, Refusal } from '../api.ts'
import '../elements/blank-card.ts'
import { type BoardList, boardEntry, type NewBoard } from '../elements/board-list.ts'
import '../elements/cut-list.ts'
import '../elements/cutting-sheet.ts'
import '../elements/set-layout.ts'
import '../elements/glue-card.ts'
import '../elements/moisture-card.ts'
import '../elements/species-card.ts'
import '../elements/yard-card.ts'
import { inUnitsFirst } from '../field-words.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { Load } from '../load.ts'
import { orderFromHand } from '../order-from-hand.ts'
import { SessionController } from '../session.ts'
import {
  type JobAndPlan,
  jobAndPlan,
  noteChange,
  type ShopAndWoods,
  shopAndWoods,
  watchChanges,
} from '../store.ts'
import { pageWear } from '../styles/all.ts'

interface Loaded extends JobAndPlan, ShopAndWoods {
  boards: RackBoard[]
  /** Solid or glued up; nothing is left to choose once the plan is frozen. */
  choices: GlueChoice[]
}

/** A board refused, in words that stand at its fields; a key is the name on a board. */
function boardRefusal(failure: unknown, { key, units }: NewBoard): unknown {
  if (!(failure instanceof Refusal) || failure.errors.length === 0) return failure
  const errors =
    failure.code === 'key-reused'
      ? [{ path: 'key', message: `There is already a board named ${key}.` }]
      : failure.errors.map(({ path, message }) => ({ path, message: inUnitsFirst(message, units) }))
  return new Refusal(failure.status, 'The board is not added yet: see the fields marked below.', errors)
}

const legsPlace = (jobId: string): string => `setwright.legs.${jobId}`

/** Legs to a stand as chosen for a job on this device; 0 when none was. */
const keptLegs = (jobId: string): number => keptEntry(legsPlace(jobId), { legs: 0 }).legs

/** The cut list to print, with the set laid out as chosen. */
function cutListPath(jobId: string): string {
  const [path, legs] = [printPath(jobId, 'cut-list.pdf'), keptLegs(jobId)]
  return legs === 0 ? path : `${path}${path.includes('?') ? '&' : '?'}legs=${legs}`
}

interface FromHand {
  order: CutOrder
  cut: CutPlan
}

/** The wood of a job: blank, cut list, what to buy, boards on hand, the species itself. */
@customElement('wood-page')
export class WoodPage extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @state() private fromHand?: FromHand
  @state() private cutting = false
  @state() private message = ''
  @state() private errors: Breach[] = []
  @query('board-list') private boardList!: BoardList
  private readonly loaded = new Load<Loaded>(this)
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop' || change.kind === 'board' || change.id === this.jobId) void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('jobId')) return
    this.fromHand = undefined
    void this.reload()
  }

  private readonly reload = () =>
    this.loaded.from(async () => {
      const [job, shop, onHand] = await Promise.all([jobAndPlan(this.jobId), shopAndWoods(), boards()])
      const choices = job.job.state === 'draft' ? glueChoices(job.plan, shop.shop, shop.woods) : []
      return { ...job, ...shop, boards: onHand, choices }
    })

  private async attempt(action: () => Promise<void>) {
    this.message = ''
    this.errors = []
    try {
      await action()
    } catch (failure) {
      this.message = (failure as Error).message
      if (failure instanceof Refusal) this.errors = failure.errors
    }
  }

  private cutFromHand({ plan, boards: onHand }: Loaded) {
    return this.attempt(async () => {
      this.cutting = true
      try {
        const order = orderFromHand(plan.cutOrder, plan.job.species, onHand)
        this.fromHand = { order, cut: await cutFor(order) }
      } finally {
        this.cutting = false
      }
    })
  }

  private readonly add = (event: CustomEvent<NewBoard>) =>
    this.attempt(async () => {
      const { key } = await addBoard(boardEntry(event.detail)).catch((failure) => {
        throw boardRefusal(failure, event.detail)
      })
      this.boardList.clear()
      noteChange({ kind: 'board', id: key })
    })

  private readonly drop = (event: CustomEvent<string>) =>
    this.attempt(async () => {
      await deleteBoard(event.detail)
      noteChange({ kind: 'board', id: event.detail })
    })

  override render() {
    return this.loaded.shown(
      (loaded) => this.page(loaded),
      () => void this.reload(),
    )
  }

  private page(loaded: Loaded) {
    const { plan, shop, woods, job } = loaded
    const wood = woods.find(({ key }) => key === plan.job.species)
    return html`
      <div class="page">
        <div class="page-head">
          <h1>Wood</h1>
          <div class="buttons no-print">
            <a class="button" href=${cutListPath(this.jobId)} target="_blank">Cut list to print</a>
            <a class="button" href=${printPath(this.jobId, 'pattern.pdf')} target="_blank">Full-size pattern to print</a>
          </div>
        </div>
        <div class="columns">
          <section class="card" aria-labelledby="blank">
            <h2 id="blank">Blank</h2>
            <blank-card .plan=${plan} .shop=${job.state === 'draft' ? shop : undefined}></blank-card>
          </section>
          <section class="card" aria-labelledby="yard">
            <h2 id="yard">Ask the yard for</h2>
            <yard-card .yard=${plan.yard} .wood=${wood?.name ?? plan.job.species} .units=${plan.job.units}
              .bought=${plan.boardFeet.bought} .offcuts=${plan.cut.boards.reduce((sum, { offcuts }) => sum + offcuts.length, 0)}></yard-card>
          </section>
        </div>
        <section class="card" aria-labelledby="layers">
          <h2 id="layers">${plan.blank.layers > 1 ? 'Glued up' : 'In one piece'}</h2>
          <glue-card .plan=${plan} .choices=${loaded.choices}></glue-card>
        </section>
        <section class="card" aria-labelledby="cut">
          <h2 id="cut">Cutting sheet</h2>
          <cutting-sheet .plan=${plan}></cutting-sheet>
        </section>
        ${this.set(plan)}
        ${this.onHand(loaded)}
        <div class="columns">
          <section class="card" aria-labelledby="moisture">
            <h2 id="moisture">Moisture</h2>
            <moisture-card .plan=${plan} .shop=${job.state === 'draft' ? shop : undefined}></moisture-card>
          </section>
          ${
            wood
              ? html`<section class="card" aria-labelledby="species">
                <h2 id="species">The wood itself</h2>
                <species-card .wood=${wood} .plan=${plan}></species-card>
              </section>`
              : nothing
          }
        </div>
      </div>
    `
  }

  /** Where the legs of a matching set stand, where they are legs. */
  private set(plan: Plan) {
    const { job, blank, cutOrder } = plan
    if (!standsInSets(plan)) return nothing
    return html`<section class="card" aria-labelledby="set">
      <h2 id="set">Set layout</h2>
      <set-layout .pieces=${setPieces(sheetOf(plan), cutOrder.boards, job)} .joints=${job.joints} .side=${blank.sawn}
        .legs=${keptLegs(this.jobId)} @legs=${this.keepLegs}></set-layout>
    </section>`
  }

  private readonly keepLegs = ({ detail }: CustomEvent<number>) => {
    keepEntry(legsPlace(this.jobId), { legs: detail })
    this.requestUpdate()
  }

  private onHand(loaded: Loaded) {
    const { plan, woods, boards: onHand } = loaded
    return html`
      <section class="card" aria-labelledby="on-hand">
        <h2 id="on-hand">Boards on hand</h2>
        ${this.message ? html`<p class="problem" role="alert">${this.message}</p>` : nothing}
        <board-list
          .boards=${onHand}
          .woods=${woods}
          .errors=${this.errors}
          .species=${plan.job.species}
          .units=${plan.job.units}
          .currency=${plan.cutOrder.currency}
          @add=${this.add}
          @drop=${this.drop}
        ></board-list>
        <div class="buttons no-print">
          <button type="button" class="main" ?disabled=${this.cutting || onHand.length === 0} @click=${() => this.cutFromHand(loaded)}>
            ${this.cutting ? 'Laying out…' : 'Cut from boards on hand'}
          </button>
        </div>
        ${
          this.fromHand
            ? html`<h3>Cut list from boards on hand</h3>
              <cut-list .cut=${this.fromHand.cut} .order=${this.fromHand.order}></cut-list>`
            : nothing
        }
      </section>
    `
  }
}
