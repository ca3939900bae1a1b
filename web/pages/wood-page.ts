import { html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { HeldBoard } from '../../shared/contract/board.ts'
import type { JobWood } from '../../shared/contract/sawn.ts'
import { setPieces } from '../../shared/cutting/set-layout.ts'
import { type GlueChoice, glueChoices } from '../../shared/glue-choices.ts'
import { type Plan, sheetOf, standsInSets } from '../../shared/plan.ts'
import { boards, newKey, printPath, Refusal } from '../api.ts'
import { jobWood, saySawn, takeBackSawn } from '../api-boards.ts'
import '../elements/blank-card.ts'
import '../elements/cutting-sheet.ts'
import '../elements/set-layout.ts'
import '../elements/glue-card.ts'
import '../elements/job-boards.ts'
import '../elements/moisture-card.ts'
import '../elements/species-card.ts'
import '../elements/yard-card.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { Load } from '../load.ts'
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
  boards: HeldBoard[]
  /** What the batch has reserved and what was sawn for it; nothing for a draft. */
  wood?: JobWood
  /** Solid or glued up; nothing is left to choose once the plan is frozen. */
  choices: GlueChoice[]
}

const legsPlace = (jobId: string): string => `setwright.legs.${jobId}`

/** Legs to a stand as chosen for a job on this device; 0 when none was. */
const keptLegs = (jobId: string): number => keptEntry(legsPlace(jobId), { legs: 0 }).legs

/** The cut list to print, with the set laid out as chosen. */
function cutListPath(jobId: string): string {
  const [path, legs] = [printPath(jobId, 'cut-list.pdf'), keptLegs(jobId)]
  return legs === 0 ? path : `${path}${path.includes('?') ? '&' : '?'}legs=${legs}`
}

/** The wood of a job: blank, cut list, what to buy, boards on hand, the species itself. */
@customElement('wood-page')
export class WoodPage extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @state() private busy = false
  @state() private message = ''
  /** Kept until the server has answered, so that a second try stores nothing twice. */
  private sawnKey = newKey()
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
    if (changed.has('jobId')) void this.reload()
  }

  private readonly reload = () =>
    this.loaded.from(async () => {
      const [job, shop, onHand] = await Promise.all([jobAndPlan(this.jobId), shopAndWoods(), boards()])
      if (job.job.state !== 'draft')
        return { ...job, ...shop, boards: onHand, wood: await jobWood(this.jobId), choices: [] }
      return {
        ...job,
        ...shop,
        boards: onHand,
        choices: glueChoices(job.plan, shop.shop, shop.woods, shop.record),
      }
    })

  /** Says that the blanks are sawn, or takes that back; both change the rack. */
  private async saw(action: () => Promise<unknown>) {
    this.message = ''
    this.busy = true
    try {
      await action()
      this.sawnKey = newKey()
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      this.message = failure.message
    } finally {
      this.busy = false
    }
    noteChange({ kind: 'board', id: '' })
  }

  override render() {
    return this.loaded.shown(
      (loaded) => this.page(loaded),
      () => void this.reload(),
    )
  }

  private page(loaded: Loaded) {
    const { plan, shop, woods, job } = loaded
    const wood = woods.find(({ key }) => key === plan.job.species)
    const isAllOnHand = plan.cut.unmet.length === 0 && plan.cut.boards.every(({ onHand }) => onHand)
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
            ${
              isAllOnHand
                ? html`<p>Nothing: boards on hand are enough for every blank, spares among them.</p>`
                : html`<yard-card .jobId=${this.jobId} .yard=${plan.yard} .wood=${wood?.name ?? plan.job.species} .units=${plan.job.units} .currency=${plan.cutOrder.currency}
              .bought=${plan.boardFeet.bought} .offcuts=${plan.cut.boards.reduce((sum, { offcuts }) => sum + offcuts.length, 0)}></yard-card>`
            }
          </section>
        </div>
        <section class="card" aria-labelledby="layers">
          <h2 id="layers">${plan.blank.layers > 1 ? 'Glued up' : 'In one piece'}</h2>
          <glue-card .plan=${plan} .choices=${loaded.choices}></glue-card>
        </section>
        ${this.onHand(loaded)}
        <section class="card" aria-labelledby="cut">
          <h2 id="cut">Cutting sheet</h2>
          <cutting-sheet .plan=${plan}></cutting-sheet>
        </section>
        ${this.set(plan)}
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

  private onHand({ plan, boards: rack, wood }: Loaded) {
    return html`
      <section class="card" aria-labelledby="on-hand">
        <h2 id="on-hand">Boards on hand</h2>
        ${this.message ? html`<p class="problem" role="alert">${this.message}</p>` : nothing}
        <job-boards
          .plan=${plan}
          .rack=${rack}
          .wood=${wood}
          .busy=${this.busy}
          @sawn=${() => this.saw(() => saySawn(this.jobId, this.sawnKey))}
          @take-back=${() => this.saw(() => takeBackSawn(this.jobId))}
        ></job-boards>
      </section>
    `
  }
}
