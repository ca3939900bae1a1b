import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { type PiecePlace, piecePlaces, placeText } from '../../shared/cutting/sheet.ts'
import type { BatchTimes } from '../../shared/estimate/planned-actual.ts'
import type { Piece, Step } from '../../shared/piece.ts'
import { type Plan, partsOf, sheetOf } from '../../shared/plan.ts'
import { makesHands } from '../../shared/route/hands.ts'
import { newKey, stepsOf, takeBackStep } from '../api.ts'
import { batchTimes } from '../api-record.ts'
import { edgesOf } from '../elements/rack-edge-states.ts'
import type { RackPiece, StepDone } from '../elements/rack-piece.ts'
import '../elements/rack-piece.ts'
import type { RackShelf } from '../elements/rack-shelf.ts'
import '../elements/rack-shelf.ts'
import { rackCount, withStep } from '../elements/rack-steps.ts'
import type { StepsDone } from '../elements/rack-whole.ts'
import '../elements/rack-whole.ts'
import '../elements/record-card.ts'
import { FloorLog } from '../floor-log.ts'
import { lastSeen, seenBatch } from '../last-seen.ts'
import { Load } from '../load.ts'
import { outbox, type Sending } from '../outbox.ts'
import { lengthStyle, SessionController, session } from '../session.ts'
import { type Batch, PAUSE, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { lastSeenNotice } from './last-seen-notice.ts'
import './rack-floor.ts'
import { startBatch } from './start-batch.ts'
import { waitingNotice } from './waiting-notice.ts'

/** The batch piece by piece: starting it, logging steps, spoiled pieces, edges that want the stone. */
@customElement('rack-page')
export class RackPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .rack {
        display: grid;
        gap: var(--space-6);
        grid-template-columns: minmax(0, 1fr);
        align-items: start;
      }
      @media (min-width: 60rem) {
        .rack {
          grid-template-columns: minmax(0, 1fr) minmax(22rem, 26rem);
        }
        rack-piece {
          position: sticky;
          top: var(--space-4);
        }
      }
      .start {
        min-height: 4.5rem;
        font-size: 1.375rem;
      }
    `,
  ]

  @property() jobId = ''
  @state() private chosen = ''
  @state() private starting = false
  @state() private startFailure = ''
  @state() private takeBackFailure = ''
  /** False while the page shows what was fetched before the connection went. */
  @state() private now = true
  @query('rack-piece') private inHand?: RackPiece
  @query('rack-shelf') private shelf?: RackShelf
  private readonly loaded = new Load<Batch>(this)
  private readonly logged = new Load<{ piece: string; steps: Step[] }>(this)
  private readonly times = new Load<{ job: string; times: BatchTimes }>(this)
  private readonly floor = new FloorLog(this)
  private places?: { plan: Plan; of: Map<number, PiecePlace[]> }
  private startKey = ''
  /** What this page logged and the server has stored, in the order it was stored. */
  private readonly stored: OfPiece[] = []
  private stops: (() => void)[] = []
  private soon: ReturnType<typeof setTimeout> | undefined

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback(): void {
    super.connectedCallback()
    const again = () => {
      if (!this.now) this.reload()
    }
    addEventListener('online', again)
    this.stops = [
      () => removeEventListener('online', again),
      outbox().watch(() => this.requestUpdate()),
      watchChanges(({ kind, id }) => {
        if ((kind === 'job' && id === this.jobId) || (kind === 'piece' && id.startsWith(this.jobId)))
          this.fetchSoon()
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
    this.chosen = ''
    this.startKey = newKey()
    this.reload()
  }

  private readonly reload = () => {
    const loading = this.loaded.from(async () => {
      const before = this.stored.length
      const { value, now } = await seenBatch(this.jobId)
      this.now = now
      // What was stored meanwhile may not be in an answer that was written before.
      return this.stored.slice(before).reduce(withSent, value)
    })
    void loading.then((batch) => batch?.pieces && this.fetchTimes())
    void this.floor.reload(this.jobId)
    this.fetchSteps()
  }

  private fetchSteps(): void {
    const piece = this.chosen
    if (piece) void this.logged.from(async () => ({ piece, steps: await stepsOf(piece) }))
  }

  private fetchTimes(): void {
    const job = this.jobId
    void this.times.from(async () => ({
      job,
      times: (await lastSeen(`times ${job}`, () => batchTimes(job))).value,
    }))
  }

  private readonly takeBack = async (event: CustomEvent<{ key: string }>) => {
    this.takeBackFailure = ''
    try {
      await takeBackStep(this.chosen, event.detail.key)
      this.reload()
    } catch (failure) {
      this.takeBackFailure = (failure as Error).message
    }
  }

  private fetchSoon(): void {
    clearTimeout(this.soon)
    this.soon = setTimeout(this.reload, PAUSE)
  }

  private readonly start = async () => {
    this.starting = true
    this.startFailure = ''
    try {
      await startBatch(this.jobId, this.startKey)
      this.reload()
    } catch (failure) {
      this.startFailure = (failure as Error).message
    }
    this.starting = false
  }

  private log(pieces: readonly Piece[], { operation, minutes }: StepDone): void {
    const { by } = session()
    const at = new Date().toISOString()
    for (const { id } of pieces) {
      const body = {
        key: newKey(),
        operation,
        at,
        ...(minutes !== undefined && { minutes }),
        ...(by && { by }),
      }
      this.send({ kind: 'step', job: this.jobId, piece: id, body })
    }
  }

  private spoil(piece: Piece, reason: string): void {
    this.send({ kind: 'spoil', job: this.jobId, piece: piece.id, body: { key: newKey(), reason } })
  }

  /** Shows what was logged at once; a refusal brings back what the server has. */
  private send(sending: OfPiece): void {
    this.show(sending)
    this.floor.note(sending)
    void outbox()
      .send(sending)
      .then(({ state }) => {
        if (state === 'stored') {
          this.stored.push(sending)
          this.show(sending)
        }
        if (state === 'refused' || (state === 'stored' && !this.now)) this.reload()
      })
  }

  private show(sending: OfPiece): void {
    if (this.loaded.value) this.loaded.value = withSent(this.loaded.value, sending)
    this.requestUpdate()
  }

  /** The pieces with what is still on its way to the server. */
  private withWaiting(pieces: readonly Piece[], plan: Plan): Piece[] {
    const waiting = outbox().waiting(this.jobId)
    return pieces.map((piece) => {
      let now = piece
      for (const { sending, refused } of waiting) {
        if (refused === undefined && 'piece' in sending && sending.piece === piece.id)
          now = withSending(now, sending, plan)
      }
      return now
    })
  }

  override render() {
    return this.loaded.shown((rack) => this.page(rack), this.reload)
  }

  private page({ plan, pieces }: Batch): TemplateResult {
    return html`<div class="page">
      <div class="page-head"><h1>Rack</h1>${pieces ? this.count(this.withWaiting(pieces, plan)) : nothing}</div>
      ${pieces ? this.rack(plan, this.withWaiting(pieces, plan)) : this.draft(plan)}
    </div>`
  }

  private draft(plan: Plan): TemplateResult {
    const { blank, job } = plan
    const made = partsOf(plan)
    const parts = made / blank.count
    return html`<section class="card">
      <h2>Start the batch</h2>
      <p>Starting fixes the plan as it stands and numbers the pieces. Changes to the job or the shop no longer reach it.</p>
      <dl class="figures">
        <div><dt>Pieces ordered</dt><dd>${job.quantity}</dd></div>
        <div><dt>Blanks that must come out good</dt><dd>${blank.need}</dd>${parts > 1 ? html`<dd class="note">${parts} pieces from each</dd>` : nothing}</div>
        <div><dt>Spare blanks</dt><dd>${blank.spares}</dd></div>
        <div><dt>Blanks to cut</dt><dd>${blank.count}</dd><dd class="note">${made} pieces on the rack</dd></div>
        ${blank.practice > 0 ? html`<div><dt>To practise on, cheap wood</dt><dd>${blank.practice}</dd></div>` : nothing}
      </dl>
      ${blank.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}
      ${this.startFailure ? html`<p class="problem" role="alert">${this.startFailure}</p>` : nothing}
      <p><button type="button" class="main start" ?disabled=${this.starting} @click=${this.start}>${this.starting ? 'Starting…' : `Start the batch of ${made}`}</button></p>
    </section>`
  }

  private count(pieces: readonly Piece[]): TemplateResult {
    const { done, going, waiting, spoiled } = rackCount(pieces)
    return html`<p class="buttons" role="status">
      <span class="mark in">✓ ${done} finished</span>
      <span class="mark going">◐ ${going} begun</span>
      <span class="mark">○ ${waiting} blank</span>
      ${spoiled > 0 ? html`<span class="mark under">✕ ${spoiled} spoiled</span>` : nothing}
    </p>`
  }

  private rack(plan: Plan, pieces: Piece[]): TemplateResult {
    const { job, operations } = plan
    const chosen = pieces.find(({ id }) => id === this.chosen)
    const hands = makesHands(job)
    return html`
      ${lastSeenNotice(this.now, this.reload)} ${waitingNotice({ plan, pieces }, this.jobId)} ${this.fewerThanOrdered(plan, pieces)}
      <rack-floor class="no-print" .jobId=${this.jobId} .plan=${plan} .pieces=${pieces} .log=${this.floor} .floor=${this.floor.now} .away=${this.floor.failure} .missing=${this.floor.isMissing}></rack-floor>
      <div class="rack">
        <section class="card" aria-label="All pieces">
          <rack-shelf ?hands=${hands} .pieces=${pieces} .operations=${operations} .profile=${job.profile} .species=${job.species} .chosen=${this.chosen} @piece-chosen=${this.choose}></rack-shelf>
        </section>
        <rack-piece class="no-print" ?hands=${hands} .piece=${chosen} .place=${chosen ? this.placeOf(plan, chosen) : ''} .operations=${operations} .profile=${job.profile} .species=${job.species} .lengthStyle=${lengthStyle(job.units)}
          .waiting=${outbox().waiting(this.jobId).length} .logged=${this.logged.value?.piece === this.chosen ? this.logged.value.steps : undefined} .takeBackFailure=${this.takeBackFailure} .dull=${this.dull(plan)}
          @step-taken-back=${this.takeBack}
          @step-done=${(event: CustomEvent<StepDone>) => chosen && this.log([chosen], event.detail)}
          @rack-wanted=${() => this.shelf?.showChosen()}
          @piece-spoiled=${(event: CustomEvent<{ reason: string }>) => chosen && this.spoil(chosen, event.detail.reason)}></rack-piece>
      </div>
      <rack-whole .jobId=${this.jobId} .pieces=${pieces} .operations=${operations}
        @steps-done=${({ detail: { pieces, ...done } }: CustomEvent<StepsDone>) => this.log(pieces, done)}></rack-whole>
      <record-card .times=${this.times.value?.job === this.jobId ? this.times.value.times : undefined}></record-card>
    `
  }

  /** Tools whose edge is due by what was logged; none while that is not known. */
  private dull(plan: Plan): string[] {
    if (this.floor.isMissing !== false) return []
    return edgesOf(plan, this.floor.now).flatMap(({ tool, left }) => (left === 0 ? [tool] : []))
  }

  /** Where the wood of a piece was cut; of plans without a blank for it nothing. */
  private placeOf(plan: Plan, { number }: Piece): string {
    if (this.places?.plan !== plan) this.places = { plan, of: piecePlaces(sheetOf(plan)) }
    const places = this.places.of.get(number)
    return places ? placeText(places) : ''
  }

  private readonly choose = async (event: CustomEvent<{ id: string }>) => {
    this.chosen = event.detail.id
    this.takeBackFailure = ''
    this.fetchSteps()
    await this.updateComplete
    await this.inHand?.updateComplete
    this.inHand?.showHeading()
  }

  private fewerThanOrdered({ job }: Plan, pieces: readonly Piece[]): TemplateResult | typeof nothing {
    const good = pieces.filter(({ spoiled }) => !spoiled).length
    if (good >= job.quantity) return nothing
    return html`<p class="problem">Only ${good} of ${job.quantity} pieces can still come out good: ${job.quantity - good} more must be cut, from the same boards if they are to match.</p>`
  }
}

/** What is logged of a piece. */
type OfPiece = Extract<Sending, { piece: string }>

/** The batch with what was logged of one of its pieces. */
function withSent(batch: Batch, sending: OfPiece): Batch {
  const pieces = batch.pieces?.map((piece) =>
    piece.id === sending.piece ? withSending(piece, sending, batch.plan) : piece,
  )
  return { ...batch, ...(pieces && { pieces }) }
}

function withSending(piece: Piece, sending: OfPiece, { operations }: Plan): Piece {
  if (sending.kind === 'step') return withStep(piece, sending.body.operation, operations)
  return piece.spoiled ? piece : { ...piece, spoiled: { reason: sending.body.reason, at: '' } }
}

declare global {
  interface HTMLElementTagNameMap {
    'rack-page': RackPage
  }
}
