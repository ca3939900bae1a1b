import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, state } from 'lit/decorators.js'
import type { ShipRow } from '../../shared/ships.ts'
import { jobs } from '../api.ts'
import { type ShipsAnswer, ships } from '../api-schedule.ts'
import '../elements/ships-strip.ts'
import {
  chanceText,
  dayText,
  lateText,
  orderSentence,
  shipsSentence,
  standing,
} from '../elements/ships-words.ts'
import { Load } from '../load.ts'
import { jobPath } from '../router.ts'
import { askedOf, keepWishes, keptWishes, movedBy, type ShipsWishes } from '../ships-wishes.ts'
import { PAUSE, watchChanges } from '../store.ts'
import { pageWear } from '../styles/all.ts'
import { minutesText } from '../time-text.ts'

/** When every open job ships, and what a job that goes first makes late. */
@customElement('ships-page')
export class ShipsPage extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .rows {
        display: grid;
        gap: var(--space-4);
      }
      .rows > li {
        display: grid;
        gap: var(--space-2);
        padding-bottom: var(--space-4);
        border-bottom: 1px solid var(--line);
      }
      .head {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-4);
        align-items: baseline;
        justify-content: space-between;
      }
      .ships {
        font-size: var(--size-large);
        font-weight: 650;
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-4);
      }
      .key span::before {
        content: '';
        display: inline-block;
        width: 0.9em;
        height: 0.9em;
        margin-right: var(--space-1);
        vertical-align: -0.1em;
        background: var(--ink-soft);
        print-color-adjust: exact;
      }
      .key .lathe::before {
        background: var(--accent);
      }
      .key .wait::before {
        background: repeating-linear-gradient(45deg, var(--ink-soft) 0 1px, transparent 1px 4px);
        border: 1px solid var(--ink-soft);
      }
      .key .closed::before {
        background: var(--line);
      }
      .key .done::before {
        width: 0;
        border-left: 2px dashed var(--ink);
        background: none;
      }
      .key .due::before {
        width: 3px;
        background: var(--under);
      }
    `,
  ]

  @state() private wishes: ShipsWishes = keptWishes(localStorage)
  @state() private first = ''
  private readonly loaded = new Load<ShipsAnswer>(this)
  private unwatch?: () => void
  private soon: ReturnType<typeof setTimeout> | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.reload()
    this.unwatch = watchChanges(({ kind }) => {
      if (kind !== 'job' && kind !== 'piece' && kind !== 'shop') return
      clearTimeout(this.soon)
      this.soon = setTimeout(this.reload, PAUSE)
    })
  }

  override disconnectedCallback(): void {
    clearTimeout(this.soon)
    this.unwatch?.()
    super.disconnectedCallback()
  }

  private readonly reload = () =>
    void this.loaded.from(async () => {
      const open = new Set((await jobs()).filter(({ state }) => state !== 'done').map(({ id }) => id))
      if (!open.has(this.first)) this.first = ''
      return ships(askedOf(this.wishes, open, this.first))
    })

  private wish(change: Partial<ShipsWishes>): void {
    this.wishes = { ...this.wishes, ...change }
    keepWishes(localStorage, this.wishes)
    this.first = ''
    this.reload()
  }

  private putFirst(id: string): void {
    this.first = id
    this.reload()
  }

  override render() {
    return this.loaded.shown((answer) => this.page(answer), this.reload)
  }

  private page(answer: ShipsAnswer): TemplateResult {
    const { rows, people, minutesPerDay } = answer
    const who = `${people} ${people === 1 ? 'person' : 'people'}, ${minutesPerDay / 60} h a day each`
    return html`<div class="page">
      <div class="page-head"><h1>When it ships</h1></div>
      ${rows.length === 0 ? this.none() : html`${this.said(answer)} ${this.days(answer)} ${this.table(answer)}`}
      ${this.aside(answer)}
      <p class="small soft">
        ${who}, on the days of <a href="/shop">the shop’s calendar</a>. A job has one person a day at the most, and keeps its lathe until
        its turning is done; while glue cures or a coat dries, others go on. Days are as sure as the minutes of the plans: see on the Work
        page of a job what they rest on.
      </p>
    </div>`
  }

  private none(): TemplateResult {
    return html`<section class="card">
      <h2>No open job has a date</h2>
      <p>Give a job the day it is due, or start its batch, and it stands here. <a href="/jobs">Go to the jobs</a></p>
    </section>`
  }

  /** Late ones first, in words; then what the order is good for. */
  private said(answer: ShipsAnswer): TemplateResult {
    const late = answer.rows.filter(({ late, ends }) => late > 0 || !ends)
    const barely = answer.rows.filter((row) => !late.includes(row) && row.sure.late > 0)
    return html`<section class="card" aria-label="What is late" role="status">
      ${late.map((row) => html`<p class="problem">${shipsSentence(row, answer.today)}</p>`)}
      ${barely.map((row) => html`<p class="caution">${shipsSentence(row, answer.today)}</p>`)}
      <p>${orderSentence(answer)}</p>
      ${this.slips(answer)}
      ${
        answer.by === 'least'
          ? nothing
          : html`<p class="buttons no-print"><button type="button" @click=${() => this.wish({ order: [] })}>Back to the order with least late</button></p>`
      }
    </section>`
  }

  private slips({ by, slips, rows, today }: ShipsAnswer): TemplateResult | typeof nothing {
    if (by !== 'first') return nothing
    const [{ name, done } = { name: '', done: today }] = rows
    if (slips.length === 0)
      return html`<p>${name} first ships ${dayText(done, today)}, and nothing else slips.</p>`
    return html`<p>${name} first ships ${dayText(done, today)}. It makes these slip:</p>
      <ul>
        ${slips.map((slip) => html`<li>${slip.name}: ships ${dayText(slip.done, today)}, ${slip.days} working ${slip.days === 1 ? 'day' : 'days'} later than without</li>`)}
      </ul>`
  }

  private days(answer: ShipsAnswer): TemplateResult {
    return html`<section class="card" aria-labelledby="days">
      <h2 id="days">The days</h2>
      <p class="key small">
        <span class="lathe">at the lathe</span><span>away from the lathe</span><span class="wait">waits</span>
        <span class="closed">closed</span><span class="done">ships</span><span class="due">due</span>
      </p>
      <ol class="plain rows">${answer.rows.map((row, i) => this.row(row, i, answer))}</ol>
    </section>`
  }

  private row(row: ShipRow, i: number, answer: ShipsAnswer): TemplateResult {
    const { text, look } = standing(row)
    const { today } = answer
    const move = (by: number) => () =>
      this.wish({
        order: movedBy(
          answer.rows.map(({ id }) => id),
          row.id,
          by,
        ),
      })
    return html`<li>
      <div class="head">
        <h3><a href=${jobPath(row.id, row.state === 'draft' ? 'profile' : 'rack')}>${row.name}</a></h3>
        <span class="mark ${look}">${text}</span>
      </div>
      <p><span class="ships">Ships ${dayText(row.done, today)}</span>${row.due ? html`, due ${dayText(row.due, today)}${row.chance === undefined ? nothing : html` <span class="soft">(in time: ${chanceText(row.chance)})</span>`}` : nothing}</p>
      <ships-strip .ships=${answer} .row=${row}></ships-strip>
      ${row.promise ? this.promise(row, today) : nothing}
      <div class="buttons no-print">
        <button type="button" aria-label="${row.name} earlier" ?disabled=${i === 0} @click=${move(-1)}>Earlier</button>
        <button type="button" aria-label="${row.name} later" ?disabled=${i === answer.rows.length - 1} @click=${move(1)}>Later</button>
        <button type="button" aria-label="What if it goes first? ${row.name}" ?disabled=${i === 0} @click=${() => this.putFirst(row.id)}>What if it goes first?</button>
      </div>
    </li>`
  }

  /** What may be promised for a job that is not started. */
  private promise({ promise }: ShipRow, today: string): TemplateResult {
    const { behind, behindSure, first } = promise!
    return html`<p class="small">
      To promise without making others slip: ${dayText(behind, today)} as it usually goes, ${dayText(behindSure, today)} with nine chances in
      ten. Before all others: ${dayText(first, today)}.
    </p>`
  }

  private table({ rows, today }: ShipsAnswer): TemplateResult {
    return html`<section class="card" aria-labelledby="as-table">
      <h2 id="as-table">In order</h2>
      <table class="stack">
        <thead><tr><th scope="col">Job</th><th scope="col">Begins</th><th scope="col">Ships</th><th scope="col">Due</th><th scope="col">Against its date</th><th scope="col" class="number">Work left</th><th scope="col">Lathe</th></tr></thead>
        <tbody>${rows.map(
          (row) => html`<tr>
            <th scope="row">${row.name}${row.customer ? html`<p class="small soft">for ${row.customer}</p>` : nothing}</th>
            <td data-label="Begins">${dayText(row.start, today)}</td>
            <td data-label="Ships">${dayText(row.done, today)}</td>
            <td data-label="Due">${row.due ? dayText(row.due, today) : 'no date'}</td>
            <td data-label="Against its date">${row.due === undefined ? '' : row.late > 0 ? lateText(row.late) : 'in time'}</td>
            <td class="number" data-label="Work left">${minutesText(row.minutes)}</td>
            <td data-label="Lathe">${row.lathe ?? 'none fits'}</td>
          </tr>`,
        )}</tbody>
      </table>
    </section>`
  }

  private aside({ aside, rows }: ShipsAnswer): TemplateResult | typeof nothing {
    const counted = rows.filter(({ id }) => this.wishes.with.includes(id))
    if (aside.length + counted.length === 0) return nothing
    const tick = (id: string, name: string, isIn: boolean) => html`<label class="tick">
      <input type="checkbox" .checked=${isIn} @change=${() =>
        this.wish({
          with: isIn ? this.wishes.with.filter((each) => each !== id) : [...this.wishes.with, id],
        })} />
      ${name}
    </label>`
    return html`<section class="card no-print" aria-labelledby="aside">
      <h2 id="aside">Drafts without a date</h2>
      <p>Tick one to count it too.</p>
      ${counted.map(({ id, name }) => tick(id, name, true))} ${aside.map(({ id, name }) => tick(id, name, false))}
    </section>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ships-page': ShipsPage
  }
}
