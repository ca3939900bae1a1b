import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { CutOrder } from '../../shared/cutting/board.ts'
import { gradeNames, yardGrades } from '../../shared/cutting/grade-names.ts'
import { type PutBack, shortfallOf } from '../../shared/cutting/pick.ts'
import { newKey } from '../api.ts'
import { cutSearch } from '../cut-search.ts'
import '../elements/ask-twice.ts'
import { fetchDefects } from '../elements/yard-board-entry.ts'
import '../elements/yard-verdict.ts'
import '../elements/yard-visit.ts'
import type { WaitingLine } from '../elements/outbox-notice.ts'
import { keptChoice } from '../lumber-choice.ts'
import { offlineState, watchOffline } from '../offline.ts'
import { outbox } from '../outbox.ts'
import { jobsNamed } from '../router.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boughtBoards } from '../yard-bought.ts'
import { type PileAct, YardDesk } from '../yard-desk.ts'
import type { BoardEntry } from '../yard-entry.ts'
import { fetchGround, keptGround } from '../yard-needs.ts'
import { type Choice, choiceOf, listPriceOf, orderOf, sumOf, wantedOrder } from '../yard-order.ts'
import { Purchase } from '../yard-purchase.ts'
import { YardSearch } from '../yard-search.ts'
import { isAboutTallies } from '../yard-shelf.ts'
import { nextNumber, onPile, type PulledBoard, type YardTally } from '../yard-tally.ts'
import {
  boardWords,
  forWords,
  groundWords,
  headline,
  shortfallWords,
  signalWords,
  sumWords,
  underWords,
  wantedCount,
  wantedWords,
} from '../yard-words.ts'

const later = () => import('../yard-later.ts')
const enough = () => import('../yard-enough.ts')
const notice = () => import('../elements/outbox-notice.ts')

/** Fetches all that the page shows only when it comes to it, where the browser does not keep it by itself. */
export const fetchParts = (): Promise<unknown> => Promise.all([later(), enough(), notice(), fetchDefects()])

/** Fetches a part; where it cannot be had now, it is asked for again with the next press. */
const show = (fetchPart: () => Promise<unknown>) => void fetchPart().catch(() => {})

/** At the yard: boards entered as they are pulled, and after each whether they are enough and which go back. */
@customElement('yard-page')
export class YardPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .page {
        gap: var(--space-4);
      }
      .head {
        display: grid;
        gap: var(--space-1);
      }
      .verdict {
        position: sticky;
        top: 0;
        z-index: 1;
        background: var(--ground);
        padding-bottom: var(--space-1);
      }
      .two {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
        align-items: start;
      }
      .side {
        display: grid;
        gap: var(--space-4);
        grid-template-columns: minmax(0, 1fr);
      }
      .begin {
        width: 100%;
        min-height: 3.5rem;
        margin-top: var(--space-2);
      }
      yard-buying:not(:defined) {
        display: block;
        min-height: 12rem;
      }
      .large {
        font-size: 1.125rem;
      }
      @media (min-width: 60rem) {
        .two {
          grid-template-columns: minmax(0, 27rem) minmax(0, 1fr);
        }
      }
      @media (max-width: 30rem) {
        .card {
          padding: var(--space-3) var(--space-2);
        }
      }
    `,
  ]

  private readonly desk = new YardDesk(
    this,
    {
      storage: localStorage,
      now: () => new Date(),
      mark: () => newKey().replace(/-/g, '').slice(0, 6),
      style: ({ units }) => lengthStyle(units),
    },
    keptGround(),
  )
  private readonly search = new YardSearch(this, cutSearch)
  /** Whether the server answered when it was last asked. */
  @state() private isAnswered?: boolean
  /** A visit begins with what it is about. */
  @state() private isVisitOpen = this.desk.tally.needs.length + this.desk.tally.boards.length === 0
  /** Boards that are sent and neither kept on this device nor stored by the server yet; their tally stays open. */
  private purchase?: { tally: YardTally; boards: readonly PulledBoard[]; sent: Purchase } | undefined
  /** Whether the boards may be bought: they are enough, or are to be bought all the same. */
  @state() private isBuying = false
  private readonly ends: (() => void)[] = []

  constructor() {
    super()
    new SessionController(this)
  }

  override connectedCallback() {
    super.connectedCallback()
    addEventListener('storage', this.heed)
    addEventListener('online', this.ask)
    this.ends.push(
      outbox().watch(() => this.settle()),
      watchOffline(() => this.requestUpdate()),
    )
    // What has the focus must not lie under the verdict.
    document.documentElement.style.scrollPaddingTop = '7rem'
    void this.renew()
  }

  override disconnectedCallback() {
    removeEventListener('storage', this.heed)
    removeEventListener('online', this.ask)
    for (const end of this.ends.splice(0)) end()
    document.documentElement.style.scrollPaddingTop = ''
    super.disconnectedCallback()
  }

  private readonly heed = (event: StorageEvent) => {
    if (isAboutTallies(event)) this.desk.again()
  }

  private readonly ask = () => void this.renew()

  private async renew(): Promise<void> {
    try {
      this.desk.renew(await fetchGround(new Date().toISOString()))
      this.isAnswered = true
    } catch {
      this.isAnswered = false
    }
    this.beginNamed()
  }

  /** Begins for the jobs that the address names, once; else for those ticked where the yard was asked. */
  private beginNamed(): void {
    const named = jobsNamed(location.search)
    if (named.length === 0) {
      this.desk.beginAsked(keptChoice().jobs)
      return
    }
    history.replaceState(null, '', location.pathname)
    this.takeUp(() => this.desk.begin(named))
  }

  /** What the search is asked; why it cannot be where the jobs do not go together. */
  private asked(): { order?: CutOrder | undefined; why?: string } {
    try {
      return { order: this.desk.tally.bought ? undefined : orderOf(this.desk.tally) }
    } catch (problem) {
      return { why: `These jobs cannot be bought for together: ${(problem as Error).message}.` }
    }
  }

  protected override willUpdate(): void {
    const { width } = this.desk.entry
    if (this.desk.tally.boards.length > 0 || width) show(later)
    this.search.want(this.asked().order)
    const { needs, boards, bought } = this.desk.tally
    // Once it is there it stays, though the next board is still looked into.
    if (boards.length > 0 && (needs.length === 0 || this.choice?.missing === 0)) this.isBuying = true
    if (this.isBuying) show(enough)
    if (this.purchase || bought) show(notice)
  }

  private get wanted(): CutOrder | undefined {
    const { needs } = this.desk.tally
    return needs.length === 0 || this.asked().why ? undefined : wantedOrder(needs)
  }

  private get choice(): Choice | undefined {
    const { found } = this.search
    return found && choiceOf(this.desk.tally, found.order, found.plan)
  }

  override render() {
    const { desk } = this
    const { tally } = desk
    const { choice } = this
    const isFirst = tally.boards.length === 0
    return html`<div class="page">
      <div class="head">
        <h1>At the yard</h1>
        <p class="small soft">${tally.name} · for ${forWords(tally)}</p>
        ${tally.bought ? nothing : this.needs()}
      </div>
      ${desk.keeps ? nothing : html`<p class="problem" role="alert">This device has no room to keep what you enter: leave this page open until the boards are bought.</p>`}
      ${tally.bought ? this.bought() : html`<div class="verdict">${this.verdict(choice)}</div>`}
      ${isFirst ? this.visit() : nothing}
      ${this.purchase?.tally.id === tally.id ? this.unsafe() : this.work(choice)}
    </div>`
  }

  private work(choice: Choice | undefined): TemplateResult {
    const { desk } = this
    const { tally } = desk
    return html`<div class="two">
        ${tally.bought ? nothing : this.entry()}
        <div class="side">
          ${
            tally.bought || !choice
              ? nothing
              : html`<yard-answer .choice=${choice} .tally=${tally} ?searching=${this.search.isSearching}
                  @restack=${(event: CustomEvent<PutBack>) => desk.restack(event.detail)}></yard-answer>`
          }
          ${this.troubles()}
          ${this.pile(choice)} ${this.buying(choice)} ${tally.boards.length === 0 ? nothing : this.visit()}
        </div>
      </div>`
  }

  private needs(): TemplateResult {
    const { tally, style } = this.desk
    return html`<ul class="plain small">${tally.needs.map((need) => {
      const name = tally.needs.length > 1 ? `${need.name}: ` : ''
      return wantedWords(need, style).map((line) => html`<li>${name}${line}</li>`)
    })}</ul>`
  }

  private verdict(choice: Choice | undefined): TemplateResult {
    const { tally } = this.desk
    const pile = onPile(tally)
    const sum = sumWords(sumOf(pile, tally), tally.currency)
    if (choice)
      return html`<yard-verdict .headline=${headline(choice)} .sum=${underWords(choice, tally.currency)}></yard-verdict>`
    const { wanted, spare } = wantedCount(tally.needs)
    const text = this.search.isSearching
      ? 'Looking…'
      : wanted > 0
        ? `${wanted} blanks wanted`
        : 'Counting only'
    return html`<yard-verdict .headline=${{ state: 'none', text }} .sum=${pile.length > 0 ? sum : spare}></yard-verdict>`
  }

  private entry(): TemplateResult {
    const { desk } = this
    const { tally } = desk
    const top = onPile(tally).at(-1)
    const step = tally.steps.at(-1)
    return html`<section class="card" aria-label="Board">
      <yard-board-entry
        .entry=${desk.entry}
        .lengthStyle=${desk.style}
        .currency=${tally.currency}
        .number=${nextNumber(tally)}
        .listPrice=${this.listPrice()}
        .last=${top ? boardWords(top, desk.style) : ''}
        .undoable=${step?.label ?? ''}
        .errors=${desk.errors}
        .caution=${this.caution()}
        @entered=${(event: CustomEvent<BoardEntry>) => desk.enter(event.detail)}
        @add=${this.add}
        @again=${() => desk.same()}
        @undo=${() => desk.undo()}
        @leave=${() => desk.leave()}
      ></yard-board-entry>
    </section>`
  }

  private listPrice(): string {
    const { entered, entry, tally } = this.desk
    if (!entered) return ''
    const price = listPriceOf(tally, {
      nominal: entry.nominal,
      thickness: entered.thickness,
      grade: tally.grade,
    })
    return price === undefined ? '' : String(price)
  }

  /** Nothing wanted can come from the board in the keys. */
  private caution(): string {
    const { entered, style } = this.desk
    const { wanted } = this
    const shortfall = entered && wanted && shortfallOf(entered, wanted)
    return shortfall ? shortfallWords(shortfall, style) : ''
  }

  private troubles(): TemplateResult | typeof nothing {
    const { why } = this.asked()
    if (why) return html`<p class="problem" role="alert">${why}</p>`
    const { failure } = this.search
    if (!failure) return nothing
    return html`<div class="problem" role="alert">
      <p>The boards are kept, but no choice could be worked out: ${failure}</p>
      <p><button type="button" @click=${() => this.search.again()}>Try again</button></p>
    </div>`
  }

  private pile(choice: Choice | undefined): TemplateResult | typeof nothing {
    const { desk } = this
    const { tally } = desk
    if (tally.boards.length === 0) return nothing
    return html`<section class="card" aria-labelledby="pile">
      <h2 id="pile">${tally.bought ? 'Tally' : 'On the pile, the top first'}</h2>
      <p>${sumWords(sumOf(onPile(tally), tally), tally.currency)} <span class="soft">as this yard tallies</span></p>
      ${tally.bought ? nothing : html`<p class="hint">Press a board to change it, to take it anyway or to strike it out.</p>`}
      <yard-pile .tally=${tally} .choice=${choice} .wanted=${this.wanted} .lengthStyle=${desk.style}
        @act=${(event: CustomEvent<{ number: number; act: PileAct }>) => this.act(event.detail)}></yard-pile>
    </section>`
  }

  private buying(choice: Choice | undefined): TemplateResult | typeof nothing {
    const { tally } = this.desk
    if (tally.bought || onPile(tally).length === 0) return nothing
    if (!this.isBuying)
      return html`<button type="button" @click=${() => {
        this.isBuying = true
      }}>Buy these though they are too few</button>`
    return html`<yard-buying .tally=${tally} .choice=${choice} @bought=${(event: CustomEvent<PulledBoard[]>) => this.buy(event.detail)}>Fetching…</yard-buying>`
  }

  private buy(boards: readonly PulledBoard[]): void {
    const { tally } = this.desk
    // Into the outbox first: should the battery die between the two, buying again sends the same boards under the same keys.
    this.purchase = { tally, boards, sent: new Purchase(outbox(), boughtBoards(tally, boards)) }
    this.settle()
    // That it is done stands at the top.
    scrollTo(0, 0)
  }

  /** Closes the tally whose boards were bought, once they are safe. */
  private settle(): void {
    const { purchase } = this
    if (purchase?.sent.isSafe) {
      this.purchase = undefined
      this.desk.close(purchase.boards, purchase.tally)
    }
    this.requestUpdate()
  }

  private unsafe(): TemplateResult {
    return html`<div class="problem" role="alert">
        <p class="large">Bought, but not stored anywhere yet: this device has no room to keep the boards, and the server does not have them all.</p>
        <p>Leave this page open until it has; the tally is closed then. Should the page be closed before, press “Bought” once more: each board is stored once.</p>
      </div>
      ${this.waiting()}`
  }

  private bought(): TemplateResult {
    const { tally } = this.desk
    const day = new Date(tally.bought!).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short' })
    return html`<div class="notice" role="status">
        <p class="large">Bought ${day}: ${sumWords(sumOf(onPile(tally), tally), tally.currency)}.</p>
        <div class="buttons">
          <a class="button" href="/lumber/boards">Boards on hand</a>
          <button type="button" @click=${() => this.takeUp(() => this.desk.fresh())}>New tally</button>
        </div>
      </div>
      ${this.waiting()}`
  }

  private waiting(): TemplateResult | typeof nothing {
    const box = outbox()
    const lines = box.waiting().flatMap(({ sending, refused }): WaitingLine[] => {
      if (sending.kind !== 'board') return []
      const line = { key: sending.body.key, text: `Board ${sending.body.key}` }
      return [refused === undefined ? line : { ...line, refused }]
    })
    return html`<outbox-notice .lines=${lines} .keeps=${box.keeps} @send-now=${() => void box.flush()}
      @take-out=${(event: CustomEvent<{ key: string }>) => box.drop(event.detail.key)}></outbox-notice>`
  }

  private readonly begin = async () => {
    this.isVisitOpen = false
    await this.toKeys()
  }

  private async toKeys(): Promise<void> {
    await this.updateComplete
    this.renderRoot.querySelector('.two')?.scrollIntoView()
  }

  private readonly add = () => {
    const isFirst = this.desk.tally.boards.length === 0
    this.desk.add()
    // What the visit is about makes room; the keys must not move under the thumb.
    if (isFirst) void this.toKeys()
  }

  private act({ number, act }: { number: number; act: PileAct }): void {
    this.desk.act(number, act)
    if (act === 'mend') void this.toKeys()
  }

  private takeUp(take: () => void): void {
    take()
    this.isBuying = false
    const { needs, boards } = this.desk.tally
    this.isVisitOpen = needs.length + boards.length === 0
    scrollTo(0, 0)
  }

  private visit(): TemplateResult {
    const { desk } = this
    const { tally, ground } = desk
    const chosen = new Set(tally.needs.map(({ job }) => job))
    const wood = tally.needs[0]?.species
    const gone = tally.needs.filter(({ job }) => !ground.needs.some((need) => need.job === job))
    const jobs = [...gone, ...ground.needs].map((need) => ({
      ...need,
      isChosen: chosen.has(need.job),
      isOther: wood !== undefined && need.species !== wood,
    }))
    return html`<section class="card" aria-labelledby="visit">
      <h2 id="visit">This visit</h2>
      <p class="small soft">${signalWords(offlineState())}</p>
      <details ?open=${this.isVisitOpen} @toggle=${(event: Event) => {
        this.isVisitOpen = (event.target as HTMLDetailsElement).open
      }}>
        <summary>Jobs, yard, other tallies</summary>
        <yard-visit .name=${tally.name} .jobs=${jobs} .yards=${ground.yards.map(({ name }) => name)} .yard=${tally.terms?.name ?? ''}
          .grades=${grades} .grade=${tally.grade ?? ''} .others=${desk.others().map((other) => ({ id: other.id, name: other.name, about: other.bought ? 'bought' : sumWords(sumOf(onPile(other), other), other.currency) }))}
          .asOf=${groundWords(ground.at, this.isAnswered)} ?closed=${tally.bought !== undefined}
          @rename=${(event: CustomEvent<string>) => desk.rename(event.detail)}
          @jobs=${(event: CustomEvent<string[]>) => desk.choose(event.detail)}
          .woods=${wood === undefined ? [['', 'not said'], ...ground.woods.map(({ key, name }) => [key, name])] : []} .wood=${tally.species ?? ''}
          @wood=${(event: CustomEvent<string>) => desk.chooseWood(event.detail)}
          @yard=${(event: CustomEvent<string>) => desk.chooseYard(event.detail)}
          @grade=${(event: CustomEvent<string>) => desk.chooseGrade(event.detail)}
          @open=${(event: CustomEvent<string>) => this.takeUp(() => desk.open(event.detail))}
          @fresh=${() => this.takeUp(() => desk.fresh())}
          @throw-away=${() => this.takeUp(() => desk.throwAway())}></yard-visit>
        ${tally.boards.length === 0 ? html`<p><button type="button" class="main begin" @click=${this.begin}>Enter boards</button></p>` : nothing}
      </details>
    </section>`
  }
}

const grades = [['', 'not said'] as const, ...yardGrades.map((grade) => [grade, gradeNames[grade]] as const)]
