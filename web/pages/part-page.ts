import { html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { isHanded, jointsOfHand } from '../../shared/profile/mirrored-joints.ts'
import type { Species } from '../../shared/wood/species.ts'
import { changeJob, changeShop, newKey, printPath, Refusal, shopSettings, storedJob } from '../api.ts'
import { jobDrafts } from '../drafts.ts'
import '../elements/half-drawing.ts'
import '../elements/movement-card.ts'
import '../elements/part-sections.ts'
import '../elements/prints-card.ts'
import '../elements/stair-card.ts'
import '../elements/stick-drawing.ts'
import '../elements/turned-part.ts'
import type { Reshape, Weighed, WeightCard } from '../elements/weight-card.ts'
import '../elements/weight-card.ts'
import '../elements/whip-card.ts'
import { enteredStations } from '../entered-stations.ts'
import { jobFileOf } from '../job-entries.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import {
  type JobAndPlan,
  jobAndPlan,
  noteChange,
  type ShopAndWoods,
  shopAndWoods,
  watchChanges,
} from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { editedDraft } from '../undo.ts'

type Loaded = JobAndPlan & ShopAndWoods

/** The part of a job by itself: whip, movement, weight, joints, how it is turned and split. */
@customElement('part-page')
export class PartPage extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @state() private message = ''
  @state() private failed = ''
  @query('weight-card') private weightCard?: WeightCard
  private readonly loaded = new Load<Loaded>(this)
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    this.unwatch = watchChanges((change) => {
      if (change.kind === 'shop' || change.id === this.jobId) void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  protected override willUpdate(changed: Map<string, unknown>) {
    if (!changed.has('jobId')) return
    this.message = ''
    this.failed = ''
    void this.reload()
  }

  private readonly reload = () =>
    this.loaded.from(async () => {
      const [job, shop] = await Promise.all([jobAndPlan(this.jobId), shopAndWoods()])
      return { ...job, ...shop }
    })

  /** New stations go into the edits of the job, where they can be looked at, taken back and saved. */
  private readonly reshape = (event: CustomEvent<Reshape>) => {
    const { job, plan } = this.loaded.value!
    const stored = jobFileOf(job)
    const draft = jobDrafts.of(this.jobId) ?? { file: stored, revision: job.revision, key: newKey() }
    const { stations, label } = event.detail
    this.failed = ''
    if (!sameFile(draft.file.profile, stored.profile)) {
      this.failed =
        'The profile has unsaved edits on this device: save or drop them on the Profile page, then change its weight.'
      return
    }
    const entered = enteredStations(stations, draft.file.profile.stations, plan.job.units)
    const file = { ...draft.file, profile: { ...draft.file.profile, stations: entered } }
    if (jobDrafts.keep(this.jobId, editedDraft(draft, file, label))) go(jobPath(this.jobId, 'profile'))
    else this.failed = 'This device has no room to keep the change.'
  }

  /** The weighing goes into the shop's lot, and a draft without a lot is told its own. */
  private readonly weigh = async (event: CustomEvent<Weighed>) => {
    const { plan } = this.loaded.value!
    const { mass, lot: name } = event.detail
    this.message = ''
    this.failed = ''
    try {
      const { value: shop, revision } = await shopSettings()
      const volume = plan.part.volume / (plan.job.profile.split ? 2 : 1)
      const weighing = { mass, volume, moisture: plan.job.moisture, at: new Date().toISOString() }
      const known = shop.lots.some((lot) => lot.name === name)
      const lots = known
        ? shop.lots.map((lot) =>
            lot.name === name ? { ...lot, weighings: [...lot.weighings, weighing] } : lot,
          )
        : [...shop.lots, { name, species: plan.job.species, weighings: [weighing] }]
      await changeShop({ ...shop, lots }, revision)
      noteChange({ kind: 'shop', id: 'shop' })
      await this.takeLot(name)
      this.weightCard?.clear()
      this.message = `Kept: the lot ${name} is corrected by what this piece weighs.`
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      this.failed = failure.message
    }
  }

  private async takeLot(name: string) {
    const job = await storedJob(this.jobId)
    if (job.state !== 'draft' || job.lot === name) return
    await changeJob(this.jobId, job.revision, { ...jobFileOf(job), lot: name })
    noteChange({ kind: 'job', id: this.jobId })
  }

  override render() {
    return this.loaded.shown(
      (loaded) => this.page(loaded),
      () => void this.reload(),
    )
  }

  private page(loaded: Loaded) {
    const { plan, job } = loaded
    const wood = loaded.woods.find(({ key }) => key === plan.job.species)
    const style = lengthStyle(plan.job.units)
    return html`
      <div class="page">
        <div class="page-head"><h1>Part</h1></div>
        ${this.failed ? html`<p class="problem" role="alert">${this.failed}</p>` : nothing}
        ${this.message ? html`<p class="notice" role="status">${this.message}</p>` : nothing}
        ${this.drawn(loaded)}
        ${
          plan.stair
            ? html`<section class="card" aria-labelledby="stair">
              <h2 id="stair">${plan.stair.use === 'guard' ? 'In a guard' : 'On a stair'}</h2>
              <stair-card .plan=${plan}></stair-card>
            </section>`
            : nothing
        }
        <div class="columns">
          <section class="card" aria-labelledby="whip">
            <h2 id="whip">Whip between centres</h2>
            <whip-card .plan=${plan} .wood=${barWood(wood, plan.part.density)}></whip-card>
          </section>
          <section class="card" aria-labelledby="weight">
            <h2 id="weight">Weight and balance</h2>
            <weight-card
              .plan=${plan}
              .frozen=${job.state !== 'draft'}
              .lots=${loaded.shop.lots.filter(({ species }) => species === plan.job.species).map(({ name }) => name)}
              @reshape=${this.reshape}
              @weigh=${this.weigh}
            ></weight-card>
          </section>
          <section class="card" aria-labelledby="movement">
            <h2 id="movement">Movement with moisture</h2>
            <movement-card .plan=${plan}></movement-card>
          </section>
          <section class="card" aria-labelledby="across">
            <h2 id="across">Cut across, from the top</h2>
            <part-sections .plan=${plan}></part-sections>
          </section>
        </div>
        <section class="card" aria-labelledby="stick">
          <h2 id="stick">In its blank</h2>
          <stick-drawing .plan=${plan} .lengthStyle=${style}></stick-drawing>
          <p class="small soft">${stickWords(plan)}</p>
        </section>
        <section class="card no-print" aria-labelledby="prints">
          <h2 id="prints">To print at full size</h2>
          <prints-card .links=${this.links()}></prints-card>
        </section>
      </div>
    `
  }

  /** The part as turned wood: both hands of a mirrored pair, pair and half of a split one. */
  private drawn({ plan }: Loaded) {
    const { profile, joints, species, units, mirrored, name } = plan.job
    const pairs = mirrored === true && isHanded(joints)
    const part = (shown: typeof joints, called: string, dimensions: boolean) => html`<turned-part
      .profile=${profile}
      .species=${species}
      .lengthStyle=${lengthStyle(units)}
      .name=${called}
      .joints=${shown}
      .checks=${dimensions ? plan.checkStations : []}
      ?dimensions=${dimensions}
    ></turned-part>`
    return html`
      <section class="card" aria-labelledby="drawn">
        <h2 id="drawn">${profile.split ? 'The glued pair as it is turned' : pairs ? 'Left hand, as turned wood' : 'As turned wood'}</h2>
        ${part(joints, pairs ? `${name}, left hand` : name, true)}
        ${pairs ? html`<h3>Right hand, its mirror image</h3> ${part(jointsOfHand(joints, 'right'), `${name}, right hand`, false)}` : nothing}
        ${profile.split ? html`<h3>A half, seen on edge</h3> <half-drawing .profile=${profile} .species=${species}></half-drawing>` : nothing}
      </section>
    `
  }

  private links() {
    const link = (print: Parameters<typeof printPath>[1], name: string, what: string) => ({
      href: printPath(this.jobId, print),
      name,
      what,
    })
    return [
      link('pattern.pdf', 'Full-size pattern', 'half and full profile, tiled with join marks'),
      link('story-stick.pdf', 'Story stick', 'positions for both faces of a stick'),
      link('caliper-card.pdf', 'Caliper card', 'diameters in working order'),
      link('pattern.svg', 'Pattern to cut', '1:1 drawing, cut lines apart from engraved ones'),
    ]
  }
}

/** Stiffness and density where both are known. */
function barWood(wood: Species | undefined, density: number | undefined) {
  return wood?.moeGPa === undefined || density === undefined ? undefined : { moeGPa: wood.moeGPa, density }
}

function stickWords({ blank, part, job }: Loaded['plan']): string {
  const text = (mm: number) => length(mm, job.units)
  const { perBlank } = blank.stock
  const gap =
    perBlank > 1 ? `, ${text(blank.lengthParts.between / (perBlank - 1))} between them for parting` : ''
  const parts =
    perBlank > 1 ? `${perBlank} parts of ${text(part.length)}${gap}` : `the part, ${text(part.length)}`
  return `${parts}; ${text(blank.lengthParts.foot)} waste at the foot, ${text(blank.lengthParts.top)} at the top.`
}
