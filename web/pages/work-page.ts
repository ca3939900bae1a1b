import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { type Plan, partsOf } from '../../shared/plan.ts'
import { printPath } from '../api.ts'
import { priceText } from '../elements/amounts.ts'
import '../elements/operation-card.ts'
import '../elements/operation-lathe.ts'
import '../elements/operation-list.ts'
import '../elements/operation-sheet.ts'
import '../elements/operation-time.ts'
import { rpmFigure, stationName } from '../elements/operation-words.ts'
import { readAhead } from '../last-seen.ts'
import { Load } from '../load.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { type JobAndPlan, jobAndPlan, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'
import { keptPlace } from './check-place.ts'

const NARROW = '(max-width: 46rem)'

/** The order of work of a job, one operation at a time or as a list, with edges, calipers and time. */
@customElement('work-page')
export class WorkPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .one-view {
        max-width: 60rem;
      }
      .order-of-calipers {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        font-weight: 650;
        font-size: var(--size-large);
      }
      .order-of-calipers li:not(:last-child)::after {
        content: '→';
        color: var(--ink-soft);
        margin-left: var(--space-2);
        font-weight: 400;
      }
      tbody th p {
        font-weight: 400;
      }
      @media (max-width: 30rem) {
        .page {
          gap: var(--space-3);
        }
        h1 {
          font-size: var(--size-large);
        }
        .page-head button {
          padding: 0 var(--space-2);
        }
      }
      @media (max-width: 46rem) {
        table.stack tbody th {
          display: block;
        }
      }
      operation-sheet {
        display: none;
      }
      @media print {
        .one-view,
        .list-view {
          display: none;
        }
        operation-sheet {
          display: block;
          break-after: page;
        }
      }
    `,
  ]

  @property() jobId = ''
  @state() private view: 'one' | 'list' = matchMedia(NARROW).matches ? 'one' : 'list'
  @state() private fromLathe = false
  @state() private index = 0
  private readonly loaded = new Load<JobAndPlan>(this)
  private stopWatching?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback(): void {
    super.connectedCallback()
    addEventListener('keydown', this.turnByKey)
    this.stopWatching = watchChanges(({ kind, id }) => {
      if (kind === 'shop' || (kind === 'job' && id === this.jobId)) this.reload()
    })
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('keydown', this.turnByKey)
    this.stopWatching?.()
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('jobId')) return
    this.index = Number(sessionStorage.getItem(this.placeKey()) ?? 0) || 0
    this.fromLathe = sessionStorage.getItem(this.latheKey()) !== null
    this.reload()
  }

  private readonly reload = () =>
    void this.loaded
      .from(() => jobAndPlan(this.jobId))
      .then(() => readAhead(this.jobId, keptPlace(this.jobId).stage))

  /** Kept over a reload, as the place is. */
  private lathe(from: boolean): void {
    this.fromLathe = from
    if (from) sessionStorage.setItem(this.latheKey(), 'yes')
    else sessionStorage.removeItem(this.latheKey())
  }

  private latheKey = (): string => `${this.placeKey()}.lathe`

  private placeKey = (): string => `setwright.work.${this.jobId}`

  private goTo(index: number, count: number): void {
    this.index = Math.max(0, Math.min(count - 1, index))
    sessionStorage.setItem(this.placeKey(), String(this.index))
    const card = this.renderRoot.querySelector('operation-card')
    if (card && card.getBoundingClientRect().top < 0) card.scrollIntoView()
  }

  private readonly turnByKey = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
    const count = this.loaded.value?.plan.operations.length
    const writing = event
      .composedPath()
      .some((node) => node instanceof HTMLElement && node.matches('input, select, textarea'))
    if (
      by === 0 ||
      this.view !== 'one' ||
      this.fromLathe ||
      count === undefined ||
      writing ||
      event.altKey ||
      event.ctrlKey ||
      event.metaKey
    )
      return
    event.preventDefault()
    this.goTo(this.index + by, count)
  }

  override render() {
    return this.loaded.shown((loaded) => this.page(loaded), this.reload)
  }

  private page({ job, plan }: JobAndPlan): TemplateResult {
    return html`<div class="page">
      <div class="page-head">
        <h1>Order of work</h1>
        <div class="buttons no-print" role="group" aria-label="Show the order of work">
          ${this.viewButton('one', 'One at a time')} ${this.viewButton('list', 'List')}
        </div>
      </div>
      ${this.fromTheLathe(plan)}
      ${this.operations(plan)}
      <div class="columns">${this.calipers(plan)} ${this.surface(plan)}</div>
      ${this.edges(plan)}
      <section class="card"><h2>Time</h2><operation-time .time=${plan.time} .pieces=${partsOf(plan)}></operation-time></section>
      ${this.mountings(plan)}
      ${plan.quote ? this.price(plan.quote) : nothing}
      ${this.cautions(plan)} ${this.prints(job.id)}
    </div>`
  }

  private viewButton(view: 'one' | 'list', text: string): TemplateResult {
    const pressed = this.view === view
    return html`<button type="button" class=${pressed ? 'main' : ''} aria-pressed=${pressed}
      @click=${() => {
        this.view = view
      }}>${text}</button>`
  }

  private fromTheLathe({ operations, job, sanding }: Plan): TemplateResult | typeof nothing {
    if (operations.length === 0) return nothing
    const index = Math.min(this.index, operations.length - 1)
    return html`<button type="button" class="no-print to-lathe" @click=${() => this.lathe(true)}>From the lathe: whole screen, large type</button>
      ${
        this.fromLathe
          ? html`<operation-lathe .operations=${operations} .index=${index} .profile=${job.profile} .species=${job.species}
              .lengthStyle=${lengthStyle(job.units)} .grits=${sanding.grits}
              @operation-turn=${(event: CustomEvent<{ by: number }>) => this.goTo(index + event.detail.by, operations.length)}
              @lathe-left=${() => {
                this.lathe(false)
                this.view = 'one'
              }}></operation-lathe>`
          : nothing
      }`
  }

  private operations(plan: Plan): TemplateResult {
    const { operations, job } = plan
    if (operations.length === 0)
      return html`<p class="problem">The plan has no operations: look at the profile.</p>`
    const each = plan.blank.stock.perBlank > 1 ? 'a stick' : 'a piece'
    const index = Math.min(this.index, operations.length - 1)
    const one = this.view === 'one'
    return html`${
      one
        ? html`<operation-card class="one-view" .operations=${operations} .index=${index} .profile=${job.profile} .species=${job.species}
            .lengthStyle=${lengthStyle(job.units)} .each=${each}
            @operation-turn=${(event: CustomEvent<{ by: number }>) => this.goTo(index + event.detail.by, operations.length)}></operation-card>`
        : nothing
    }
    ${
      one
        ? nothing
        : html`<section class="card list-view">
            <operation-list .operations=${operations} .profile=${job.profile} .species=${job.species} .lengthStyle=${lengthStyle(job.units)} .each=${each}
              @operation-chosen=${(event: CustomEvent<{ index: number }>) => {
                this.goTo(event.detail.index, operations.length)
                this.view = 'one'
                scrollTo(0, 0)
              }}></operation-list>
          </section>`
    }
    <operation-sheet .operations=${operations} .lengthStyle=${lengthStyle(job.units)} .each=${each}></operation-sheet>`
  }

  private calipers({ calipers, job }: Plan): TemplateResult {
    const { settings, order, count, oneWay } = calipers
    if (settings.length === 0) {
      return html`<section class="card"><h2>Calipers</h2><p>No diameter of this part needs a caliper set for it.</p></section>`
    }
    const { perPiece, total } = oneWay ?? calipers
    const each =
      perPiece > 0
        ? `${Math.round(perPiece * 10) / 10} for each piece after the first`
        : 'all made before the first piece'
    const way = oneWay
      ? 'Slender work is sized stretch by stretch, in the same order on every piece.'
      : 'In this order on the first piece, back again on the next, and so on: that keeps the resets fewest.'
    return html`<section class="card">
      <h2>Calipers</h2>
      <p>With ${count} ${count === 1 ? 'caliper' : 'calipers'}: ${total} settings for the batch, ${each}.</p>
      <ol class="plain order-of-calipers">${order.map((mm) => html`<li>${length(mm, job.units)}</li>`)}</ol>
      ${order.length > count ? html`<p class="small soft">${way}</p>` : nothing}
      <table>
        <thead><tr><th scope="col">Set to</th><th scope="col">For</th></tr></thead>
        <tbody>${settings.map(
          ({ diameter, stations }) =>
            html`<tr><th scope="row">${length(diameter, job.units)}</th><td>${stations.map((key) => stationName(job.profile, key)).join(', ')}</td></tr>`,
        )}</tbody>
      </table>
      <p class="caution">Stop the lathe to gauge; only spring calipers with rounded tips ever ride on turning work.</p>
    </section>`
  }

  private edges({ grinding }: Plan): TemplateResult {
    if (grinding.length === 0)
      return html`<section class="card"><h2>Edges</h2><p>No turning tool cuts in this plan.</p></section>`
    return html`<section class="card">
      <h2>Edges</h2>
      <table class="stack">
        <thead><tr><th scope="col">Tool</th><th class="number" scope="col">Cutting in the batch</th><th class="number" scope="col">Touch up</th><th class="number" scope="col">Touch-ups</th><th class="number" scope="col">Regrinds</th></tr></thead>
        <tbody>${grinding.map(
          (tool) => html`<tr>
            <th scope="row">${tool.tool}<p class="small soft">${tool.why}</p></th>
            <td class="number" data-label="Cutting in the batch">${minutesText(tool.minutesCutting)}</td>
            <td class="number" data-label="Touch up"><span>${everyText(tool.piecesBetween)}<br /><span class="small soft">Cuts for ${minutesText(tool.life)} between touch-ups</span></span></td>
            <td class="number" data-label="Touch-ups">${tool.touchUps}</td>
            <td class="number" data-label="Regrinds">${tool.regrinds}</td>
          </tr>`,
        )}</tbody>
      </table>
      <p class="caution">At the grinder: eyes shielded, wheel guarded and ring-tested, the maker’s instructions first.</p>
    </section>`
  }

  private surface({ sanding, finish }: Plan): TemplateResult {
    return html`<section class="card">
      <h2>Sanding and finish</h2>
      ${
        sanding.grits.length === 0
          ? html`<p>No sanding. ${sanding.why}</p>`
          : html`<dl class="figures">
              <div><dt>Grits, in order</dt><dd>${sanding.grits.join(' → ')}</dd></div>
              <div><dt>Time</dt><dd>${minutesText(sanding.minutesEach)}</dd><dd class="note">each</dd></div>
              ${sanding.rpm === undefined ? nothing : html`<div><dt>Speed, not above</dt><dd>${rpmFigure(sanding.rpm)} rpm</dd></div>`}
            </dl>
            <p class="small soft">${sanding.why}</p>
            <p class="caution">Fine dust harms the lungs: extraction on, a fitting mask worn, the rest moved away, paper held so that it can be dragged free.</p>`
      }
      <h3>Finish: ${finish.kind === 'none' ? 'none' : `${finish.kind}, ${finish.coats} ${finish.coats === 1 ? 'coat' : 'coats'}, ${finish.onLathe ? 'on' : 'off'} the lathe`}</h3>
      ${finish.kind === 'none' ? nothing : html`<p>Dries ${finish.dryHours} h.</p>`}
      <p class="small soft">${finish.why}</p>
      ${finish.caution ? html`<p class="caution">${finish.caution}</p>` : nothing}
    </section>`
  }

  private mountings({ passes }: Plan): TemplateResult {
    return html`<section class="card">
      <h2>Mountings</h2>
      <p>${passes.chosen === 'one' ? 'Each blank is mounted once and turned through.' : 'Each blank is mounted several times: one operation on all before the next.'}</p>
      <dl class="figures">
        <div><dt>One mounting</dt><dd>${minutesText(passes.one)}</dd><dd class="note">mounting and changes, the batch</dd></div>
        <div><dt>Several mountings</dt><dd>${minutesText(passes.several)}</dd><dd class="note">mounting and changes, the batch</dd></div>
      </dl>
      <p class="small soft">${passes.why}</p>
    </section>`
  }

  private price({ lines, total, perPiece, currency }: NonNullable<Plan['quote']>): TemplateResult {
    const money = (amount: number) => priceText(amount, currency)
    return html`<section class="card">
      <h2>Price</h2>
      <table>
        <thead class="hidden-label"><tr><th scope="col">For</th><th scope="col">Amount</th></tr></thead>
        <tbody>${lines.map(({ name, amount, why }) => html`<tr><th scope="row">${name}<p class="small soft">${why}</p></th><td class="number">${money(amount)}</td></tr>`)}
          <tr><th scope="row">Whole batch</th><td class="number"><strong>${money(total)}</strong></td></tr>
          <tr><th scope="row">A piece</th><td class="number">${money(perPiece)}</td></tr>
        </tbody>
      </table>
    </section>`
  }

  /** Cautions that do not stand beside their operation or the finish already. */
  private cautions({ cautions, operations, finish }: Plan): TemplateResult | typeof nothing {
    const beside = [...operations.map(({ caution }) => caution), finish.caution].join(' ')
    const others = cautions.filter(({ text }) => !beside.includes(text))
    if (others.length === 0) return nothing
    return html`<section class="card">
      <h2>To mind</h2>
      ${others.map(({ about, text }) => html`<p class="caution"><span><strong>${about.charAt(0).toUpperCase()}${about.slice(1)}</strong>: ${text}</span></p>`)}
    </section>`
  }

  private prints(id: string): TemplateResult {
    const print = (name: 'work-order.pdf' | 'caliper-card.pdf' | 'labels.pdf', text: string) =>
      html`<a class="button" href=${printPath(id, name)} target="_blank" rel="noopener">${text}</a>`
    return html`<section class="card no-print">
      <h2>To print</h2>
      <p class="buttons">${print('work-order.pdf', 'Work order')} ${print('caliper-card.pdf', 'Caliper card')} ${print('labels.pdf', 'Labels')}</p>
    </section>`
  }
}

/** How often an edge wants the stone, in whole pieces, never later than it is due. */
function everyText(pieces: number): string {
  const whole = Math.floor(pieces + 1e-9)
  if (whole < 1) return 'within each piece'
  return whole === 1 ? 'every piece' : `every ${whole} pieces`
}

declare global {
  interface HTMLElementTagNameMap {
    'work-page': WorkPage
  }
}
