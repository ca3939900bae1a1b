import { css, html, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { roughThickness } from '../../shared/blank/nominal.ts'
import { stockOf } from '../../shared/plan-parts.ts'
import type { Breach } from '../../shared/problem.ts'
import { type ProfileWarning, profileWarnings } from '../../shared/profile/warnings.ts'
import type { Shop } from '../../shared/shop.ts'
import { jobField } from '../field-words.ts'
import type { JobFile } from '../job-file.ts'
import type { LivePlan } from '../live-plan.ts'
import { oddEntries } from '../odd-entries.ts'
import { lengthStyle, SessionController } from '../session.ts'
import type { ShopAndWoods } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import type { History } from '../undo.ts'
import './check-list.ts'
import { focusField } from './focus-field.ts'
import './job-head.ts'
import './job-ways.ts'
import './joints-table.ts'
import './lumber-fields.ts'
import './plan-summary.ts'
import { wrongEntries } from './wrong-entries.ts'
import './profile-editor.ts'
import { spanAfter } from './station-spans.ts'
import './turned-part.ts'
import './wood-choice.ts'

/** One list for all that have nothing, so that nothing is drawn anew for it. */
const none: never[] = []

/** The largest thickness the shop can get of a wood. */
function thickestOf({ stock }: Shop, species: string): { thickest?: number } {
  const rough = stockOf(species, stock).map(({ nominal }) => roughThickness(nominal))
  return rough.length > 0 ? { thickest: Math.max(...rough) } : {}
}

/**
 * The whole form of a job, with the drawing and the plan beside it. Passes on what its parts send; what lies between
 * the job and the library goes in the slot `library`.
 */
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
      .silhouette {
        display: none;
        height: 6rem;
      }
      @media (min-width: 72rem) {
        .silhouette {
          display: block;
        }
      }
      @media print {
        .layout {
          display: block;
        }
        .form > :not(.printed),
        slot,
        .hint-on-lengths {
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
  @property({ attribute: false }) history?: History
  @state() private station = 0
  private warnings: readonly ProfileWarning[] = none

  constructor() {
    super()
    new SessionController(this)
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('live') && !changed.has('ground')) return
    const { job, plan } = this.live
    this.warnings = job
      ? profileWarnings(job.profile, {
          joints: job.joints,
          ...(plan?.part.whip && { whip: plan.part.whip }),
          ...thickestOf(this.ground.shop, job.species),
          style: lengthStyle(job.units),
        })
      : none
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
            <wood-choice .file=${file} .woods=${this.ground.woods} .lots=${this.ground.shop.lots} .errors=${errors} .disabled=${disabled}></wood-choice>
            <lumber-fields .file=${file} .grade=${this.ground.shop.grade} .errors=${errors} .disabled=${disabled}></lumber-fields>
          </section>
          <section class="card printed" aria-labelledby="profile" @station=${this.follow}>
            <div>
              <h2 id="profile">Drawing and stations</h2>
              <p class="soft small hint-on-lengths">From the foot, 0, to the top. A length can be written 2 3/8, 2-3/8", 2⅜ in, 60.3 mm, 8' 4".</p>
            </div>
            ${this.editor(errors)}
            <slot name="library"></slot>
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
        <div class="beside page" role="region" aria-label="The plan" tabindex="0">${this.plan()}</div>
      </div>
    `
  }

  private readonly follow = (event: CustomEvent<number>) => {
    this.station = event.detail
  }

  private editor(errors: ReadonlyMap<string, string>) {
    const { file, live, history } = this
    return html`<profile-editor
      .stations=${file.profile.stations}
      .joints=${file.joints ?? none}
      .units=${file.units}
      .species=${file.species}
      .name=${file.name}
      .checks=${live.plan?.checkStations ?? none}
      .warnings=${this.warnings}
      .errors=${errors}
      .disabled=${this.disabled}
      .canUndo=${(history?.past.length ?? 0) > 0}
      .canRedo=${(history?.future.length ?? 0) > 0}
    ></profile-editor>`
  }

  private summary() {
    const kinds = (this.file.joints ?? []).map(({ kind }) => kind)
    return wrongEntries(
      this.shown,
      (path) => jobField(path, kinds),
      (path) => focusField(this.renderRoot, path),
    )
  }

  private checks() {
    const { plan } = this.live
    if (!plan) return nothing
    return html`<section class="card printed" aria-labelledby="checks">
      <h2 id="checks">Check stations</h2>
      <check-list .plan=${plan}></check-list>
    </section>`
  }

  /** The part in small, with the station at hand, in sight beside the stations. */
  private silhouette() {
    const { job } = this.live
    if (!job) return nothing
    return html`<div class="silhouette" aria-hidden="true">
      <turned-part
        .profile=${job.profile}
        .species=${job.species}
        .highlight=${spanAfter(job.profile.stations, this.station)}
        orientation="horizontal"
        compact
      ></turned-part>
    </div>`
  }

  private plan() {
    const { plan } = this.live
    if (!plan)
      return html`${this.silhouette()}<p class="soft">The plan comes when every entry can be read.</p>`
    return html`${this.silhouette()}<section class="card" aria-labelledby="summary">
      <h2 id="summary">The plan as it stands</h2>
      <plan-summary .plan=${plan}></plan-summary>
    </section>`
  }
}
