import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Breach } from '../../shared/problem.ts'
import { jobField } from '../field-words.ts'
import type { JobFile } from '../job-file.ts'
import type { LivePlan } from '../live-plan.ts'
import { oddEntries } from '../odd-entries.ts'
import { lengthStyle, SessionController } from '../session.ts'
import type { ShopAndWoods } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import './check-list.ts'
import './job-head.ts'
import './job-ways.ts'
import './joints-table.ts'
import './plan-summary.ts'
import './stations-table.ts'
import './turned-part.ts'
import './wood-choice.ts'

/** Room for the drawing along the part, px, so that the plan stays in sight below it. */
const DRAWN_MOST = 380

/** The fields' own elements, in the order they stand on the page. */
const PARTS = 'job-head, wood-choice, stations-table, joints-table, job-ways'

/** The whole form of a job, with the drawing and the plan beside it. Passes `entry` on from its parts. */
@customElement('job-form')
export class JobForm extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .layout {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
        align-items: start;
      }
      @media (min-width: 72rem) {
        .layout {
          grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
        }
        .beside {
          position: sticky;
          top: var(--space-4);
          max-height: calc(100vh - 7rem);
          overflow-y: auto;
        }
      }
      .small-drawing {
        position: sticky;
        top: 0;
        z-index: 1;
        height: 6rem;
        padding: var(--space-2);
        margin: 0 calc(-1 * var(--space-2));
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      @media (min-width: 72rem) {
        .small-drawing {
          display: none;
        }
      }
      .drawing {
        background: var(--well);
        border-radius: var(--round);
        padding: var(--space-2);
      }
      @media print {
        .layout {
          display: block;
        }
        .form > :not(.printed) {
          display: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) live: LivePlan = { errors: [] }
  @property({ attribute: false }) shown: readonly Breach[] = []
  @property({ attribute: false }) ground!: ShopAndWoods
  @property({ type: Boolean }) disabled = false
  @state() private station?: number

  constructor() {
    super()
    new SessionController(this)
  }

  /** Brings the cursor to the field of an error, or as near to it as there is one. */
  focusField(path: string) {
    const fields = [...this.renderRoot.querySelectorAll(PARTS)].flatMap((part) => [
      ...(part.shadowRoot?.querySelectorAll<HTMLElement>('[data-path]') ?? []),
    ])
    const near =
      fields.find((field) => field.dataset.path === path) ??
      fields.find((field) => field.dataset.path?.startsWith(path)) ??
      fields.find((field) => path.startsWith(`${field.dataset.path}[`))
    near?.focus()
    near?.scrollIntoView({ block: 'center' })
  }

  override render() {
    const errors = new Map(this.shown.map(({ path, message }) => [path, message]))
    const { file, disabled } = this
    return html`
      <div class="layout">
        <div class="form page">
          ${this.summary()}
          <section class="card" aria-labelledby="job">
            <h2 id="job">Job</h2>
            <job-head .file=${file} .errors=${errors} .disabled=${disabled}></job-head>
          </section>
          <section class="card" aria-labelledby="wood">
            <h2 id="wood">Wood</h2>
            <wood-choice .file=${file} .woods=${this.ground.woods} .errors=${errors} .disabled=${disabled}></wood-choice>
          </section>
          <section class="card" aria-labelledby="stations" @station=${this.follow}>
            <div>
              <h2 id="stations">Stations</h2>
              <p class="soft small">From the foot, 0, to the top. A length can be written 2 3/8, 2-3/8", 2⅜ in, 60.3 mm, 8' 4".</p>
            </div>
            ${this.smallDrawing()}
            <stations-table .stations=${file.profile.stations} .errors=${errors} .disabled=${disabled}></stations-table>
          </section>
          ${this.checks()}
          <section class="card" aria-labelledby="joints">
            <h2 id="joints">Joints</h2>
            <joints-table .joints=${file.joints ?? []} .errors=${errors} .disabled=${disabled}></joints-table>
          </section>
          <section class="card" aria-labelledby="ways">
            <h2 id="ways">Holding, finish, tolerances</h2>
            <job-ways .odd=${this.live.job ? oddEntries(this.live.job) : []} .file=${file} .shop=${this.ground.shop} .errors=${errors} .disabled=${disabled}></job-ways>
          </section>
        </div>
        <div class="beside page" role="region" aria-label="Drawing and plan" tabindex="0">${this.drawing()}</div>
      </div>
    `
  }

  private readonly follow = (event: CustomEvent<number>) => {
    this.station = event.detail
  }

  private summary() {
    if (this.shown.length === 0) return nothing
    const kinds = (this.file.joints ?? []).map(({ kind }) => kind)
    return html`
      <div class="problem">
        <p><b>${this.shown.length === 1 ? 'One entry needs' : `${this.shown.length} entries need`} putting right</b></p>
        <ul class="plain">
          ${this.shown.map(
            ({ path, message }) => html`<li>
              <a href="#" @click=${(event: Event) => this.jump(event, path)}>${jobField(path, kinds)}</a>: ${message}
            </li>`,
          )}
        </ul>
      </div>
    `
  }

  private jump(event: Event, path: string) {
    event.preventDefault()
    this.focusField(path)
  }

  private checks() {
    const { plan } = this.live
    if (!plan) return nothing
    return html`<section class="card printed" aria-labelledby="checks">
      <h2 id="checks">Check stations</h2>
      <check-list .plan=${plan}></check-list>
    </section>`
  }

  /** Where there is no room beside the stations: the part above them, while they are written. */
  private smallDrawing() {
    const { job } = this.live
    if (!job) return nothing
    return html`<div class="small-drawing" aria-hidden="true">
      <turned-part .profile=${job.profile} .species=${job.species} orientation="horizontal" compact></turned-part>
    </div>`
  }

  private drawing() {
    const { job, plan } = this.live
    if (!job) return html`<p class="soft">The drawing comes when the stations can be read.</p>`
    const { stations } = job.profile
    const [here, next] =
      this.station === undefined ? [] : [stations[this.station], stations[this.station + 1]]
    return html`
      <figure class="drawing">
        <turned-part
          .profile=${job.profile}
          .species=${job.species}
          .lengthStyle=${lengthStyle(job.units)}
          .name=${job.name}
          .joints=${job.joints}
          .checks=${plan?.checkStations ?? []}
          .most=${DRAWN_MOST}
          .highlight=${here && next && next.at > here.at ? [here.at, next.at] : null}
          dimensions
        ></turned-part>
      </figure>
      ${
        plan
          ? html`<section class="card" aria-labelledby="summary">
              <h2 id="summary">The plan as it stands</h2>
              <plan-summary .plan=${plan}></plan-summary>
            </section>`
          : html`<p class="soft">The plan comes when every entry can be read.</p>`
      }
    `
  }
}
