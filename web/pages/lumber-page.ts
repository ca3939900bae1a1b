import { html, LitElement, nothing } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import { serviceWords } from '../../shared/cutting/list-words.ts'
import { usualTerms, type YardTerms } from '../../shared/cutting/yard-terms.ts'
import type { Lumber, LumberAsk, PooledCost } from '../../shared/lumber.ts'
import { type CountedTwice, shareWords } from '../../shared/lumber-on-hand.ts'
import type { Shop } from '../../shared/shop.ts'
import { loadText } from '../../shared/units/mass.ts'
import { jobs, lumber, lumberPrintPath } from '../api.ts'
import { type EnteredBill, emptyBill } from '../bill-entry.ts'
import { boardFeetText, priceText } from '../elements/amounts.ts'
import '../elements/ask-twice.ts'
import { choiceField } from '../elements/field.ts'
import '../elements/lumber-bill.ts'
import '../elements/lumber-jobs.ts'
import '../elements/lumber-list.ts'
import '../elements/lumber-message.ts'
import { type EntryDetail, withEntry } from '../entry.ts'
import type { StoredJob } from '../job-file.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { Load } from '../load.ts'
import { keepChoice, keptChoice } from '../lumber-choice.ts'
import { go, jobsNamed, lumberPath, lumberPathFor } from '../router.ts'
import { SessionController } from '../session.ts'
import { type ShopAndWoods, shopAndWoods, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'

const BILL = 'setwright.yard-bill'

interface Ground extends ShopAndWoods {
  jobs: StoredJob[]
}

/** The yard's terms, or the usual ones with the prices of the shop's own table. */
function termsOf({ yards, stock }: Shop, name: string): YardTerms {
  const prices = stock.flatMap(({ pricePerBoardFoot, ...row }) =>
    pricePerBoardFoot === undefined ? [] : { ...row, grade: '*' as const, pricePerBoardFoot },
  )
  return yards.find((yard) => yard.name === name) ?? yards[0] ?? { ...usualTerms, name: '', prices }
}

/** Ask the yard: for one job or several, what to buy, what to write, and whether the bill is right. */
@customElement('lumber-page')
export class LumberPage extends LitElement {
  static override styles = pageWear

  @state() private chosen: string[] = []
  @state() private yard = ''
  @state() private bill: EnteredBill = keptEntry(BILL, emptyBill)
  private readonly ground = new Load<Ground>(this)
  private readonly answer = new Load<Lumber>(this)
  private unwatch?: () => void

  constructor() {
    super()
    new SessionController(this)
    const kept = keptChoice()
    const named = jobsNamed(location.search)
    this.chosen = named.length > 0 ? named : kept.jobs
    this.yard = kept.yard
  }

  override connectedCallback() {
    super.connectedCallback()
    void this.reload()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind !== 'piece') void this.reload()
    })
  }

  override disconnectedCallback() {
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly reload = async () => {
    await this.ground.from(async () => {
      const [known, all] = await Promise.all([shopAndWoods(), jobs()])
      return { ...known, jobs: all }
    })
    const ground = this.ground.value
    if (!ground) return
    // A job or a yard that is gone is no longer chosen.
    this.chosen = this.chosen.filter((id) => ground.jobs.some((job) => job.id === id))
    if (!ground.shop.yards.some(({ name }) => name === this.yard)) this.yard = ''
    await this.askYard()
  }

  private async askYard() {
    const { chosen, yard } = this
    keepChoice({ jobs: chosen, yard })
    if (chosen.length > 0) await this.answer.from(() => lumber(chosen, yard || undefined))
  }

  private readonly choose = (event: CustomEvent<string[]>) => {
    this.chosen = event.detail
    // From now on the choice holds, not the address.
    if (location.search) go(lumberPath('lumber'), { replace: true })
    void this.askYard()
  }

  private readonly enterBill = (event: CustomEvent<EntryDetail>) => {
    const { path, value } = event.detail
    this.bill = withEntry(this.bill, path, value)
    keepEntry(BILL, this.bill)
  }

  override render() {
    return this.ground.shown(
      (ground) => this.page(ground),
      () => void this.reload(),
    )
  }

  private page(ground: Ground) {
    const { woods } = ground
    return html`
      <div class="page">
        <div class="page-head">
          <h1>Ask the yard</h1>
          <div class="buttons no-print">
            ${
              this.chosen.length > 0
                ? html`<a class="button" href=${lumberPrintPath(this.chosen, this.yard || undefined)} target="_blank">List to print</a>`
                : nothing
            }
            <a class="button" href=${lumberPathFor(this.chosen, 'yard')}>At the yard</a>
          </div>
        </div>
        <section class="card" aria-labelledby="jobs">
          <h2 id="jobs">For which jobs</h2>
          <lumber-jobs .jobs=${ground.jobs} .woods=${woods} .chosen=${this.chosen} .twice=${this.twice()} @choose=${this.choose}></lumber-jobs>
          ${this.yards(ground.shop)}
        </section>
        ${
          this.chosen.length === 0
            ? html`<p class="soft">Choose a job to see what to ask for.</p>`
            : this.answer.shown(
                (answer) => this.answered(answer, ground),
                () => void this.askYard(),
              )
        }
        ${this.bills(ground)}
      </div>
    `
  }

  private yards({ yards }: Shop) {
    if (yards.length === 0)
      return html`<p class="small soft">
        Prices are those of the shop’s own table. A yard with its own prices, tally and least charge is entered on the
        <a href="/shop">Shop page</a>.
      </p>`
    return html`<div class="fields">
      ${choiceField({
        path: 'yard',
        label: 'Yard',
        wide: true,
        value: this.yard || yards[0]!.name,
        choices: yards.map(({ name }) => [name, name] as const),
        enter: (name) => {
          this.yard = name
          void this.askYard()
        },
      })}
    </div>`
  }

  /** What is known of boards that several jobs count on; while jobs are chosen, for only then it is asked. */
  private twice(): readonly CountedTwice[] {
    return this.chosen.length > 0 ? (this.answer.value?.countedTwice ?? []) : []
  }

  /** Which boards on hand yield what, and what is left to buy. */
  private onHand({ onHand }: Lumber) {
    if (onHand.length === 0) return nothing
    return html`<section class="card" aria-labelledby="on-hand">
      <h2 id="on-hand">From the boards on hand</h2>
      <ul class="plain">${onHand.map((share) => html`<li><strong>${share.job.name}</strong>: ${shareWords(share)}</li>`)}</ul>
    </section>`
  }

  private answered(answer: Lumber, { shop: { units } }: Ground) {
    const { asks, boardFeet, mass, cost, currency, pooled, messages, services, notes } = answer
    if (asks.length === 0)
      return html`<p class="notice">Nothing to buy: the boards on hand yield every blank.</p>
        ${this.onHand(answer)}`
    return html`
      ${this.onHand(answer)}
      <section class="card" aria-labelledby="all">
        <h2 id="all">In all</h2>
        <dl class="figures">
          <div><dt>To ask for</dt><dd>${boardFeet} bd ft</dd></div>
          <div><dt>About</dt><dd>${cost === undefined ? 'no price yet' : priceText(cost, currency)}</dd></div>
          <div><dt>To carry</dt><dd>${mass === undefined ? 'not known' : loadText(mass, units)}</dd></div>
        </dl>
        ${notes.map((note) => html`<p class="caution"><span>${note}</span></p>`)}
        ${pooled.map((pool) => this.pooled(pool, currency))}
        ${
          services.length > 0
            ? html`<p>
                The yard also does:
                ${services.map((each) => serviceWords(each, (amount) => priceText(amount, currency))).join('; ')}.
              </p>`
            : nothing
        }
        ${messages.map(
          (text, i) =>
            html`<lumber-message .text=${text} .name=${messages.length > 1 ? `Message ${i + 1} of ${messages.length}` : 'Message to the yard'}></lumber-message>`,
        )}
      </section>
      ${asks.map((ask, i) => this.ask(ask, i, answer, units))}
    `
  }

  private ask({ list, wood, jobs: of }: LumberAsk, i: number, { currency }: Lumber, units: Shop['units']) {
    return html`<section class="card" aria-labelledby="ask-${i}">
      <div>
        <h2 id="ask-${i}">${wood}${list.nominal ? `, ${list.nominal}` : ''}</h2>
        <p class="small soft">for ${of.map(({ name }) => name).join(', ')}</p>
      </div>
      <lumber-list .list=${list} .wood=${wood} .units=${units} .currency=${currency}></lumber-list>
    </section>`
  }

  private pooled({ wood, jobs: names, priced, apart, together, saved }: PooledCost, currency: string) {
    const text = (amount: number) => (priced ? priceText(amount, currency) : boardFeetText(amount))
    const boards = (n: number) => `${n} ${n === 1 ? 'board' : 'boards'}`
    return html`<p>
      <strong>${wood}</strong> for ${names.join(', ')}: ${text(together.cost)} in ${boards(together.boards)} together,
      ${text(apart.cost)} in ${boards(apart.boards)} job by job.
      ${saved > 0 ? `Buying together saves ${text(saved)}.` : 'Buying together saves nothing here.'}
      ${
        together.proven
          ? 'No choice of the usual boards does with less.'
          : `No choice of the usual boards does with less than ${text(together.lowerBound)}.`
      }
    </p>`
  }

  private bills({ shop: settings, woods }: Ground) {
    const { asks = [] } = this.answer.value ?? {}
    const terms = termsOf(settings, this.yard)
    return html`<section class="card" aria-labelledby="bill">
      <div>
        <h2 id="bill">The yard’s bill</h2>
        <p class="small soft">
          Typed in line by line it is gone over by ${terms.name ? `the terms of ${terms.name}` : 'the usual tally and the shop’s prices'}.
          It is kept on this device.
        </p>
      </div>
      <lumber-bill
        .entered=${this.bill}
        .terms=${terms}
        .woods=${woods}
        .units=${settings.units}
        .currency=${settings.currency}
        .species=${asks[0]?.list.species ?? ''}
        @entry=${this.enterBill}
      ></lumber-bill>
      ${
        this.bill.lines.length + this.bill.services.length > 0
          ? html`<ask-twice class="no-print" danger label="Clear the bill" answer="Yes, clear it" question="Clear the bill? What was typed is gone then." @confirmed=${this.clear}></ask-twice>`
          : nothing
      }
    </section>`
  }

  private readonly clear = () => {
    this.bill = emptyBill
    keepEntry(BILL, emptyBill)
  }
}
