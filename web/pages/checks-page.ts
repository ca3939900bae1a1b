import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { JobMatch } from '../../shared/contract/match.ts'
import { moments } from '../../shared/matching/moments.ts'
import type { ReadingStage } from '../../shared/matching/reading.ts'
import type { SetFile } from '../../shared/matching/set.ts'
import { setOfReadings } from '../../shared/matching/set-of-readings.ts'
import type { Piece, StoredReading } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { makesHands } from '../../shared/route/hands.ts'
import { type NewReading, newKey, readingsOf, takeBackReading } from '../api.ts'
import '../elements/check-readings.ts'
import { checkName } from '../elements/operation-words.ts'
import '../elements/spread-figures.ts'
import '../elements/spread-pieces.ts'
import '../elements/spread-plot.ts'
import { readingAt } from '../elements/spread-set.ts'
import '../elements/verdict-entry.ts'
import type { VerdictEntry } from '../elements/verdict-entry.ts'
import type { Logged } from '../elements/verdict-panel.ts'
import '../elements/verdict-panel.ts'
import '../elements/verdict-piece.ts'
import type { StationToRead } from '../elements/verdict-stations.ts'
import '../elements/verdict-stations.ts'
import { seenBatch, seenMatch } from '../last-seen.ts'
import { Load } from '../load.ts'
import { outbox } from '../outbox.ts'
import { jobPath } from '../router.ts'
import { lengthStyle, SessionController, session } from '../session.ts'
import { type Batch, PAUSE, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { type CheckPlace, keepPlace, keptPlace, placeAfter, settledPlace } from './check-place.ts'
import { lastSeenNotice } from './last-seen-notice.ts'
import { type MatchedSet, SetInHand } from './set-in-hand.ts'
import { waitingNotice } from './waiting-notice.ts'

const stages: [ReadingStage, string][] = [
  ['sized', 'Sized'],
  ['turned', 'Turned'],
  ['sanded', 'Sanded'],
  ['finished', 'Finished'],
]

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
      details.card {
        display: block;
        padding-block: 0;
      }
      details.card > :last-child:not(summary) {
        margin-bottom: var(--space-3);
      }
      .entry {
        gap: var(--space-2);
        scroll-margin-top: var(--space-1);
      }
      @media (max-width: 60rem) {
        .entry {
          order: -1;
        }
      }
      @media (max-width: 30rem) {
        .page {
          gap: var(--space-2);
        }
        h1 {
          font-size: var(--size-large);
        }
        .entry {
          padding: var(--space-2);
          margin-inline: calc(-1 * var(--space-2));
        }
      }
    `,
  ]

  @property() jobId = ''
  @state() private place: CheckPlace = keptPlace('')
  @state() private logged?: Logged & Pick<CheckPlace, 'piece' | 'station' | 'stage'>
  /** False while the page shows what was fetched before the connection went. */
  @state() private now = true
  @state() private takeBackFailure = ''
  @query('.entry') private card?: HTMLElement
  @query('verdict-entry') private entry?: VerdictEntry
  private readonly loaded = new Load<Batch>(this)
  private readonly matched = new Load<{ stage: ReadingStage; match: JobMatch }>(this)
  private readonly stored = new Load<StoredReading[]>(this)
  private inHand = new SetInHand()
  private stops: (() => void)[] = []
  private soon: ReturnType<typeof setTimeout> | undefined

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback(): void {
    super.connectedCallback()
    const again = () => {
      if (!this.now) this.fetchSoon(true)
    }
    addEventListener('online', again)
    this.stops = [
      () => removeEventListener('online', again),
      outbox().watch(() => this.requestUpdate()),
      watchChanges(({ kind, id }) => {
        if (kind === 'job' && id === this.jobId) this.reload()
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
    this.place = keptPlace(this.jobId)
    this.logged = undefined
    this.inHand = new SetInHand()
    this.reload()
  }

  private readonly reload = () =>
    void this.loaded
      .from(async () => {
        const { value, now } = await seenBatch(this.jobId)
        this.now = now
        return value
      })
      .then(() => {
        this.settlePlace()
        if (this.loaded.value?.pieces) this.fetchMatch()
      })

  private readonly fetchMatch = () => {
    const { stage } = this.place
    const held = this.inHand.storedSoFar()
    void this.matched
      .from(async () => {
        const { value, now } = await seenMatch(this.jobId, stage)
        this.now = now
        return { stage, match: value }
      })
      .then(() => {
        if (!this.matched.failure && this.now) this.inHand.noteFetched(stage, held)
        this.requestUpdate()
      })
    void this.stored.from(() => readingsOf(this.jobId))
  }

  private fetchSoon(everything: boolean): void {
    clearTimeout(this.soon)
    this.soon = setTimeout(everything ? this.reload : this.fetchMatch, PAUSE)
  }

  /** Begins with the first piece and station where none is in hand. */
  private settlePlace(): void {
    const { plan, pieces } = this.loaded.value ?? {}
    if (plan && pieces) this.place = settledPlace(this.place, stationKeys(plan), goodPieces(pieces))
  }

  /** The limits of every station at the stage at hand; the same rule judges on the server. */
  private emptySet({ job, checkStations, allowances }: Plan): SetFile {
    return setOfReadings({
      units: job.units,
      stations: checkStations,
      pieces: [],
      readings: [],
      stage: this.place.stage,
      allowances,
      film: job.finish === 'film',
    })
  }

  /** The set at this stage with what was taken here since it was fetched; undefined while it is fetched. */
  private setNow(): MatchedSet | undefined {
    const fetched = this.matched.value
    if (!fetched || fetched.stage !== this.place.stage) return undefined
    const waiting = outbox().waiting(this.jobId)
    const readings = waiting.flatMap(({ sending, refused }) =>
      sending.kind === 'reading' && refused === undefined ? [sending.body] : [],
    )
    return this.inHand.at(this.place.stage, fetched.match, readings)
  }

  private stationsOf(plan: Plan): StationToRead[] {
    const limits = this.emptySet(plan).stations
    const own = this.setNow()?.set.pieces.find(({ key }) => key === this.place.piece)
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
    const { stage } = this.place
    const station = this.stationsOf(plan).find(({ key }) => key === this.place.station)
    const piece = pieces?.find(({ id }) => id === this.place.piece)
    if (!station || !pieces || !piece) return
    const value = moments(values).mean
    const at = { piece: piece.id, station: station.key, stage }
    const logged = {
      ...at,
      where: `Piece ${piece.number}, ${station.name}, ${stage}`,
      value,
      limits: station.limits,
      ...(values.length > 1 && { outOfRound: Math.max(...values) - Math.min(...values) }),
      state: 'sending' as const,
    }
    this.logged = logged
    void this.send({ ...at, ...(values.length === 1 ? { value } : { values }) }, logged)
    this.goTo(placeAfter(this.place, stationKeys(plan), goodPieces(pieces)))
    void this.updateComplete.then(() => this.showEntry())
  }

  /** Keeps verdict, target, reading and keys on the screen together. */
  private showEntry(): void {
    const box = this.card?.getBoundingClientRect()
    if (box && (box.top < 0 || box.bottom > innerHeight)) this.card?.scrollIntoView({ block: 'start' })
  }

  private readonly takeBack = async (event: CustomEvent<{ key: string }>) => {
    const { key } = event.detail
    this.takeBackFailure = ''
    try {
      await takeBackReading(this.jobId, key)
      this.inHand.drop(key)
      this.fetchMatch()
    } catch (failure) {
      this.takeBackFailure = (failure as Error).message
    }
  }

  private async send(
    read: Omit<NewReading, 'key' | 'at' | 'by'>,
    logged: NonNullable<typeof this.logged>,
  ): Promise<void> {
    const { by } = session()
    const body = { key: newKey(), ...read, at: new Date().toISOString(), ...(by && { by }) }
    this.inHand.add(body)
    const outcome = await outbox().send({ kind: 'reading', job: this.jobId, body })
    const why = outcome.state === 'stored' ? {} : { why: outcome.why }
    if (this.logged === logged) this.logged = { ...logged, state: outcome.state, ...why }
    if (outcome.state === 'refused') this.inHand.drop(body.key)
    if (outcome.state === 'stored') {
      this.inHand.noteStored(body.key)
      this.fetchSoon(!this.now)
    }
    this.requestUpdate()
  }

  private readonly measureAgain = () => {
    if (!this.logged) return
    const { piece, station, stage } = this.logged
    this.goTo({ piece, station, stage })
  }

  /** Takes up another piece, station or stage; where the place is new, the cursor waits for its figure. */
  private goTo(change: Partial<CheckPlace>): void {
    const stage = this.place.stage
    this.place = { ...this.place, ...change }
    keepPlace(this.jobId, this.place)
    if (this.place.stage !== stage) this.fetchMatch()
    if (change.piece ?? change.station) void this.updateComplete.then(() => this.entry?.takeFocus())
  }

  override render() {
    return this.loaded.shown((batch) => this.page(batch), this.reload)
  }

  private page({ job, plan, pieces }: Batch): TemplateResult {
    if (!pieces) {
      return html`<div class="page"><h1>Checks</h1><section class="card"><p>Readings belong to numbered pieces: <a href=${jobPath(job.id, 'rack')}>start the batch on the rack</a> first.</p></section></div>`
    }
    if (plan.checkStations.length === 0) {
      return html`<div class="page"><h1>Checks</h1><section class="card"><p>This profile has no place that calipers can reach: mark one on the <a href=${jobPath(job.id, 'profile')}>profile</a> of the next batch.</p></section></div>`
    }
    return html`<div class="page"><h1>Checks</h1>${lastSeenNotice(this.now, this.reload)} ${this.bench(plan, pieces)} ${waitingNotice({ plan, pieces }, this.jobId)} ${this.readings(plan, pieces)} ${this.spread(plan, pieces)}</div>`
  }

  private bench(plan: Plan, pieces: readonly Piece[]): TemplateResult {
    const style = lengthStyle(plan.job.units)
    const stations = this.stationsOf(plan)
    const station = stations.find(({ key }) => key === this.place.station)
    const piece = pieces.find(({ id }) => id === this.place.piece)
    return html`<div class="bench no-print">
      <section class="card" aria-label="What is read">
        <div>
          <p class="label" id="stage">The piece is now</p>
          <div class="stages" role="group" aria-labelledby="stage">
            ${stages.map(([stage, name]) => html`<button type="button" class=${stage === this.place.stage ? 'main' : ''} aria-pressed=${stage === this.place.stage} @click=${() => this.goTo({ stage })}>${name}</button>`)}
          </div>
        </div>
        <verdict-piece ?hands=${makesHands(plan.job)} .pieces=${pieces.filter(({ spoiled }) => !spoiled)} .chosen=${this.place.piece} @piece-chosen=${(event: CustomEvent<{ id: string }>) => this.goTo({ piece: event.detail.id })}></verdict-piece>
        <verdict-stations .stations=${stations} .chosen=${this.place.station} .lengthStyle=${style} @station-chosen=${(event: CustomEvent<{ key: string }>) => this.goTo({ station: event.detail.key })}></verdict-stations>
        <div>
          <p class="label" id="then">After a reading go to</p>
          <div class="then" role="group" aria-labelledby="then">
            ${this.thenButton('station', 'the next station')} ${this.thenButton('piece', 'the next piece')}
          </div>
        </div>
      </section>
      <section class="card entry" aria-label="Reading and verdict">
        <verdict-panel .logged=${this.logged} .lengthStyle=${style} @measure-again=${this.measureAgain}></verdict-panel>
        <verdict-entry .station=${station} .where=${piece && station ? `Piece ${piece.number}, ${station.name}, ${this.place.stage}` : ''} .lengthStyle=${style} @reading-taken=${this.take}></verdict-entry>
        <p class="caution small">Read on a stopped lathe; only spring calipers with rounded tips may touch turning work.</p>
      </section>
    </div>`
  }

  private thenButton(then: CheckPlace['then'], name: string): TemplateResult {
    const pressed = this.place.then === then
    return html`<button type="button" class=${pressed ? 'main' : ''} aria-pressed=${pressed} @click=${() => this.goTo({ then })}>${name}</button>`
  }

  private readings(plan: Plan, pieces: readonly Piece[]): TemplateResult | typeof nothing {
    const piece = pieces.find(({ id }) => id === this.place.piece)
    if (!piece) return nothing
    const own = this.stored.value?.filter((reading) => reading.piece === piece.id)
    return html`<details class="card no-print">
      <summary>Readings of piece ${piece.number}${own ? ` (${own.length})` : ''}</summary>
      ${this.takeBackFailure ? html`<p class="problem" role="alert">${this.takeBackFailure}</p>` : nothing}
      ${
        own
          ? html`<check-readings .readings=${own} .names=${namesOf(plan)} .lengthStyle=${lengthStyle(plan.job.units)} @reading-taken-back=${this.takeBack}></check-readings>`
          : html`<p class="soft">${this.stored.failure?.message ?? 'Fetching the readings…'}</p>`
      }
    </details>`
  }

  private spread(plan: Plan, pieces: readonly Piece[]): TemplateResult {
    const style = lengthStyle(plan.job.units)
    const names = namesOf(plan)
    const numbers = numbersOf(pieces)
    const now = this.setNow()
    return html`<section class="card">
      <h2>The set, ${this.place.stage}</h2>
      ${this.matched.failure ? html`<div class="problem" role="alert"><p>${this.matched.failure.message}</p><p><button type="button" @click=${this.fetchMatch}>Try again</button></p></div>` : nothing}
      ${
        now
          ? html`<spread-plot .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style}></spread-plot>
            <spread-figures .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style}></spread-figures>
            <spread-pieces .set=${now.set} .match=${now.match} .names=${names} .numbers=${numbers} .lengthStyle=${style} .wanted=${plan.job.quantity} .spares=${pieces.flatMap(({ id, spare, spoiled }) => (spare && !spoiled ? [id] : []))}></spread-pieces>`
          : this.matched.failure
            ? nothing
            : html`<p class="soft" role="status">Fetching the readings…</p>`
      }
    </section>`
  }
}

const numbersOf = (pieces: readonly Piece[]): Record<string, number> =>
  Object.fromEntries(pieces.map(({ id, number }) => [id, number]))

const namesOf = ({ checkStations, job }: Plan): Record<string, string> =>
  Object.fromEntries(checkStations.map((check) => [check.key, checkName(check, job.profile)]))

const stationKeys = ({ checkStations }: Plan): string[] => checkStations.map(({ key }) => key)

const goodPieces = (pieces: readonly Piece[]): string[] =>
  pieces.flatMap(({ id, spoiled }) => (spoiled ? [] : [id]))

declare global {
  interface HTMLElementTagNameMap {
    'checks-page': ChecksPage
  }
}
