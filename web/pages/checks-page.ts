import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { matchSet } from '../../shared/matching/match.ts'
import type { ReadingStage } from '../../shared/matching/reading.ts'
import type { SetFile } from '../../shared/matching/set.ts'
import { setOfReadings } from '../../shared/matching/set-of-readings.ts'
import type { Piece } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { type JobMatch, matchOf, type NewReading, newKey, piecesOf } from '../api.ts'
import { checkName } from '../elements/operation-words.ts'
import '../elements/spread-figures.ts'
import '../elements/spread-pieces.ts'
import '../elements/spread-plot.ts'
import { readingAt, type TakenReading, withReadings } from '../elements/spread-set.ts'
import '../elements/verdict-entry.ts'
import type { VerdictEntry } from '../elements/verdict-entry.ts'
import type { Logged } from '../elements/verdict-panel.ts'
import '../elements/verdict-panel.ts'
import '../elements/verdict-piece.ts'
import type { StationToRead } from '../elements/verdict-stations.ts'
import '../elements/verdict-stations.ts'
import { Load } from '../load.ts'
import { outbox } from '../outbox.ts'
import { jobPath } from '../router.ts'
import { lengthStyle, SessionController, session } from '../session.ts'
import { type JobAndPlan, jobAndPlan, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { waitingNotice } from './waiting-notice.ts'

interface Batch extends JobAndPlan {
  /** Absent while the batch is not started. */
  pieces?: Piece[]
}

/** Where the person was, kept over a reload. */
interface Place {
  stage?: ReadingStage
  then?: 'station' | 'piece'
  piece?: string
  station?: string
}

const stages: [ReadingStage, string][] = [
  ['sized', 'Sized'],
  ['turned', 'Turned'],
  ['sanded', 'Sanded'],
  ['finished', 'Finished'],
]

const PAUSE = 250

/** Readings at the lathe with a verdict at once, and what they say about the set. */
@customElement('checks-page')
export class ChecksPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      :host {
        --touch: 3.5rem;
      }
      .bench {
        display: grid;
        gap: var(--space-6);
        grid-template-columns: minmax(0, 1fr);
        align-items: start;
      }
      .stages {
        display: grid;
        grid-template-columns: repeat(4, minmax(0, 1fr));
        gap: var(--space-1);
      }
      .stages button {
        padding: 0 var(--space-1);
      }
      @media (max-width: 30rem) {
        .stages button {
          font-size: var(--size-small);
        }
      }
      .then {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-2);
      }
      @media (min-width: 60rem) {
        .bench {
          grid-template-columns: minmax(0, 1fr) minmax(24rem, 28rem);
        }
      }
      @media (max-width: 60rem) {
        .entry {
          order: -1;
        }
      }
    `,
  ]

  @property() jobId = ''
  @state() private stage: ReadingStage = 'sanded'
  @state() private piece = ''
  @state() private station = ''
  /** Where to go when a reading is logged. */
  @state() private then: 'station' | 'piece' = 'station'
  @state() private logged?: Logged & { piece: string; station: string; stage: ReadingStage }
  @query('verdict-entry') private entry?: VerdictEntry
  private readonly loaded = new Load<Batch>(this)
  private readonly matched = new Load<{ stage: ReadingStage; match: JobMatch }>(this)
  /** Readings taken here that the fetched match may not hold yet. */
  private taken: (TakenReading & { stage: ReadingStage; key: string; stored: boolean })[] = []
  private latest?: {
    of: SetFile
    taken: number
    result: { set: SetFile; match: ReturnType<typeof matchSet> }
  }
  private stops: (() => void)[] = []
  private soon: ReturnType<typeof setTimeout> | undefined

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback(): void {
    super.connectedCallback()
    this.stops = [
      outbox().watch(() => this.requestUpdate()),
      watchChanges(({ kind, id }) => {
        if (kind === 'job' && id === this.jobId) this.fetch()
        else if ((kind === 'check' || kind === 'piece') && id.startsWith(this.jobId))
          this.fetchSoon(kind === 'piece')
      }),
    ]
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.soon)
    for (const stop of this.stops) stop()
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('jobId')) return
    const place = this.keptPlace()
    this.stage = place.stage ?? 'sanded'
    this.then = place.then ?? 'station'
    this.piece = place.piece ?? ''
    this.station = place.station ?? ''
    this.logged = undefined
    this.taken = []
    this.fetch()
  }

  private placeKey = (): string => `setwright.checks.${this.jobId}`

  private keptPlace(): Place {
    try {
      return JSON.parse(sessionStorage.getItem(this.placeKey()) ?? '{}') as Place
    } catch {
      return {}
    }
  }

  private keepPlace(): void {
    const { stage, then, piece, station } = this
    sessionStorage.setItem(this.placeKey(), JSON.stringify({ stage, then, piece, station }))
  }

  private readonly fetch = () =>
    void this.loaded
      .from(async () => {
        const known = await jobAndPlan(this.jobId)
        return known.job.state === 'draft' ? known : { ...known, pieces: await piecesOf(this.jobId) }
      })
      .then(() => {
        this.settlePlace()
        if (this.loaded.value?.pieces) this.fetchMatch()
      })

  private readonly fetchMatch = () => {
    const { stage } = this
    const storedBefore = this.taken.filter(({ stored }) => stored)
    void this.matched
      .from(async () => ({ stage, match: await matchOf(this.jobId, stage) }))
      .then(() => {
        if (!this.matched.failure)
          this.taken = this.taken.filter(
            (reading) => reading.stage !== stage || !storedBefore.includes(reading),
          )
        this.requestUpdate()
      })
  }

  private fetchSoon(everything: boolean): void {
    clearTimeout(this.soon)
    this.soon = setTimeout(everything ? this.fetch : this.fetchMatch, PAUSE)
  }

  /** Begins with the first piece and station where none is in hand. */
  private settlePlace(): void {
    const { plan, pieces } = this.loaded.value ?? {}
    if (!plan || !pieces) return
    const good = pieces.filter(({ spoiled }) => !spoiled)
    if (!good.some(({ id }) => id === this.piece)) this.piece = good[0]?.id ?? ''
    if (!plan.checkStations.some(({ key }) => key === this.station))
      this.station = plan.checkStations[0]?.key ?? ''
  }

  /** The limits of every station at the stage at hand; the same rule judges on the server. */
  private emptySet({ job, checkStations, allowances }: Plan): SetFile {
    return setOfReadings({
      units: job.units,
      stations: checkStations,
      pieces: [],
      readings: [],
      stage: this.stage,
      allowances,
      film: job.finish === 'film',
    })
  }

  /** The set with what was taken here since it was fetched, and its match. */
  private setNow(): { set: SetFile; match: ReturnType<typeof matchSet> } | undefined {
    const fetched = this.matched.value
    if (!fetched || fetched.stage !== this.stage) return undefined
    const taken = this.taken.filter(({ stage }) => stage === this.stage)
    if (taken.length === 0) return { set: fetched.match.set, match: fetched.match }
    const keys = taken.map(({ key }) => key).join()
    if (this.latest?.of === fetched.match.set && this.latest.taken === keys) return this.latest.result
    const set = withReadings(fetched.match.set, taken)
    this.latest = { of: fetched.match.set, taken: keys, result: { set, match: matchSet(set) } }
    return this.latest.result
  }

  private stationsOf(plan: Plan): StationToRead[] {
    const limits = this.emptySet(plan).stations
    const own = this.setNow()?.set.pieces.find(({ key }) => key === this.piece)
    return plan.checkStations.map((check, i) => ({
      key: check.key,
      name: checkName(check, plan.job.profile),
      at: check.at,
      kind: check.kind,
      limits: limits[i]!,
      fixed: check.fixed,
      value: own && readingAt(own, check.key),
      ...(check.caution && { caution: check.caution }),
    }))
  }

  private readonly take = (event: CustomEvent<{ values: number[] }>) => {
    const { plan, pieces } = this.loaded.value!
    const { values } = event.detail
    const station = this.stationsOf(plan).find(({ key }) => key === this.station)
    const piece = pieces?.find(({ id }) => id === this.piece)
    if (!station || !piece) return
    const value = values.reduce((sum, v) => sum + v, 0) / values.length
    const { by } = session()
    const body: NewReading = {
      key: newKey(),
      piece: piece.id,
      station: station.key,
      stage: this.stage,
      ...(values.length === 1 ? { value } : { values }),
      at: new Date().toISOString(),
      ...(by && { by }),
    }
    const logged = {
      where: `Piece ${piece.number}, ${station.name}, ${this.stage}`,
      value,
      limits: station.limits,
      ...(values.length > 1 && { outOfRound: Math.max(...values) - Math.min(...values) }),
      state: 'sending' as const,
      piece: piece.id,
      station: station.key,
      stage: this.stage,
    }
    this.logged = logged
    this.taken = [
      ...this.taken,
      { piece: piece.id, station: station.key, values, stage: this.stage, key: body.key, stored: false },
    ]
    void this.send(body, logged)
    this.moveOn(plan, pieces!)
  }

  private async send(body: NewReading, logged: NonNullable<typeof this.logged>): Promise<void> {
    const outcome = await outbox().send({ kind: 'reading', job: this.jobId, body })
    if (this.logged === logged)
      this.logged = {
        ...logged,
        state: outcome.state,
        ...(outcome.state !== 'stored' && { why: outcome.why }),
      }
    if (outcome.state === 'refused') this.taken = this.taken.filter(({ key }) => key !== body.key)
    if (outcome.state === 'stored')
      this.taken = this.taken.map((t) => (t.key === body.key ? { ...t, stored: true } : t))
    if (outcome.state === 'stored') this.fetchSoon(false)
    this.requestUpdate()
  }

  private moveOn({ checkStations }: Plan, pieces: readonly Piece[]): void {
    if (this.then === 'station') {
      const at = checkStations.findIndex(({ key }) => key === this.station)
      this.station = (checkStations[at + 1] ?? checkStations[0])!.key
      if (at + 1 >= checkStations.length) this.piece = pieceAfter(pieces, this.piece)
    } else {
      const next = pieceAfter(pieces, this.piece)
      if (next === this.piece) {
        const at = checkStations.findIndex(({ key }) => key === this.station)
        this.station = (checkStations[at + 1] ?? checkStations[at])!.key
        this.piece = pieces.find(({ spoiled }) => !spoiled)?.id ?? this.piece
      } else this.piece = next
    }
    this.keepPlace()
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private readonly measureAgain = () => {
    if (!this.logged) return
    const { piece, station, stage } = this.logged
    this.piece = piece
    this.station = station
    this.changeStage(stage)
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private changeStage(stage: ReadingStage): void {
    const other = stage !== this.stage
    this.stage = stage
    this.keepPlace()
    if (other) this.fetchMatch()
  }

  override render() {
    return this.loaded.shown((batch) => this.page(batch), this.fetch)
  }

  private page({ job, plan, pieces }: Batch): TemplateResult {
    if (!pieces) {
      return html`<div class="page"><h1>Checks</h1><section class="card"><p>Readings belong to numbered pieces: <a href=${jobPath(job.id, 'rack')}>start the batch on the rack</a> first.</p></section></div>`
    }
    if (plan.checkStations.length === 0) {
      return html`<div class="page"><h1>Checks</h1><section class="card"><p>This profile has no place that calipers can reach: mark one on the <a href=${jobPath(job.id, 'profile')}>profile</a> of the next batch.</p></section></div>`
    }
    return html`<div class="page"><h1>Checks</h1>${waitingNotice({ plan, pieces }, this.jobId)} ${this.bench(plan, pieces)} ${this.spread(plan, pieces)}</div>`
  }

  private bench(plan: Plan, pieces: readonly Piece[]): TemplateResult {
    const style = lengthStyle(plan.job.units)
    const stations = this.stationsOf(plan)
    const station = stations.find(({ key }) => key === this.station)
    const piece = pieces.find(({ id }) => id === this.piece)
    return html`<div class="bench no-print">
      <section class="card" aria-label="What is read">
        <div>
          <p class="label" id="stage">The piece is now</p>
          <div class="stages" role="group" aria-labelledby="stage">
            ${stages.map(([stage, name]) => html`<button type="button" class=${stage === this.stage ? 'main' : ''} aria-pressed=${stage === this.stage} @click=${() => this.changeStage(stage)}>${name}</button>`)}
          </div>
        </div>
        <verdict-piece .pieces=${pieces.filter(({ spoiled }) => !spoiled)} .chosen=${this.piece} @piece-chosen=${(event: CustomEvent<{ id: string }>) => this.goTo(event.detail.id, this.station)}></verdict-piece>
        <verdict-stations .stations=${stations} .chosen=${this.station} .lengthStyle=${style} @station-chosen=${(event: CustomEvent<{ key: string }>) => this.goTo(this.piece, event.detail.key)}></verdict-stations>
        <div>
          <p class="label" id="then">After a reading go to</p>
          <div class="then" role="group" aria-labelledby="then">
            ${this.thenButton('station', 'the next station')} ${this.thenButton('piece', 'the next piece')}
          </div>
        </div>
      </section>
      <section class="card entry" aria-label="Reading and verdict">
        <verdict-panel .logged=${this.logged} .lengthStyle=${style} @measure-again=${this.measureAgain}></verdict-panel>
        <verdict-entry .station=${station} .where=${piece && station ? `Piece ${piece.number}, ${station.name}, ${this.stage}` : ''} .lengthStyle=${style} @reading-taken=${this.take}></verdict-entry>
        <p class="caution small">Read on a stopped lathe; only spring calipers with rounded tips may touch turning work.</p>
      </section>
    </div>`
  }

  private goTo(piece: string, station: string): void {
    this.piece = piece
    this.station = station
    this.keepPlace()
    void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  private thenButton(then: 'station' | 'piece', name: string): TemplateResult {
    return html`<button type="button" class=${this.then === then ? 'main' : ''} aria-pressed=${this.then === then} @click=${() => {
      this.then = then
      this.keepPlace()
    }}>${name}</button>`
  }

  private spread(plan: Plan, pieces: readonly Piece[]): TemplateResult {
    const style = lengthStyle(plan.job.units)
    const names = Object.fromEntries(
      plan.checkStations.map((check) => [check.key, checkName(check, plan.job.profile)]),
    )
    const numbers = numbersOf(pieces)
    const now = this.setNow()
    return html`<section class="card">
      <h2>The set, ${this.stage}</h2>
      ${this.matched.failure ? html`<div class="problem" role="alert"><p>${this.matched.failure.message}</p><p><button type="button" @click=${this.fetchMatch}>Try again</button></p></div>` : nothing}
      ${
        now
          ? html`<spread-plot .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style}></spread-plot>
            <spread-figures .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style}></spread-figures>
            <spread-pieces .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style} .wanted=${plan.job.quantity}></spread-pieces>`
          : this.matched.failure
            ? nothing
            : html`<p class="soft" role="status">Fetching the readings…</p>`
      }
    </section>`
  }
}

const numbersOf = (pieces: readonly Piece[]): Record<string, number> =>
  Object.fromEntries(pieces.map(({ id, number }) => [id, number]))

/** The next piece by number that is not spoiled; the same one at the end of the rack. */
function pieceAfter(pieces: readonly Piece[], id: string): string {
  const good = pieces.filter(({ spoiled }) => !spoiled)
  const at = good.findIndex((piece) => piece.id === id)
  return (good[at + 1] ?? good[at])?.id ?? ''
}

declare global {
  interface HTMLElementTagNameMap {
    'checks-page': ChecksPage
  }
}
