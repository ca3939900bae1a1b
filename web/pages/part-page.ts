import { html, LitElement, nothing } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { stickPlaces } from '../../shared/blank/stick-places.ts'
import { jointsOfHand } from '../../shared/profile/mirrored-joints.ts'
import { barWood } from '../../shared/profile/part.ts'
import { makesHands } from '../../shared/route/hands.ts'
import { newKey, printPath, Refusal } from '../api.ts'
import { jobDrafts } from '../drafts.ts'
import '../elements/half-drawing.ts'
import '../elements/movement-card.ts'
import '../elements/part-sections.ts'
import '../elements/prints-card.ts'
import type { ScalesCard, Weighed } from '../elements/scales-card.ts'
import '../elements/scales-card.ts'
import '../elements/stair-card.ts'
import '../elements/stick-drawing.ts'
import '../elements/turned-part.ts'
import type { Reshape } from '../elements/weight-card.ts'
import '../elements/weight-card.ts'
import '../elements/whip-card.ts'
import { enteredStations } from '../entered-stations.ts'
import { jobFileOf } from '../job-entries.ts'
import { Load } from '../load.ts'
import { go, jobPath } from '../router.ts'
import { sameFile } from '../save-draft.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { type JobAndPlan, jobAndPlan, type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { editedDraft } from '../undo.ts'
import { keepWeighing } from './keep-weighing.ts'

type Loaded = JobAndPlan & ShopAndWoods

/** The part of a job by itself: whip, movement, weight, joints, how it is turned and split. */
@customElement('part-page')
export class PartPage extends LitElement {
  static override styles = pageWear

  @property() jobId = ''
  @state() private message = ''
  @state() private failed = ''
  @state() private weighing = false
  @query('scales-card') private scales?: ScalesCard
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

  /** The weighing goes into the shop’s lot; until it is kept there it stays on the scales. */
  private readonly weigh = async ({ detail }: CustomEvent<Weighed>) => {
    const { plan, woods } = this.loaded.value!
    const wood = woods.find(({ key }) => key === plan.job.species)
    this.message = ''
    this.failed = ''
    this.weighing = true
    try {
      this.message = await keepWeighing(this.jobId, plan, wood, detail)
      this.scales?.clear()
    } catch (failure) {
      if (!(failure instanceof Refusal)) throw failure
      this.failed = `The weighing is not kept: ${failure.message}`
    } finally {
      this.weighing = false
    }
  }

  override render() {
    return this.loaded.shown(
      (loaded) => this.page(loaded),
      () => void this.reload(),
    )
  }

  private page(loaded: Loaded) {
    const { plan } = loaded
    const wood = loaded.woods.find(({ key }) => key === plan.job.species)
    const style = lengthStyle(plan.job.units)
    return html`
      <div class="page">
        <div class="page-head"><h1>Part</h1></div>
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
          <div class="page">
            <section class="card" aria-labelledby="whip">
              <h2 id="whip">Whip between centres</h2>
              <whip-card .plan=${plan} .jobId=${this.jobId} .wood=${wood && barWood(wood, plan.part.density)}></whip-card>
            </section>
            <section class="card" aria-labelledby="movement">
              <h2 id="movement">Movement with moisture</h2>
              <movement-card .plan=${plan}></movement-card>
            </section>
          </div>
          ${this.weight(loaded)}
        </div>
        <section class="card" aria-labelledby="across">
          <h2 id="across">Cut across, from the top</h2>
          <part-sections .plan=${plan}></part-sections>
        </section>
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
    const { profile, joints, species, units, name } = plan.job
    const pairs = makesHands(plan.job)
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
        ${plan.checkStations.length > 0 ? html`<p class="small soft">In blue, between arrows: the diameters to check, where the middle of the caliper’s jaws is held.</p>` : nothing}
        ${pairs ? html`<h3>Right hand, its mirror image</h3> ${part(jointsOfHand(joints, 'right'), `${name}, right hand`, false)}` : nothing}
        ${profile.split ? html`<h3>A half, seen on edge</h3> <half-drawing .profile=${profile} .species=${species}></half-drawing><p class="small soft">The blue line is the flat face, where it was glued. Foot at the left.</p>` : nothing}
      </section>
    `
  }

  private weight({ plan, job, shop, woods }: Loaded) {
    return html`<section class="card" aria-labelledby="weight">
      <h2 id="weight">Weight and balance</h2>
      ${this.failed ? html`<p class="problem" role="alert">${this.failed}</p>` : nothing}
      ${this.message ? html`<p class="notice" role="status">${this.message}</p>` : nothing}
      <weight-card .jobId=${this.jobId} .plan=${plan} .frozen=${job.state !== 'draft'} @reshape=${this.reshape}></weight-card>
      ${
        plan.part.mass === undefined
          ? nothing
          : html`<scales-card .jobId=${this.jobId} .plan=${plan} .lots=${shop.lots} .woods=${woods} .busy=${this.weighing} @weigh=${this.weigh}></scales-card>`
      }
    </section>`
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
      link('gauges.pdf', 'Gap gauges', 'a gap for each caliper setting, to stick on thin stuff and saw'),
      link('pattern.svg', 'Pattern to cut', '1:1 drawing, cut lines apart from engraved ones'),
    ]
  }
}

function stickWords({ blank, part, job }: Loaded['plan']): string {
  const text = (mm: number) => length(mm, job.units)
  const { perBlank } = blank.stock
  const [first] = stickPlaces(blank, part.length).gaps
  const gap = first ? `, ${text(first[1] - first[0])} between them for parting` : ''
  const parts =
    perBlank > 1 ? `${perBlank} parts of ${text(part.length)}${gap}` : `one part of ${text(part.length)}`
  return `Blank ${text(blank.side)} square, ${text(blank.length)} long: ${parts}; ${text(blank.lengthParts.foot)} waste at the foot, ${text(blank.lengthParts.top)} at the top.${perBlank > 1 ? ' The coloured bands are parted away.' : ''}`
}
