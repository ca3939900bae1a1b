import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { type Plan, partsOf } from '../../shared/plan.ts'
import { type Print, printPath } from '../api.ts'
import { priceText } from '../elements/amounts.ts'
import '../elements/caliper-plan.ts'
import '../elements/edges-card.ts'
import '../elements/lathe-card.ts'
import '../elements/mountings-card.ts'
import '../elements/operation-card.ts'
import '../elements/operation-lathe.ts'
import '../elements/operation-list.ts'
import '../elements/operation-sheet.ts'
import '../elements/operation-time.ts'
import { rpmFigure } from '../elements/operation-words.ts'
import type { PrintLink } from '../elements/prints-card.ts'
import { readAhead } from '../last-seen.ts'
import { Load } from '../load.ts'
import { lengthStyle, SessionController } from '../session.ts'
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
        <div class="buttons no-print">
          <div class="buttons" role="group" aria-label="Show the order of work">
            ${this.viewButton('one', 'One at a time')} ${this.viewButton('list', 'List')}
          </div>
          <button type="button" class="to-lathe" ?disabled=${plan.operations.length === 0} @click=${() => this.lathe(true)}>From the lathe</button>
        </div>
      </div>
      ${this.fromLathe ? this.fromTheLathe(plan) : nothing}
      ${this.operations(plan)}
      <caliper-plan .plan=${plan} .prints=${this.caliperPrints(job.id)}></caliper-plan>
      ${plan.lathe ? html`<lathe-card .lathe=${plan.lathe}></lathe-card>` : nothing}
      <div class="columns">${this.surface(plan)} <mountings-card .passes=${plan.passes} .blanks=${plan.blank.count}></mountings-card></div>
      <edges-card .grinding=${plan.grinding}></edges-card>
      <section class="card"><h2>Time</h2><operation-time .time=${plan.time} .pieces=${partsOf(plan)}></operation-time></section>
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

  private fromTheLathe({ operations, job, sanding, grinding }: Plan): TemplateResult | typeof nothing {
    if (operations.length === 0) return nothing
    const index = Math.min(this.index, operations.length - 1)
    return html`<operation-lathe .operations=${operations} .index=${index} .profile=${job.profile} .species=${job.species}
      .lengthStyle=${lengthStyle(job.units)} .grits=${sanding.grits} .grinding=${grinding}
      @operation-turn=${(event: CustomEvent<{ by: number }>) => this.goTo(index + event.detail.by, operations.length)}
      @lathe-left=${() => {
        this.lathe(false)
        this.view = 'one'
      }}></operation-lathe>`
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

  private caliperPrints(id: string): PrintLink[] {
    const link = (file: Print, name: string, what: string) => ({ href: printPath(id, file), name, what })
    return [
      link('caliper-card.pdf', 'Caliper card', 'settings in the order of work'),
      link('gauges.pdf', 'Gap gauges', 'one for each setting, at true size'),
    ]
  }

  private prints(id: string): TemplateResult {
    const print = (name: Print, text: string) =>
      html`<a class="button" href=${printPath(id, name)} target="_blank" rel="noopener">${text}</a>`
    return html`<section class="card no-print">
      <h2>To print</h2>
      <p class="buttons">${print('work-order.pdf', 'Work order')} ${print('labels.pdf', 'Labels')}</p>
    </section>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'work-page': WorkPage
  }
}
